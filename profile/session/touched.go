package session

import (
	"fmt"
	"math"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// What an angler does who touches readings and depths instead of typing words. All of it is
// for readings that are typed, and waits while a question is open.

// wanted is the depth at which a temperature alone is read.
func (s *Session) wanted() profile.Optional {
	switch {
	case s.mode != typing || s.ended || s.doubted:
		return profile.Optional{}
	case s.moved.Known || s.advice.Enough:
		return s.moved
	}
	return profile.Some(s.advice.DepthM)
}

// Move has the angler read Beside the depth that was asked for.
func (s *Session) Move(marks int) {
	if depth := s.Beside(marks); depth.Known {
		s.moved = depth
	}
}

// Beside is the depth, in m, so many marks of the line below the one that is asked for, or
// where marks is negative above it; where none is asked for, below the last reading. It lies
// within surface and bottom, and is unknown where none can be moved to.
func (s *Session) Beside(marks int) profile.Optional {
	if s.mode != typing || s.ended || s.question != nil || s.doubted {
		return profile.Optional{}
	}
	from := s.wanted().Or(0)
	if n := len(s.drop.Readings); !s.wanted().Known && n > 0 { // no depth is asked for
		from = s.drop.Readings[n-1].DepthM
	}
	step, deepest := s.drop.Units.DepthStepM(), float64(notebook.MaxDepthM)
	const same = 1e-6 // a mark at the bottom itself is one
	most := math.Floor(s.drop.Bottom.Or(deepest)/step + same)
	return profile.Some(step * min(max(math.Round(from/step)+float64(marks), 0), most))
}

// Replace puts what a line says in the place of the i-th reading of the drop: a temperature
// alone is at its depth. Nobody is asked which of the two is right.
func (s *Session) Replace(i int, text string) {
	if !s.touchable(i) {
		return
	}
	was := s.drop.Readings[i]
	s.todo = append(s.todo, s.askTyped)
	s.read(text, unit.Exact(was.Depth)+" "+was.DepthUnit.String(), func(_ string, read profile.Drop) {
		if len(read.Readings) != 1 || s.noted(read) {
			s.tellAs(Wrong, "Not taken. "+s.words.notOne)
			return
		}
		r := read.Readings[0]
		if !r.Oxygen.Known && s.depthM(r) == was.DepthM {
			r.Oxygen = was.Oxygen
		}
		s.takeOut(i)
		odd := s.add(r)
		s.do(func() { s.save(false) }, func() { s.showColumn(); s.challenge(r, odd) })
	})
	s.run()
}

// TakeOut takes the i-th reading out of the drop.
func (s *Session) TakeOut(i int) {
	if !s.touchable(i) {
		return
	}
	r := s.drop.Readings[i]
	s.takeOut(i)
	s.doubted = false
	s.todo = append(s.todo, s.askTyped)
	s.do(func() { s.save(false) }, func() {
		s.tell(removed(r))
		s.showColumn()
	})
	s.run()
}

// touchable reports whether there is an i-th reading that can be touched now.
func (s *Session) touchable(i int) bool {
	return s.mode == typing && !s.ended && s.question == nil && i >= 0 && i < len(s.drop.Readings)
}

func removed(r profile.Reading) string {
	return fmt.Sprintf("Removed: %s %s at %s %s.", unit.Exact(r.Temp), r.TempUnit, unit.Exact(r.Depth), r.DepthUnit)
}
