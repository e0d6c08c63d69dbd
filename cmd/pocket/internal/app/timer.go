package app

import (
	"strconv"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/report"
	"coldseam/profile/rig"
	"coldseam/profile/settings"
)

var timerActs = actions{
	"timer":      (*App).timer,
	"touched":    (*App).touched,
	"touched-at": (*App).touchedAt,
	"untouch":    (*App).untouch,
}

// timerState is the sink timer that is seen.
type timerState struct {
	marks int    // by which the water is deeper than that of the answer, when bottom is touched
	told  string // what came of the bottom that was touched
	undo  string // what takes it back, "" where it cannot be
	was   string // the settings before it
	now   string // and with it
}

// timer shows the sink timer.
func (a *App) timer(Event) {
	if _, ok := report.SinkTime(a.answer.plan); ok && a.answer.err == nil {
		a.answer.timer = timerState{}
		a.goTo(timerScreen)
	}
}

func timerScreen(a *App) []markup.Node {
	s := &a.answer
	t, _ := report.SinkTime(s.plan)
	a.show.Awake = true
	n := strconv.Itoa
	out := []markup.Node{
		a.head("Sink timer"),
		markup.El("p", markup.Class("lead"), t.Text),
		markup.El("button", markup.A("type", "button"), markup.ID("timer"), markup.Class("timer"),
			markup.A("data-seconds", n(t.Best)), markup.A("data-low", n(t.Low)), markup.A("data-high", n(t.High))),
	}
	return append(append(out, a.bottom()...), wayBack())
}

// bottom is the button for a bottom that was touched, where the rig can touch one.
func (a *App) bottom() []markup.Node {
	s := &a.answer
	if !a.canTouch(s.timer.marks) {
		return []markup.Node{told(s.timer.told)}
	}
	u := s.plan.Drop.Units.Shown()
	out := []markup.Node{
		touch("touched", "", markup.ID("touched"), markup.Class("big"), markup.A("data-timer", "touched"), "Touched bottom now"),
		undoable(s.timer.told, s.timer.undo),
		markup.El("p", "Touch this when the fly is on the bottom, "+u.Marked(a.touchedM(s.timer.marks))+" down. All sink times are then set right by it."),
	}
	water := []any{markup.Class("row")}
	for _, way := range []struct {
		marks int
		label string
	}{{-1, "Shallower water"}, {1, "Deeper water"}} {
		if a.canTouch(s.timer.marks + way.marks) {
			water = append(water, touch("touched-at", strconv.Itoa(way.marks), way.label))
		}
	}
	return append(out, markup.El("div", water...))
}

// touchedM is the depth of water under the fly, so many marks from that of the answer.
func (a *App) touchedM(marks int) float64 {
	p := &a.answer.plan
	return p.Band.WaterM + float64(marks)*p.Drop.Units.DepthStepM()
}

// canTouch reports whether the fly may touch bottom there, and the settings take it.
func (a *App) canTouch(marks int) bool {
	p := &a.answer.plan
	return p.Rig != nil && !p.Band.Suspended && p.Rig.Touches(a.touchedM(marks)) && settings.LikelyWater(a.touchedM(marks))
}

// touchedAt moves to deeper or shallower water.
func (a *App) touchedAt(e Event) {
	if n, err := strconv.Atoi(e.Value); err == nil && (n == 1 || n == -1) && a.canTouch(a.answer.timer.marks+n) {
		a.answer.timer.marks += n
		a.say(a.answer.plan.Drop.Units.Shown().Marked(a.touchedM(a.answer.timer.marks)) + " of water, surface to bottom")
	}
}

// touched notes in the settings that the fly touched bottom, so long after it landed, and
// makes the answer again.
func (a *App) touched(e Event) {
	s := &a.answer
	if s.err != nil || !a.canTouch(s.timer.marks) {
		return
	}
	s.timer.undo = ""
	seconds, err := strconv.ParseFloat(e.Value, 64)
	if err != nil || !(seconds > 0 && seconds < 1e6) {
		a.tellTimer("Start the timer as the fly lands on the water; then touch here when it is on the bottom.")
		return
	}
	waterM := a.touchedM(s.timer.marks)
	c := rig.BottomContact{Kind: s.plan.Rig.Kind, DepthM: waterM, S: seconds}
	var was, now string
	err = a.changeSettings(func(text string) (_ string, err error) {
		was = text
		now, err = settings.AddTouched(was, c, s.plan.Drop.Units)
		return now, err
	})
	if err != nil {
		a.tellTimer("Not noted: " + why(err) + ".")
		return
	}
	s.plan, s.err = a.planOf(s.sheet)
	s.timer.undo, s.timer.was, s.timer.now = "untouch", was, now
	a.tellTimer(report.BottomTouched(s.plan, waterM, seconds))
}

// untouch takes the bottom touched last out of the settings again.
func (a *App) untouch(Event) {
	s := &a.answer
	if s.timer.undo == "" {
		return
	}
	err := a.changeSettings(func(text string) (string, error) {
		if text == s.timer.now {
			return s.timer.was, nil
		}
		return settings.Remove(text, "touched", len(a.set.BottomContacts)-1) // the settings were changed meanwhile
	})
	if err != nil {
		a.tellTimer("Not taken back: " + why(err) + ".")
		return
	}
	s.timer.undo = ""
	s.plan, s.err = a.planOf(s.sheet)
	a.tellTimer(report.BottomTakenBack(s.plan))
}

func (a *App) tellTimer(text string) {
	a.answer.timer.told = text
	a.say(text)
}
