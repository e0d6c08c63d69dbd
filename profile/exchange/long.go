package exchange

import (
	"fmt"
	"math"
	"strings"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// reading reads a row of the long form: one reading, and what the row says of its drop.
func (in *reader) reading(l line) error {
	c, err := in.b.cast(l, 0)
	if err != nil {
		return err
	}
	r := profile.Reading{Line: in.line}
	hasDepth, hasTemp := false, false
	var oxygen, percent cell
	for i, col := range l.columns {
		text := l.cells[i]
		if missing(text) {
			continue
		}
		switch col.what {
		case ofDepth:
			hasDepth, err = true, in.depth(&r, text, first(col.unit, l.unit(ofDepthUnit)))
		case ofTemp:
			hasTemp, err = true, in.temp(&r, text, first(col.unit, l.unit(ofTempUnit)))
		case ofOxygen:
			oxygen, err = in.number(text, col)
		case ofPercent:
			percent, err = in.number(text, col)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", col.name, err)
		}
	}
	switch {
	case !hasDepth && !hasTemp:
		if oxygen.known || percent.known {
			in.skip("oxygen without a depth is passed over")
		}
		return nil
	case !hasDepth:
		return fmt.Errorf("the row has a temperature and no depth")
	case !hasTemp:
		in.skip("a depth without a temperature is passed over, and the oxygen there")
		return nil
	}
	if err := in.fine(&r, l); err != nil {
		return err
	}
	r.Text = l.of(ofDepth) + " " + l.of(ofTemp)
	return in.b.add(c, r, oxygen, percent)
}

// fine takes the step and the range of a temperature, where the file has them.
func (in *reader) fine(r *profile.Reading, l line) error {
	for _, f := range []struct {
		what what
		to   *float64
	}{{ofStep, &r.Step}, {ofSpread, &r.SpreadC}} {
		text := l.of(f.what)
		if text == "" {
			continue
		}
		n, rest, ok := number(text, in.comma)
		if !ok || rest != "" || n.Value < 0 || n.Value > 100 {
			return fmt.Errorf("%s is no error of a temperature", quote(text))
		}
		*f.to = n.Value
	}
	return nil
}

// depth reads a depth, whose own unit wins over that of its column.
func (in *reader) depth(r *profile.Reading, text string, u unit.Length) error {
	switch strings.ToLower(text) {
	case "surface", "surf", "top":
		text = "0"
	}
	n, rest, ok := number(text, in.comma)
	if ok && rest != "" {
		u, ok = unit.LengthNamed(rest)
	}
	r.Depth, r.DepthUnit = n.Value, u
	switch {
	case !ok:
		return fmt.Errorf("%s is not a depth", quote(text))
	case u == unit.NoLength:
		return errNoDepthUnit
	case n.Value < 0:
		return fmt.Errorf("%s: a depth cannot be negative", quote(text))
	case u.Metres(n.Value) > notebook.MaxDepthM:
		return fmt.Errorf("%s %s is deeper than any lake that is fished", text, u)
	}
	return nil
}

// temp reads a temperature, whose own scale wins over that of its column. Where none is
// stated the builder settles it.
func (in *reader) temp(r *profile.Reading, text string, u unit.Temperature) error {
	n, rest, ok := number(text, in.comma)
	if ok && rest != "" {
		u, ok = unit.TemperatureNamed(rest)
	}
	if !ok || math.Abs(n.Value) > mostNumber {
		return fmt.Errorf("%s is not a temperature", quote(text))
	}
	r.Temp, r.TempUnit, r.Step = n.Value, u, n.Step
	return nil
}

// mostNumber is more than any number of a reading, however it was slipped.
const mostNumber = 1e6

// cell is a number of a cell that may be empty.
type cell struct {
	value float64
	known bool
	col   column
}

func (in *reader) number(text string, col column) (cell, error) {
	n, rest, ok := number(text, in.comma)
	switch sign := plainly(rest); {
	case !ok || n.Value < 0:
		return cell{}, fmt.Errorf("%s is not an amount of oxygen", quote(text))
	case sign == "mgl" || sign == "ppm":
		col.what, col.unit = ofOxygen, unit.Other
	case sign == "%":
		col.what, col.unit = ofPercent, unit.Other
	case sign != "":
		return cell{}, fmt.Errorf("%s is not an amount of oxygen", quote(text))
	}
	return cell{n.Value, true, col}, nil
}

// unit is the unit that a column of units has in this row.
func (l line) unit(w what) unit.Unit {
	switch text := l.of(w); {
	case text == "":
		return unit.None
	case w == ofTempUnit:
		return scaleNamed(plainly(text))
	default:
		return lengthNamed(plainly(text))
	}
}

// lengthNamed and scaleNamed give none where the name is of no such unit.
func lengthNamed(name string) unit.Length {
	if u, ok := unit.LengthNamed(name); ok {
		return u
	}
	return unit.NoLength
}

func scaleNamed(name string) unit.Temperature {
	if u, ok := unit.TemperatureNamed(name); ok {
		return u
	}
	return unit.NoTemperature
}

func first(a, b unit.Unit) unit.Unit {
	if a != unit.None {
		return a
	}
	return b
}

// number reads the number at the start of a cell, and what follows it. Where cells are not
// parted by commas a comma in it is a decimal one.
func number(text string, comma bool) (n unit.Number, rest string, ok bool) {
	s := text
	if comma && strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		s = strings.Replace(s, ",", ".", 1)
	}
	s = strings.ReplaceAll(s, "\u2212", "-") // the minus sign of typesetters
	if v, ok := unit.ParseDecimal([]byte(s)); ok {
		return unit.Number{Value: unit.RoundTo(v, 9), Step: stepOf(s)}, "", true
	}
	body := strings.TrimPrefix(strings.TrimPrefix(s, "-"), "+")
	n, rest, ok = unit.ScanNumber(body, false)
	if strings.HasPrefix(s, "-") {
		n.Value = -n.Value
	}
	n.Value = unit.RoundTo(n.Value, 9)
	return n, strings.TrimSpace(rest), ok
}

// stepOf is the size of a number's last digit.
func stepOf(s string) float64 {
	s, _, _ = strings.Cut(strings.ToLower(s), "e")
	_, part, _ := strings.Cut(s, ".")
	return math.Pow10(-len(part))
}

// missing reports whether a cell says that nothing was measured.
func missing(text string) bool {
	switch strings.ToLower(text) {
	case "", "-", "--", "na", "n/a", "n.a.", "nan", "null", "none", "nd", "x", "*":
		return true
	}
	return false
}
