package oxygen

import (
	"fmt"
	"math"

	"coldseam/profile"
)

const (
	coolC = 19     // 66 F, cool water for trout: common practice
	footM = 0.3048 // how far inside the cool water's shallow edge to start
)

// tally counts how named depths stand to the depths at which oxygen was seen to fall
// under the need, in columns where it does.
type tally struct {
	n, safe, middle, held float64 // all; Low at or above the crossing; Best at or above it; it lies between Low and High
	given                 []float64
	unsafe                alarms  // lake by lake
	cool, left            float64 // columns with water at or under 19 C; those with some of it above Low
	good, goodEdge        float64 // of them with oxygen enough at the start; a foot inside the cool water whatever Low is
}

// add counts a column. Where no depth is named all of it is taken for good.
func (s *tally) add(l *lake, e profile.Estimate, named bool, crossingM, needMgL float64) {
	if !named {
		e = profile.Exactly(l.Bottom())
	}
	s.n++
	s.safe += one(e.Low <= crossingM+1e-9)
	if s.unsafe == nil {
		s.unsafe = alarms{}
	}
	s.unsafe.add(l.water, e.Low > crossingM+1e-9)
	s.middle += one(e.Best <= crossingM+1e-9)
	s.held += one(e.Low <= crossingM+1e-9 && crossingM <= e.High+1e-9)
	s.given = append(s.given, crossingM-e.Low)
	edge, ok := l.coolEdge()
	if !ok {
		return
	}
	s.cool++
	s.left += one(edge < e.Low)
	s.good += one(l.enoughAt(math.Min(edge+footM, e.Low), needMgL))
	s.goodEdge += one(l.enoughAt(edge+footM, needMgL))
}

func one(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func (s tally) safeShare() float64 { return s.safe / s.n }

func (s tally) String() string {
	_, lakes, worst, name := s.unsafe.shares()
	var w string
	if name != "" {
		w = fmt.Sprintf("; worst lake %s %.0f", name, 100*(1-worst))
	}
	return fmt.Sprintf("%4.0f | %4.0f %6.2f %5.0f %5.0f | %4.0f %4.0f %4.0f %4.0f | %3d lakes, safe %3.0f%s", s.n, 100*s.safeShare(), median(s.given),
		100*s.middle/s.n, 100*s.held/s.n, s.cool, 100*s.left/s.cool, 100*s.good/s.cool, 100*s.goodEdge/s.cool, len(s.unsafe), 100*(1-lakes), w)
}

// heads are the words over a tally's figures, and what they mean.
const heads = "   n | safe  given  best  held | cool left good edge | each lake once"

const meaning = `
safe: Low at or above the crossing, %; given: away in the median, crossing less Low, m
best: Best at or above the crossing, %; held: it lies between Low and High, %
cool: columns with water at or under 19 C; left: some of it lies above Low, %
good: oxygen enough a foot inside it or at Low if that is shallower, %; edge: a foot inside it whatever Low is, %`

// coolEdge is the shallow edge of water at or under 19 C.
func (l *lake) coolEdge() (depthM float64, ok bool) {
	k := l.whole.Layers.Curve
	if k.Temps[0] <= coolC {
		return k.Depths[0], true
	}
	return k.Crossing(coolC, k.Top(), k.Bottom())
}

// group names a cast's set, and whether it was fitted.
func (l *lake) group() string {
	if l.fitted {
		return l.set + ", fitted"
	}
	return l.set + ", held out"
}

var groups = []string{
	"NLA, fitted", "NLA, held out", "NLA unmarked, held out",
	"Cascade, fitted", "Cascade, held out", "Virginia, fitted", "Virginia, held out",
}
