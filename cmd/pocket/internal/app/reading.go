package app

import (
	"strconv"
	"strings"

	"coldseam/profile/session"
)

// openReading looks at one reading.
func openReading(a *App, e Event) {
	t := &a.taking
	n, err := strconv.Atoi(e.Value)
	if err != nil || t.s == nil || t.view.Question != nil || n < 0 || n >= len(t.view.Drop.Readings) || t.fixing >= 0 {
		return
	}
	t.fixing, t.told, t.refused, t.lined = n, nil, "", false
	a.goTo(readingScreen)
}

// rightReading puts the right temperature in the place of the reading that is looked at.
func rightReading(a *App, e Event) {
	t := &a.taking
	text := strings.TrimSpace(e.Fields["right"])
	switch {
	case t.fixing < 0:
	case text == "":
		t.told = []session.Told{{Kind: session.Wrong, Text: "Type the temperature that is right first."}}
		a.say(t.told[0].Text)
	default:
		i := t.fixing
		a.doing(func(s *session.Session) { s.Replace(i, text) })
		if t.wrong() && t.view.Question == nil {
			t.refused = text
			return
		}
		a.toTaking()
	}
}

// outReading takes the reading that is looked at out.
func outReading(a *App, _ Event) {
	if i := a.taking.fixing; i >= 0 {
		a.doing(func(s *session.Session) { s.TakeOut(i) })
		a.toTaking()
	}
}

// toTaking goes back from a reading to the drop.
func (a *App) toTaking() {
	if a.taking.fixing >= 0 {
		a.taking.fixing = -1
		a.back()
	}
}
