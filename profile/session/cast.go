package session

import (
	"fmt"
	"math"

	"coldseam/profile/plain"
	"coldseam/profile/response"
	"coldseam/profile/unit"
)

// syncS is how often the lines of a cast are made durable, s.
const syncS = 2.0

// startCasting begins one cast of a probe that is lowered without stopping. It gives its
// readings at its end only: until then its lines must be on the disk.
func (s *Session) startCasting() {
	s.mode, s.prompt = casting, ""
	s.do(s.ownDepth, func() { s.save(false) }, func() {
		s.logged(s.store.Sync())
		slowly := "30 cm"
		if s.drop.Units.Feet() {
			slowly = "a foot"
		}
		s.tell(fmt.Sprintf(lowerEvenly, slowly))
		s.lower(math.Inf(1))
	})
}

// typedCasting does what a typed line says in a cast.
func (s *Session) typedCasting(text string) {
	if w, isWord := Word(text); isWord && w != "stop" {
		s.tell(helpCast)
		return
	}
	s.castTaken()
}

// hearCasting takes in a line of a cast.
func (s *Session) hearCasting(h Heard) {
	if !h.DepthM.Known || !h.TempC.Known {
		return
	}
	s.probe.record.Add(h.AtS, h.DepthM.Value, h.TempC.Value)
	if h.AtS-s.probe.syncedS > syncS {
		s.probe.syncedS = h.AtS
		s.logged(s.store.Sync())
	}
	u := s.drop.Units.Shown()
	s.probe.live = fmt.Sprintf("%.1f %s  %.1f %s  (%d lines)", u.Depth.From(h.DepthM.Value), u.Depth, u.Temp.FromC(h.TempC.Value), u.Temp, s.probe.record.Len())
}

// castTaken makes readings of the cast, takes them into the drop, and ends it.
func (s *Session) castTaken() {
	s.mode = typing
	readings, trip, err := s.probe.record.Readings(s.drop.Units, s.drop.TimeConst.Or(0))
	if err != nil {
		s.tell(plain.Line(err.Error()) + ". The probe's lines are kept in " + plain.Line(s.store.Log()))
		s.logged(s.store.Sync())
		s.finish()
		return
	}
	s.tell(fmt.Sprintf("%s; %s. From the probe: %s.", unit.Count(len(readings), "depth"), CastTold(&s.probe.record, trip), s.o.Probe.Counted()))
	s.add(readings...)
	s.do(func() { s.save(false) }, func() { s.logged(s.store.Sync()) }, s.finish)
}

// CastTold says what was done to a cast.
func CastTold(r *response.Record, trip response.Trip) string {
	how := "the probe's lag is not corrected: its time constant is not known, and without the way up it cannot be found"
	if trip.TauS > 0 {
		from := "as given"
		if trip.Matched {
			from = "found from the way down and the way up"
		}
		how = fmt.Sprintf("the probe's lag (time constant %.0f s, %s) is corrected", trip.TauS, from)
	}
	if r.Full {
		how += fmt.Sprintf("; only the first %d lines are used", response.MaxSamples)
	}
	return how
}
