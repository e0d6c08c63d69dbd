package main

import (
	"fmt"
	"time"

	"coldseam/profile/unit"
)

// progress shows at the foot of the terminal how far a long job is and how long the rest
// will take. A short job shows nothing, and neither does one whose standard error leads
// elsewhere.
type progress struct {
	live  *status
	now   func() time.Time
	began time.Time
}

// shortJob is how long a job may take without a word.
const shortJob = time.Second

func (p *program) progress() *progress {
	return &progress{live: newStatus(p.err), now: p.now, began: p.now()}
}

// show shows what was done, of which done of total are behind; total is 0 where nobody
// knows.
func (g *progress) show(what string, done, total int64) {
	spent := g.now().Sub(g.began)
	if spent < shortJob {
		return
	}
	if total > 0 && done > 0 && done <= total {
		what = fmt.Sprintf("%d %%, %s: %s", 100*done/total, left(spent, done, total), what)
	}
	g.live.show(what)
}

// end takes the line away.
func (g *progress) end() { g.live.clear() }

// left says how long the rest of a job takes at the pace so far.
func left(spent time.Duration, done, total int64) string {
	rest := time.Duration(float64(spent) * float64(total-done) / float64(done))
	switch {
	case rest < 10*time.Second:
		return "some seconds left"
	case rest < 90*time.Second:
		return fmt.Sprintf("about %d s left", (rest.Milliseconds()+5000)/10000*10)
	case rest < 90*time.Minute:
		return fmt.Sprintf("about %d min left", (rest+30*time.Second)/time.Minute)
	}
	return fmt.Sprintf("about %s left", unit.Count(int((rest+30*time.Minute)/time.Hour), "hour"))
}
