package exchange

import (
	"encoding/csv"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// field is a column of what a drop, or one of its readings, says.
type field[T any] struct {
	head string
	kept bool // also where it is empty throughout
	cell func(T) string
}

type (
	dropField    = field[*Item]
	readingField = field[*profile.Reading]
)

// noted are the columns of a drop whose names differ from those of the header keys.
var notedHeads = map[string]string{"water": "lake", "spot": "site", "oxygen": "oxygen_unit", "note": "comments"}

// withUnits are the header keys that hold one number and its unit.
var withUnits = []string{"bottom", "deepest", "secchi", "altitude", "lake length", "bulb below zero", "thermometer precision", "wait", "time constant", "fly weight", "retrieve"}

// first are the columns before the readings', the others stand behind them.
func firstFields(zone *time.Location) []dropField {
	return []dropField{
		{"drop", true, func(it *Item) string { return it.ID }},
		{"lake", true, func(it *Item) string { return it.Drop.Water }},
		{"site", true, func(it *Item) string { return it.Drop.Spot }},
		{"date", true, func(it *Item) string { day, _ := dayAndTime(it.Drop.Date); return day }},
		{"time", true, func(it *Item) string { _, clock := dayAndTime(it.Drop.Date); return clock }},
		{"utc_offset", zone != nil, func(it *Item) string {
			if off := offset(it.Drop.Date, zone); off != "" {
				return "UTC" + off
			}
			return ""
		}},
	}
}

// keyFields are the columns of the header keys, all but those that stand first. A number
// has its unit in its column's name where the drops agree in it, else in a column beside.
func keyFields(items []Item) []dropField {
	var out []dropField
	for _, key := range notebook.Keys() {
		if slices.Contains([]string{"water", "spot", "date"}, key) {
			continue
		}
		head := strings.ReplaceAll(key, " ", "_")
		if h, ok := notedHeads[key]; ok {
			head = h
		}
		value := func(it *Item) string { return strings.Join(notebook.Values(&it.Drop, key), "\n") }
		amount := func(it *Item) string { n, _ := amountOf(value(it)); return n }
		unitOf := func(it *Item) string { _, u := amountOf(value(it)); return u }
		if !slices.Contains(withUnits, key) {
			out = append(out, dropField{head, key == "units", value})
			continue
		}
		switch units := used(items, unitOf); {
		case len(units) == 1:
			out = append(out, dropField{head + "_" + suffix(units[0]), false, amount})
		case len(units) > 1:
			out = append(out, dropField{head, false, amount}, dropField{head + "_unit", false, unitOf})
		}
	}
	return out
}

// amountOf parts a value such as "31 ft".
func amountOf(value string) (number, sign string) {
	number, sign, _ = strings.Cut(value, " ")
	return number, sign
}

// suffix is a unit as a column's name has it.
func suffix(sign string) string {
	return strings.ToLower(strings.ReplaceAll(sign, "/", "_per_"))
}

// used are the different cells of items, without the empty ones, in their order.
func used(items []Item, cell func(*Item) string) []string {
	var out []string
	for i := range items {
		if c := cell(&items[i]); c != "" && !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	return out
}

// unitsOf are the units in which depths and temperatures were written.
func unitsOf(items []Item) (depths, temps []unit.Unit) {
	for _, it := range items {
		for _, r := range it.Drop.Readings {
			if !slices.Contains(depths, r.DepthUnit) {
				depths = append(depths, r.DepthUnit)
			}
			if !slices.Contains(temps, r.TempUnit) {
				temps = append(temps, r.TempUnit)
			}
		}
	}
	return depths, temps
}

// readingFields are the columns of the readings: as written, as corrected, and what was
// found odd.
func readingFields(items []Item) []readingField {
	depths, temps := unitsOf(items)
	var out []readingField
	depthHead, tempHead := "depth", "temp"
	if len(depths) == 1 {
		depthHead += "_" + suffix(depths[0].String())
	}
	if len(temps) == 1 {
		tempHead += "_" + suffix(temps[0].String())
	}
	out = append(out, readingField{depthHead, true, func(r *profile.Reading) string { return exact(r.Depth) }})
	if len(depths) > 1 {
		out = append(out, readingField{"depth_unit", true, func(r *profile.Reading) string { return r.DepthUnit.String() }})
	}
	out = append(out, readingField{tempHead, true, func(r *profile.Reading) string { return digits(r.Temp, r.Step) }})
	if len(temps) > 1 {
		out = append(out, readingField{"temp_unit", true, func(r *profile.Reading) string { return r.TempUnit.String() }})
	}
	return append(out,
		readingField{"temp_step", false, func(r *profile.Reading) string {
			if stepOf(digits(r.Temp, r.Step)) == r.Step {
				return ""
			}
			return exact(r.Step)
		}},
		readingField{"temp_plus_minus_c", false, func(r *profile.Reading) string {
			if r.SpreadC == 0 {
				return ""
			}
			return exact(r.SpreadC)
		}},
		readingField{"do_mgl", true, func(r *profile.Reading) string {
			if !r.Oxygen.Known {
				return ""
			}
			return exact(r.Oxygen.Value)
		}},
		readingField{"depth_corrected_m", true, func(r *profile.Reading) string { return exact(r.DepthM) }},
		readingField{"temp_corrected_c", true, func(r *profile.Reading) string { return exact(r.TempC) }},
		readingField{"flag", true, func(r *profile.Reading) string { return string(r.Flag) }},
		readingField{"may_mean", false, func(r *profile.Reading) string { return r.Guess }},
	)
}

// exact is a number with all its digits and no more.
func exact(v float64) string { return strconv.FormatFloat(v+0, 'f', -1, 64) }

// digits is a number whose last digit has the given step, where that is a tenth, a
// hundredth and so on and loses nothing; else with all its digits.
func digits(v, step float64) string {
	if step > 0 && step <= 1 {
		places := int(math.Round(-math.Log10(step)))
		if text := strconv.FormatFloat(v+0, 'f', places, 64); math.Pow10(-places) == step {
			if back, err := strconv.ParseFloat(text, 64); err == nil && back == v {
				return text
			}
		}
	}
	return exact(v)
}

// kept leaves the fields that hold something somewhere.
func kept[T any](fields []field[T], each func(func(T))) []field[T] {
	var open []int
	seen := make([]bool, len(fields))
	for i, f := range fields {
		if seen[i] = f.kept; !f.kept {
			open = append(open, i)
		}
	}
	each(func(v T) {
		open = slices.DeleteFunc(open, func(i int) bool {
			seen[i] = fields[i].cell(v) != ""
			return seen[i]
		})
	})
	var out []field[T]
	for i, f := range fields {
		if seen[i] {
			out = append(out, f)
		}
	}
	return out
}

func heads[T any](fields []field[T]) []string {
	out := make([]string, len(fields))
	for i, f := range fields {
		out[i] = f.head
	}
	return out
}

func cells[T any](fields []field[T], v T) []string {
	out := make([]string, len(fields))
	for i, f := range fields {
		out[i] = f.cell(v)
	}
	return out
}

// writer writes rows whose cells no spreadsheet runs.
type writer struct{ *csv.Writer }

func newWriter(to io.Writer) writer { return writer{csv.NewWriter(to)} }

func (w writer) row(parts ...[]string) {
	row := slices.Concat(parts...)
	for i, cell := range row {
		row[i] = harmless(cell)
	}
	w.Write(row) // Flush keeps the error
}

func (w writer) end() error {
	w.Flush()
	return w.Error()
}
