package leader

import (
	"errors"
	"math"
	"slices"
)

// The point flies that FlyFor tries, kg.
const (
	lightestKg = 1e-6
	heaviestKg = 0.1
)

// FlyFor gives the dry mass in kg, to 0.1, of the point fly (the last of the bodies at
// the end of the line) that the leader would hold depthM metres down when towed at mps
// metres a second; the fly's size grows with its mass. It is 0 where no fly does, or
// where the fly that is there is deep enough. ErrRange says that the leader, the depth or
// the speed is out of range.
func (l Leader) FlyFor(depthM, mps float64) (kg float64, err error) {
	if err := errors.Join(l.check(), checkDepth(depthM), checkSpeed(mps)); err != nil {
		return 0, err
	}
	point, length := -1, l.LengthM()
	for i, b := range l.Bodies {
		if b.AtM >= length*(1-slack) {
			point = i
		}
	}
	if point < 0 || length < depthM {
		return 0, nil
	}
	l.Bodies = slices.Clone(l.Bodies)
	over := func(ln float64) (float64, error) {
		l.Bodies[point].KgDry = math.Exp(ln)
		z, err := newLine(l).depth(mps)
		return z - depthM, err
	}
	near := depthShare * depthM
	low, high := math.Log(math.Max(l.Bodies[point].KgDry, lightestKg)), math.Log(heaviestKg)
	if high <= low {
		return 0, nil
	}
	below, err := over(low)
	if err != nil || below >= -near {
		return 0, err
	}
	above, err := over(high)
	if err != nil || above < 0 {
		return 0, err
	}
	ln, err := root(over, low, high, below, above, 1e-9, near)
	return math.Exp(ln), err
}
