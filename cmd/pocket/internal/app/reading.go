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
	if err != nil || !a.on(takingScreen) || t.view.Question != nil || n < 0 || n >= len(t.view.Drop.Readings) {
		return
	}
	t.fixing, t.told, t.refused, t.lined = n, nil, "", false
	a.goTo(readingScreen)
}

// rightReading puts the right temperature in the place of the reading that is looked at.
func rightReading(a *App, e Event) {
	t := &a.taking
	switch text := strings.TrimSpace(e.Fields["right"]); {
	case !a.on(readingScreen):
	case text == "":
		a.notYet("Type the temperature that is right first.")
	default:
		a.doing(func(s *session.Session) { s.Replace(t.fixing, text) })
		if a.on(readingScreen) {
			t.refused = text
		}
	}
}

// outReading takes the reading that is looked at out.
func outReading(a *App, _ Event) {
	if a.on(readingScreen) {
		a.doing(func(s *session.Session) { s.TakeOut(a.taking.fixing) })
	}
}
