package session

import (
	"math"
	"slices"

	"coldseam/profile"
	"coldseam/profile/check"
	"coldseam/profile/sampling"
)

// sitting is the drop as it is now, corrected and flagged. Readings that were there when
// it was gone on with stand first; those of this sitting follow in the order in which
// they were taken.
type sitting struct {
	drop    profile.Drop
	checked check.Checked
	old     int              // readings from before this sitting
	skipped []float64        // depths that are not asked for again, m
	moved   profile.Optional // a depth that the angler reads at instead of the one advised, m
}

// Drop gives the drop as it is now.
func (t *sitting) Drop() profile.Drop { return t.checked.Drop() }

// set has the drop be d, of whose readings the first old ones are from before.
func (t *sitting) set(d profile.Drop, old int) {
	t.checked = check.Of(d)
	t.drop, t.old, t.moved = t.checked.Drop(), old, profile.Optional{}
}

// note changes what is noted of the drop (its bottom, the wind) to that of d.
func (t *sitting) note(d profile.Drop) {
	d.Readings = t.drop.Readings
	moved := t.moved
	t.set(d, t.old)
	if !d.Bottom.Known || moved.Value <= d.Bottom.Value {
		t.moved = moved
	}
}

// add takes readings in. It gives the readings that are flagged now and were not before,
// the last one first when it is among them: a reading may show that an older one was odd.
func (t *sitting) add(rs ...profile.Reading) (odd []profile.Reading) {
	before := t.drop.Readings
	d := t.drop
	d.Readings = append(slices.Clone(before), rs...)
	t.set(d, t.old)
	if n := len(t.drop.Readings); n > len(before) && t.drop.Readings[n-1].Flag != "" {
		odd = append(odd, t.drop.Readings[n-1])
	}
	for i, was := range before {
		if now := t.drop.Readings[i]; now.Flag != "" && now.Flag != was.Flag {
			odd = append(odd, now)
		}
	}
	return odd
}

// undo takes the last reading of this sitting back; false when there is none.
func (t *sitting) undo() (r profile.Reading, ok bool) {
	last := t.last()
	if last == nil {
		return r, false
	}
	t.takeOut(len(t.drop.Readings) - 1)
	return *last, true
}

// last is the last reading of this sitting; nil when there is none.
func (t *sitting) last() *profile.Reading {
	n := len(t.drop.Readings) - 1
	if n < t.old {
		return nil
	}
	r := t.drop.Readings[n]
	return &r
}

// takeOut takes the i-th reading out.
func (t *sitting) takeOut(i int) {
	d, old := t.drop, t.old
	d.Readings = slices.Delete(slices.Clone(d.Readings), i, i+1)
	if i < old {
		old--
	}
	t.set(d, old)
}

// at gives the readings of the depth of r, corrected for this drop as r would be.
func (t *sitting) at(r profile.Reading) []profile.Reading {
	depthM := t.depthM(r)
	var out []profile.Reading
	for _, was := range t.drop.Readings {
		if math.Abs(was.DepthM-depthM) < profile.SameDepthM {
			out = append(out, was)
		}
	}
	return out
}

func (t *sitting) depthM(r profile.Reading) float64 {
	one := t.drop
	one.Readings = []profile.Reading{r}
	one.Correct()
	return one.Readings[0].DepthM
}

// correct puts r in the place of every reading of its depth.
func (t *sitting) correct(r profile.Reading) {
	depthM, d, old := t.depthM(r), t.drop, 0
	d.Readings = nil
	for i, was := range t.drop.Readings {
		if math.Abs(was.DepthM-depthM) < profile.SameDepthM {
			continue
		}
		if i < t.old {
			old++
		}
		d.Readings = append(d.Readings, was)
	}
	d.Readings = append(d.Readings, r)
	t.set(d, old)
}

// skip has a depth not asked for again in this sitting.
func (t *sitting) skip(depthM float64) {
	t.skipped, t.moved = append(t.skipped, depthM), profile.Optional{}
}

// next advises on the next depth to read, for a fish with these limits of temperature.
func (t *sitting) next(levelsC []float64) sampling.Advice {
	c, err := t.checked.Column()
	if err != nil { // nothing usable yet
		c = profile.Column{}
	}
	return sampling.Find(sampling.Input{
		Column: c, Bottom: t.drop.Bottom, Length: t.drop.LakeLength, Secchi: t.drop.Secchi,
		LevelsC: levelsC, MarkM: t.drop.Units.DepthStepM(), Skipped: t.skipped,
	})
}

// empty reports whether there is nothing to keep.
func (t *sitting) empty() bool {
	return len(t.drop.Readings) == 0 && len(t.drop.Notes) == 0 && len(t.drop.Catches) == 0
}
