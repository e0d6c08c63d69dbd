package app

import (
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/report"
)

var messageActs = actions{
	"message":      func(a *App, _ Event) { a.answer.spot = false; a.goTo(messageScreen) },
	"message-spot": func(a *App, e Event) { a.answer.spot = e.Fields["checked"] != "" },
}

// messageScreen is the answer in a few lines, for a message. The spot is an angler's own
// affair: it is told only where that is wanted.
func messageScreen(a *App) []markup.Node {
	s := &a.answer
	out := []markup.Node{a.head("Message")}
	if s.err != nil {
		return append(out, told(sentence("there is no answer to tell: "+why(s.err))), wayBack())
	}
	out = append(out, markup.Pre(markup.ID("message"), markup.Class("paper"), strings.TrimSuffix(report.Share(s.plan, s.spot), "\n")))
	if strings.TrimSpace(s.plan.Drop.Spot) != "" {
		tick := []any{markup.ID("spot"), markup.A("type", "checkbox"), markup.A("data-do", "message-spot")}
		if s.spot {
			tick = append(tick, markup.A("checked", ""))
		}
		out = append(out, markup.El("label", markup.Class("tick"), markup.El("input", tick...), "with the spot"))
	}
	return append(out,
		markup.El("p", markup.Class("row"), carry("share", "message", "", "Send", markup.Class("go")), carry("copy", "message", "", "Copy")),
		wayBack())
}
