package report

import (
	"fmt"
	"math"

	"coldseam/profile/plan"
)

// Timer is the sink time of a plan for a timer: the seconds as they are said, and how it is
// to be had.
type Timer struct {
	Best, Low, High int
	Text            string
}

// SinkTime is the sink time of a plan; false where there is none to time.
func SinkTime(p plan.Plan) (t Timer, ok bool) {
	if p.Rig == nil || p.Rig.SinkTime == nil {
		return t, false
	}
	r := *p.Rig
	r.Correction = 0 // what touching bottom did is told when it was touched
	return Timer{Best: rounds(r.SinkTime.Best), Low: rounds(r.SinkTime.Low), High: rounds(r.SinkTime.High), Text: speak(p).sink(r)}, true
}

// BottomTouched says what came of a bottom that was touched so long after the fly landed, over
// water so deep: p is the plan with it.
func BottomTouched(p plan.Plan, waterM, afterS float64) string {
	t, ok := SinkTime(p)
	said := fmt.Sprintf("Noted: bottom touched after %.0f seconds over %s.", math.Round(afterS), speak(p).u.Marked(waterM))
	if !ok {
		return said
	}
	said += fmt.Sprintf(" The sink time is now %d seconds (%d to %d).", t.Best, t.Low, t.High)
	if p.Rig.CorrectedToLimit() {
		said += " That is far from what was worked out, so only a part of it is believed: something else may have been touched. Try it again."
	}
	return said
}

// BottomTakenBack says that a bottom that was touched is taken back.
func BottomTakenBack(p plan.Plan) string {
	t, _ := SinkTime(p)
	return fmt.Sprintf("Taken back: the sink time is %d seconds (%d to %d) again.", t.Best, t.Low, t.High)
}
