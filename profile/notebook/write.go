package notebook

import (
	"math"
	"strconv"
	"strings"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// Write writes a drop as a page: its header keys, then one reading a line, as they
// were written. Reading the page back gives the same Column.
func Write(d profile.Drop) string {
	var b strings.Builder
	for _, k := range keys {
		if k.get == nil {
			continue
		}
		if v := k.get(&d); v != "" {
			b.WriteString(k.name + ": " + v + "\n")
		}
	}
	for _, n := range d.Notes {
		b.WriteString("note: " + n + "\n")
	}
	for _, r := range d.Readings {
		b.WriteString(writeReading(r, d.Units) + "\n")
	}
	return b.String()
}

// writeReading writes one reading, with its units where they are not the page's.
func writeReading(r profile.Reading, page unit.System) string {
	s := exact(r.Depth)
	if r.DepthUnit != page.Depth {
		s += " " + r.DepthUnit.String()
	}
	s += ": " + stepped(r.Temp, r.Step)
	if r.TempUnit != page.Temp {
		s += " " + r.TempUnit.String()
	}
	if r.SpreadC > 0 {
		s += " +-" + exact(nano(r.TempUnit.DiffFromC(r.SpreadC))) + " " + r.TempUnit.String()
	}
	if r.Oxygen.Known {
		s += "  DO " + exact(r.Oxygen.Value) + " mg/L"
	}
	return s
}

// stepped writes a number so that its last digit has the given step: 65.5 with a
// step of a half as "65 1/2", 72 with a step of a tenth as "72.0".
func stepped(v, step float64) string {
	sign := ""
	if v < 0 {
		sign, v = "-", -v
	}
	for _, bottom := range []float64{2, 4, 8, 16, 32, 64} {
		if step == 1/bottom {
			whole := math.Floor(v)
			top := strconv.FormatFloat(math.Round((v-whole)*bottom), 'f', 0, 64) + "/" + exact(bottom)
			if whole == 0 {
				return sign + top
			}
			return sign + exact(whole) + " " + top
		}
	}
	digits := 0
	for ; digits < 9 && step < 0.99; digits++ {
		step *= 10
	}
	return sign + strconv.FormatFloat(v, 'f', digits, 64)
}

// exact writes a number with up to nine decimals and no more than it needs.
func exact(v float64) string { return strconv.FormatFloat(nano(v)+0, 'f', -1, 64) }

func nano(v float64) float64 { return math.Round(v*1e9) / 1e9 }
