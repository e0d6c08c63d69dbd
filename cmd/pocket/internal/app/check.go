package app

import (
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/notebook"
	"coldseam/profile/report"
)

// check compares one reading at the anchor with the answer.
func (a *App) check(e Event) {
	s := &a.answer
	if s.err != nil {
		return
	}
	text := strings.TrimSpace(e.Fields["depth"] + " " + e.Fields["temperature"])
	r, err := notebook.ReadOne("reading", text, s.sheet.Drop)
	if err != nil {
		s.checked = "Not compared: " + why(err) + "."
	} else {
		s.checked = report.CheckReading(s.plan, r).Text
	}
	first, _ := report.Lead(s.checked)
	a.say(first)
}

// checkForm asks for a reading at the anchor and shows what it says.
func (a *App) checkForm() markup.Node {
	u := a.answer.sheet.Drop.Units.Shown()
	parts := []any{markup.ID("check"), markup.A("data-do", "check"), markup.El("h2", "A reading at the anchor")}
	if a.answer.checked != "" {
		parts = append(parts, markup.El("p", markup.Class("note"), a.answer.checked))
	} else {
		parts = append(parts, markup.El("p", markup.Class("quiet"), "One reading here tells whether the layers still lie as they did."))
	}
	digits := markup.A("inputmode", "decimal")
	return markup.El("form", append(parts, field("check-depth", "depth", "Depth, "+u.Depth.String(), digits),
		field("check-temperature", "temperature", "Temperature, "+u.Temp.String(), digits), submit("Compare"))...)
}
