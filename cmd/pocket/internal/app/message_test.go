package app

import (
	"strings"
	"testing"

	"coldseam/profile/demo"
	"coldseam/profile/report"
)

// The message is that of the terminal; the spot is told only where that is wanted.
func TestMessage(t *testing.T) {
	p := newPhone(t)
	page := "spot: the inlet\n" + demo.Page(t, "alder-kettle-july")
	p.save(page)
	p.do("book", "")
	p.do("open", "1")
	made := p.answer.plan
	if made.Drop.Spot == "" {
		t.Fatal("no spot")
	}
	p.do("message", "")
	p.has(strings.TrimSpace(report.Share(made, false)), "with the spot")
	p.hasNot(made.Drop.Spot)
	p.do("message-spot", "spot", "checked", "true")
	p.has(strings.TrimSpace(report.Share(made, true)), made.Drop.Spot)
	if !strings.Contains(p.show.Main, "checked>") {
		t.Error(p.show.Main)
	}
	p.do("message-spot", "spot", "checked", "")
	p.hasNot(made.Drop.Spot)
	p.do("message-spot", "spot", "checked", "true")
	p.do("back", "")
	p.do("message", "") // each message asks again
	p.hasNot(made.Drop.Spot)
}

// Without a spot nothing is asked; without a plan it is said why.
func TestMessageWithout(t *testing.T) {
	p := newPhone(t)
	p.save("water: "+hostile+"\n0 ft: 70 F\n10 ft: 60 F\n20 ft: 50 F\n", "date: 2026-07-01\nfor: snark\n0 ft: 70 F\n10 ft: 60 F\n")
	p.do("book", "")
	p.do("open", "1")
	p.do("message", "")
	p.hasNot("with the spot")
	if p.answer.plan.Drop.Water == "" || p.answer.err != nil {
		t.Errorf("%+v", p.answer)
	}
}
