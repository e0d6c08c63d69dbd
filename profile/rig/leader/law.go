package leader

import (
	"math"
	"sync"
)

// A law is the product of a drag coefficient and the Reynolds number, to which drag
// over speed is proportional, tabled against the Reynolds number. The solver wants it
// with its slope some ten thousand times a sink, and the formulas take far longer.
// Each octave has 32 straight pieces, which stay within 2e-4 of the formula.
type law [octaves<<piecesLog + 1]float64

const (
	leastExp  = -20 // below a Reynolds number of 2^-20 drag over speed is constant
	octaves   = 38
	piecesLog = 5
	lowBits   = 52 - piecesLog // of a float64, within a piece
)

var (
	leastRe    = math.Ldexp(1, leastExp)
	firstPiece = math.Float64bits(leastRe) >> lowBits

	acrossLaw = sync.OnceValue(func() *law { return newLaw(cylinder) })
	ballLaw   = sync.OnceValue(func() *law { return newLaw(sphere) })
)

func newLaw(cd func(float64) float64) *law {
	l := new(law)
	for i := range l {
		l[i] = cd(pieceRe(i)) * pieceRe(i)
	}
	return l
}

// pieceRe is the Reynolds number at which a piece begins: the next number whose
// leading bits are one more.
func pieceRe(i int) float64 { return math.Float64frombits((firstPiece + uint64(i)) << lowBits) }

// at gives the law and its slope. Past its end the last piece goes on.
func (l *law) at(re float64) (value, slope float64) {
	if !(re > leastRe) {
		return l[0], 0
	}
	i := min(int(math.Float64bits(re)>>lowBits-firstPiece), len(l)-2)
	from := pieceRe(i)
	slope = (l[i+1] - l[i]) / (pieceRe(i+1) - from)
	return l[i] + slope*(re-from), slope
}
