package exchange

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// WriteLong writes a row for each reading, and one for a drop without any. Comments and
// catches, of which there may be many lines, stand in a drop's first row alone. zone, where
// it is not nil, is that of the clock by which the drops have their times.
func WriteLong(to io.Writer, items []Item, zone *time.Location) error {
	eachItem := func(do func(*Item)) {
		for i := range items {
			do(&items[i])
		}
	}
	first := kept(firstFields(zone), eachItem)
	last := kept(keyFields(items), eachItem)
	middle := kept(readingFields(items), func(do func(*profile.Reading)) {
		eachItem(func(it *Item) {
			for i := range it.Drop.Readings {
				do(&it.Drop.Readings[i])
			}
		})
	})
	w := newWriter(to)
	w.row(heads(first), heads(middle), heads(last))
	eachItem(func(it *Item) {
		before, after := cells(first, it), cells(last, it)
		for i := range it.Drop.Readings {
			w.row(before, cells(middle, &it.Drop.Readings[i]), after)
			for j, f := range last {
				if f.head == notedHeads["note"] || f.head == "caught" {
					after[j] = ""
				}
			}
		}
		if len(it.Drop.Readings) == 0 {
			w.row(before, make([]string, len(middle)), after)
		}
	})
	return w.end()
}

// wideHead is a column of the wide form: a depth and a scale as they were written.
type wideHead struct {
	depth depth
	scale unit.Temperature
}

func headAt(r *profile.Reading) wideHead {
	return wideHead{depth{r.Depth, r.DepthUnit}, r.TempUnit}
}

func (h wideHead) place() string { return exact(h.depth.value) + suffix(h.depth.unit.String()) }

// WriteWide writes a row for each drop, with a column for each depth and scale, the
// temperatures as they were written. Of readings of one depth the last counts; lost is how
// many stood before it.
func WriteWide(to io.Writer, items []Item, zone *time.Location) (lost int, err error) {
	eachItem := func(do func(*Item)) {
		for i := range items {
			do(&items[i])
		}
	}
	var temps, oxygen []wideHead
	seen, seenOxygen := map[wideHead]bool{}, map[wideHead]bool{}
	eachItem(func(it *Item) {
		for i := range it.Drop.Readings {
			r := &it.Drop.Readings[i]
			h := headAt(r)
			if !seen[h] {
				seen[h] = true
				temps = append(temps, h)
			}
			if h.scale = unit.NoTemperature; r.Oxygen.Known && !seenOxygen[h] {
				seenOxygen[h] = true
				oxygen = append(oxygen, h)
			}
		}
	})
	for _, hs := range [][]wideHead{temps, oxygen} {
		slices.SortFunc(hs, func(a, b wideHead) int {
			switch x, y := a.depth.unit.Metres(a.depth.value), b.depth.unit.Metres(b.depth.value); {
			case x < y:
				return -1
			case x > y:
				return 1
			}
			return strings.Compare(a.place()+a.scale.String(), b.place()+b.scale.String())
		})
	}
	var names []string
	for _, h := range temps {
		names = append(names, "temp_"+suffix(h.scale.String())+"_"+h.place())
	}
	for _, h := range oxygen {
		names = append(names, "do_mgl_"+h.place())
	}
	first := kept(firstFields(zone), eachItem)
	last := kept(append(keyFields(items), dropField{"flags", false, flags}), eachItem)
	w := newWriter(to)
	w.row(heads(first), names, heads(last))
	eachItem(func(it *Item) {
		at := map[wideHead]string{}
		for i := range it.Drop.Readings {
			r := &it.Drop.Readings[i]
			h := headAt(r)
			if _, again := at[h]; again {
				lost++
			}
			at[h] = digits(r.Temp, r.Step)
			if h.scale = unit.NoTemperature; r.Oxygen.Known {
				at[h] = exact(r.Oxygen.Value)
			}
		}
		var row []string
		for _, h := range append(slices.Clone(temps), oxygen...) {
			row = append(row, at[h])
		}
		w.row(cells(first, it), row, cells(last, it))
	})
	return lost, w.end()
}

// flags are what was found odd in a drop, "15ft spike".
func flags(it *Item) string {
	var out []string
	for i := range it.Drop.Readings {
		if r := &it.Drop.Readings[i]; r.Flag != "" {
			out = append(out, fmt.Sprintf("%s %s", headAt(r).place(), r.Flag))
		}
	}
	return strings.Join(out, "; ")
}
