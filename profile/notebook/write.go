package notebook

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"coldseam/profile"
)

// Write writes a drop as a page: its header keys, then one reading a line, from the
// surface down, each as it was written and with its units. Reading the page back
// gives the same Column.
func Write(d profile.Drop) string {
	var b strings.Builder
	for _, name := range Keys() {
		for _, v := range Values(&d, name) {
			b.WriteString(name + ": " + commentSafe(v) + "\n")
		}
	}
	readings := slices.Clone(d.Readings)
	slices.SortStableFunc(readings, func(a, b profile.Reading) int { return cmp.Compare(metres(a), metres(b)) })
	for _, r := range readings {
		b.WriteString(writeReading(r) + "\n")
	}
	return b.String()
}

func metres(r profile.Reading) float64 { return r.DepthUnit.Metres(r.Depth) }

// writeReading writes one reading, each number with its unit, so that no line
// depends on another.
func writeReading(r profile.Reading) string {
	s := exact(r.Depth) + " " + r.DepthUnit.String() + ": " + stepped(r.Temp, r.Step) + " " + r.TempUnit.String()
	if r.SpreadC > 0 {
		s += " +-" + exact(spread(r)) + " " + r.TempUnit.String()
	}
	if r.Oxygen.Known {
		s += "  DO " + exact(r.Oxygen.Value) + " mg/L"
	}
	return s
}

// spread is a reading's spread on its own scale, as short as gives the same spread
// when it is read back.
func spread(r profile.Reading) float64 {
	full := r.TempUnit.DiffFromC(r.SpreadC)
	if short := math.Round(full*1e6) / 1e6; rounded(r.TempUnit.DiffToC(short)) == r.SpreadC {
		return short
	}
	return rounded(full)
}

// stepped writes a number so that its last digit has the given step: 65.5 with a
// step of a half as "65 1/2", 72 with a step of a tenth as "72.0".
func stepped(v, step float64) string {
	sign := ""
	if v < 0 {
		sign, v = "-", -v
	}
	for _, bottom := range []float64{2, 3, 4, 8, 16, 32, 64} {
		whole := math.Floor(v)
		if top := math.Round((v - whole) * bottom); step == 1/bottom && top > 0 && top < bottom {
			s := strconv.FormatFloat(top, 'f', 0, 64) + "/" + exact(bottom)
			if whole == 0 {
				return sign + s
			}
			return sign + exact(whole) + " " + s
		}
	}
	digits := 0
	for scale := 1.0; digits < 9 && (step*scale < 0.99 || math.Abs(math.Round(v*scale)/scale-v) > 1e-10); digits++ {
		scale *= 10
	}
	return sign + strconv.FormatFloat(v, 'f', digits, 64)
}

// exact writes a number with up to nine decimals and no more than it needs.
func exact(v float64) string { return strconv.FormatFloat(rounded(v)+0, 'f', -1, 64) }

// rounded keeps nine decimals, and no more than twelve digits in all, which is as many
// as are read of a number.
func rounded(v float64) float64 {
	scale := 1e9
	for scale > 1 && math.Abs(v)*scale >= 1e12 {
		scale /= 10
	}
	return math.Round(v*scale) / scale
}
