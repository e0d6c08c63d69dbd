// Package taking is a drop while it is being taken: readings are added, taken back,
// put right and skipped, and after each of these the page in the book is as it is
// here. What is odd about a reading is told at once, while the thermometer is still
// near that depth.
//
// It asks nobody anything and prints nothing; the talk is the caller's.
package taking

import (
	"math"

	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/check"
	"coldseam/profile/sampling"
)

// Taking is a drop being taken. It is not safe for concurrent use.
type Taking struct {
	// Saved is the page, nil before the first reading.
	Saved *book.Page

	// Failed is asked what to do where saving failed: to try again, in another book
	// where it gives one, or to give up. nil gives up.
	Failed func(err error) (again bool, elsewhere *book.Book)

	drop    profile.Drop
	checked check.Checked
	book    *book.Book
	old     int // readings that were there when it was gone on with
	skipped []float64
}

// Unsaved is the error of a drop that could not be saved. What was saved before it is
// whole, and the Taking still has all.
type Unsaved struct{ error }

// Unwrap gives the system's error.
func (u Unsaved) Unwrap() error { return u.error }

// Begin begins a drop without readings; d holds what is known of it.
func Begin(b *book.Book, d profile.Drop) *Taking {
	d.Readings = nil
	return &Taking{drop: d, book: b}
}

// GoOn goes on with a page of the book that has no Err.
func GoOn(b *book.Book, u book.Unended) *Taking {
	t := &Taking{Saved: u.Page, drop: u.Drop, book: b, old: len(u.Drop.Readings)}
	t.flag()
	return t
}

// Drop gives the drop as it is now, corrected and flagged; the readings of this
// sitting stand in the order in which they were taken.
func (t *Taking) Drop() profile.Drop {
	d := t.drop
	d.Readings = append([]profile.Reading(nil), d.Readings...)
	return d
}

func (t *Taking) flag() {
	t.checked = check.Of(t.drop)
	t.drop = t.checked.Drop()
}

// Add takes a reading in and saves the drop. It gives the readings that are flagged
// now and were not before, the new one first when it is among them: a reading may
// show that an older one was odd.
func (t *Taking) Add(r profile.Reading) (odd []profile.Reading, err error) {
	before := make([]profile.Flag, len(t.drop.Readings))
	for i, old := range t.drop.Readings {
		before[i] = old.Flag
	}
	t.drop.Readings = append(t.drop.Readings, r)
	t.flag()
	if last := t.drop.Readings[len(before)]; last.Flag != "" {
		odd = append(odd, last)
	}
	for i, flag := range before {
		if now := t.drop.Readings[i]; now.Flag != "" && now.Flag != flag {
			odd = append(odd, now)
		}
	}
	return odd, t.save(false)
}

// AddAll takes the readings of one cast in, and saves once.
func (t *Taking) AddAll(rs []profile.Reading) error {
	t.drop.Readings = append(t.drop.Readings, rs...)
	t.flag()
	return t.save(false)
}

// Keep saves the drop as it is, with or without readings.
func (t *Taking) Keep() error { return t.save(false) }

// Undo takes the last reading of this sitting back and saves; ok is false when there
// is none.
func (t *Taking) Undo() (r profile.Reading, ok bool, err error) {
	n := len(t.drop.Readings) - 1
	if n < t.old {
		return r, false, nil
	}
	r = t.drop.Readings[n]
	t.drop.Readings = t.drop.Readings[:n]
	t.flag()
	return r, true, t.save(false)
}

// At gives the readings of the depth of r, corrected for this drop as r would be.
func (t *Taking) At(r profile.Reading) []profile.Reading {
	depthM := t.depthM(r)
	var out []profile.Reading
	for _, old := range t.drop.Readings {
		if math.Abs(old.DepthM-depthM) < profile.SameDepthM {
			out = append(out, old)
		}
	}
	return out
}

func (t *Taking) depthM(r profile.Reading) float64 {
	one := t.drop
	one.Readings = []profile.Reading{r}
	one.Correct()
	return one.Readings[0].DepthM
}

// Correct puts r in the place of every reading of its depth, and saves.
func (t *Taking) Correct(r profile.Reading) (odd []profile.Reading, err error) {
	depthM := t.depthM(r)
	kept, old := []profile.Reading(nil), 0
	for i, was := range t.drop.Readings {
		if math.Abs(was.DepthM-depthM) < profile.SameDepthM {
			continue
		}
		if i < t.old {
			old++
		}
		kept = append(kept, was)
	}
	t.drop.Readings, t.old = kept, old
	return t.Add(r)
}

// Note changes what is noted of the drop (its bottom, the wind) to that of d, and
// saves when there is something to save.
func (t *Taking) Note(d profile.Drop) error {
	d.Readings = t.drop.Readings
	t.drop = d
	t.flag()
	if len(d.Readings) == 0 && len(d.Notes) == 0 && t.Saved == nil {
		return nil
	}
	return t.save(false)
}

// Skip has a depth, in metres, not asked for again in this sitting.
func (t *Taking) Skip(depthM float64) { t.skipped = append(t.skipped, depthM) }

// Next advises on the next depth to read.
func (t *Taking) Next(levelsC []float64) sampling.Advice {
	d := t.drop
	c, err := t.checked.Column()
	if err != nil { // nothing usable yet
		c = profile.Column{}
	}
	return sampling.Find(sampling.Input{
		Column: c, Bottom: d.Bottom, Length: d.LakeLength, Secchi: d.Secchi,
		LevelsC: levelsC, MarkM: d.Units.DepthStepM(), Skipped: t.skipped,
	})
}

// End ends the drop: its page says so, or goes when nothing was read or noted.
func (t *Taking) End() error {
	switch {
	case t.Saved == nil:
		return nil
	case len(t.drop.Readings) == 0 && len(t.drop.Notes) == 0:
		if err := t.Saved.Remove(); err != nil {
			return Unsaved{err}
		}
		return nil
	}
	return t.save(true)
}

// save saves the drop, until it is saved or Failed gives up.
func (t *Taking) save(ended bool) error {
	for {
		err := t.write(ended)
		if err == nil {
			return nil
		}
		again, elsewhere := false, (*book.Book)(nil)
		if t.Failed != nil {
			again, elsewhere = t.Failed(err)
		}
		if !again {
			return Unsaved{err}
		}
		if elsewhere != nil { // what was saved before stays where it is
			t.book, t.Saved = elsewhere, nil
		}
	}
}

func (t *Taking) write(ended bool) error {
	if t.Saved != nil {
		return t.Saved.Save(t.drop, ended)
	}
	p, err := t.book.Begin(t.drop)
	if p.Path != "" { // it has its name, even where that is not durable yet
		t.Saved = p
	}
	if err == nil && ended {
		err = p.Save(t.drop, true)
	}
	return err
}
