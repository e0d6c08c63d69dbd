package response

import "math"

const (
	// jumpZ is how many times the stated noise a reading may be off. The
	// difference of two has a deviation of 1.4, so good readings seldom wait.
	jumpZ = 8.0
	// minJumpC keeps the dither between the steps of a coarse sensor (0.0625 C
	// and 0.1 C are common practice) from being taken for wild.
	minJumpC = 0.25
)

func (w *Filter) jumpC() float64 { return max(jumpZ*w.o.NoiseC, minJumpC) }

// jumps reports whether tempC is far from the reading before.
func (w *Filter) jumps(tempC float64) bool {
	n := len(w.temps)
	return n > 0 && math.Abs(tempC-w.temps[n-1]) > w.jumpC()
}

// astray reports whether tempC is also away from the path of the reading, which
// runs from the one before towards the estimate.
func (w *Filter) astray(tempC float64) bool {
	if !w.last.Fitted || !w.jumps(tempC) {
		return false
	}
	before := w.temps[len(w.temps)-1]
	lo := min(before, w.last.EstimateC-3*w.last.ErrC) - w.jumpC()
	hi := max(before, w.last.EstimateC+3*w.last.ErrC) + w.jumpC()
	return tempC < lo || tempC > hi
}

// drop takes out the newest sample if it was in doubt and the next reading
// shows it to be wild, and reports whether it took one out. A lag runs one way,
// so a reading well outside the two beside it is none of it.
func (w *Filter) drop(nextC float64) bool {
	if !w.doubt {
		return false
	}
	n := len(w.since) - 1
	since, c, before := w.since[n], w.temps[n], w.temps[n-1]
	// The first reading has none before it to compare with. If the jump from it
	// is over at once it was wild, or the lag is too quick to teach anything.
	if n == 1 && math.Abs(nextC-c) < math.Abs(c-before)/10 {
		w.Reset()
		w.startS += since
		w.keep(0, c)
		return true
	}
	if c > max(before, nextC)+w.jumpC() || c < min(before, nextC)-w.jumpC() {
		w.f.undo()
		w.since, w.temps = w.since[:n], w.temps[:n]
		return true
	}
	return false
}
