package book

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// Known tells which drops are in a book.
type Known struct {
	book  *Book
	o     notebook.Options
	heads map[identity][]Head
	added map[identity][]profile.Drop
}

// identity is what two pages of one drop share, besides the readings.
type identity struct{ water, spot, date string }

func identityOf(is notebook.Glance) identity {
	fold := func(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
	return identity{fold(is.Water), fold(is.Spot), is.Date}
}

// Known is for the drops of the book as it is now, whose heads these are.
func (b *Book) Known(heads []Head, o notebook.Options) *Known {
	k := &Known{book: b, o: o, heads: map[identity][]Head{}, added: map[identity][]profile.Drop{}}
	for _, h := range heads {
		if h.Err == nil {
			k.heads[identityOf(h.Glance)] = append(k.heads[identityOf(h.Glance)], h)
		}
	}
	return k
}

// Has reports whether a drop of the same water, spot, date and readings is in the book,
// and its number; 0 of one that was told to be added.
func (k *Known) Has(d profile.Drop) (number int, has bool) {
	id := identityOf(notebook.GlanceOf(d))
	for _, was := range k.added[id] {
		if sameReadings(was, d) {
			return 0, true
		}
	}
	for _, e := range k.book.Read(k.heads[id], k.o) {
		if e.Err == nil && sameReadings(e.Drop, d) {
			return e.Number, true
		}
	}
	return 0, false
}

// Added tells of a drop that is in the book from now on.
func (k *Known) Added(d profile.Drop) {
	id := identityOf(notebook.GlanceOf(d))
	k.added[id] = append(k.added[id], d)
}

// sameReadings reports whether two drops have the same readings as they were written, in
// whatever order and units.
func sameReadings(a, b profile.Drop) bool {
	return slices.Equal(written(a), written(b))
}

// asWritten is a reading in SI, before any correction.
type asWritten struct{ depthM, tempC, oxygen float64 }

// written are the readings of a drop, sorted. A tenth of a millimetre or a thousandth of a
// degree is no difference: the same number in other units may be off by so much.
func written(d profile.Drop) []asWritten {
	round := func(v float64) float64 { return math.Round(v*1e3) / 1e3 }
	var out []asWritten
	for _, r := range d.Readings {
		oxygen := -1.0
		if r.Oxygen.Known {
			oxygen = round(r.Oxygen.Value)
		}
		out = append(out, asWritten{round(r.DepthUnit.Metres(r.Depth)), round(r.TempUnit.ToC(r.Temp)), oxygen})
	}
	slices.SortFunc(out, func(x, y asWritten) int {
		return cmp.Or(cmp.Compare(x.depthM, y.depthM), cmp.Compare(x.tempC, y.tempC), cmp.Compare(x.oxygen, y.oxygen))
	})
	return out
}

// Add saves a drop that has ended, whole or not at all, durably and under a name of its
// own: nothing is written over.
func (b *Book) Add(d profile.Drop) (path string, err error) {
	p := &Page{book: b}
	err = p.Save(d, true)
	return p.Path, err
}
