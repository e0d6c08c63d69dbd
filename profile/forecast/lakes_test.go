package forecast

import (
	"encoding/csv"
	"math"
	"os"
	"runtime"
	"slices"
	"sync"
	"testing"
	"time"

	"coldseam/profile/internal/measured"
	"coldseam/profile/layers"
)

// lakeDrop is a cast as a drop of every reading, and as an angler would read it: at eight
// depths, with errors of 0.25 C and 0.1 m.
type lakeDrop struct {
	lake, group string
	dense, few  Drop
}

var (
	readLakes []lakeDrop
	readOnce  sync.Mutex
)

// lakes are the drops of all lakes, those of a lake together and by date.
func lakes(tb testing.TB) []lakeDrop {
	tb.Helper()
	readOnce.Lock()
	defer readOnce.Unlock()
	if readLakes != nil {
		return readLakes
	}
	var out []lakeDrop
	for group, file := range map[string]string{"Cascade": "cascade_dense.csv", "Virginia": "virginia.csv"} {
		days := datesOf(tb, file)
		for _, c := range measured.Casts(tb, file) {
			if len(c.Depths) < 3 {
				continue
			}
			d := lakeDrop{lake: c.Lake(), group: group}
			d.dense = Drop{days[c.Name], layers.Find(c.Column(tb))}
			d.few = Drop{days[c.Name], layers.Find(c.Read(tb, c.Even(8), 0.25, 0.1))}
			out = append(out, d)
		}
	}
	slices.SortStableFunc(out, func(a, b lakeDrop) int {
		if a.lake != b.lake {
			if a.lake < b.lake {
				return -1
			}
			return 1
		}
		return a.dense.When.Compare(b.dense.When)
	})
	readLakes = slices.CompactFunc(out, func(a, b lakeDrop) bool { return a.lake == b.lake && a.dense.When.Equal(b.dense.When) })
	return readLakes
}

// datesOf are the days of a file's casts.
func datesOf(tb testing.TB, file string) map[string]time.Time {
	tb.Helper()
	f, err := os.Open(measured.Path(tb, file))
	if err != nil {
		tb.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	days := map[string]time.Time{}
	for _, row := range rows[1:] {
		day, err := time.Parse(time.DateOnly, row[1])
		if err != nil {
			tb.Fatal(err)
		}
		days[row[0]] = day
	}
	return days
}

// hidden is one forecast of a drop that was hidden.
type hidden struct {
	lake, group string
	days        float64
	first       bool    // the first year of its lake
	levelC      float64 // of an isotherm
	same        float64 // what the last drop had
	features    []float64
	doubt       float64
	typical     float64 // of earlier years,
	years       int     // of which there are so many
	truth       float64
}

// of gives the forecast with coefficients, and half of its interval.
func (h hidden) of(c coefficients) (best, half float64) {
	best = h.same
	for i, x := range h.features {
		best += c.change[i] * x
	}
	if h.years > 0 {
		best = blend(best, h.typical, h.days)
	}
	return math.Max(best, 0), c.scale * h.doubt
}

// hide hides every drop in turn and forecasts it from each that was taken from least to most
// days before and those before that; with few from drops of few readings. The truth is that
// of the dense drop.
func hide(tb testing.TB, q quantity, least, most float64, few bool) []hidden {
	all := lakes(tb)
	out := make([][]hidden, len(all))
	var wg sync.WaitGroup
	work := make(chan int)
	for range runtime.NumCPU() {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for i := range work {
				out[i] = hideOne(all, i, q, least, most, few)
			}
		}()
	}
	for i := range all {
		work <- i
	}
	close(work)
	wg.Wait()
	return slices.Concat(out...)
}

// hideOne hides drop i.
func hideOne(all []lakeDrop, i int, q quantity, least, most float64, few bool) (out []hidden) {
	target := all[i]
	truth, ok := q.of(target.dense.Layers)
	if !ok {
		return nil
	}
	from := i
	for from > 0 && all[from-1].lake == target.lake {
		from--
	}
	for j := from; j < i; j++ {
		days := target.dense.When.Sub(all[j].dense.When).Hours() / 24
		if days < least || days > most {
			continue
		}
		var drops []Drop
		for _, d := range all[from : j+1] {
			if few {
				drops = append(drops, d.few)
			} else {
				drops = append(drops, d.dense)
			}
		}
		w, err := newWater(Input{Day: target.dense.When, Drops: drops})
		if err != nil {
			continue
		}
		same, ok := q.of(w.last().Layers)
		if !ok {
			continue
		}
		own := q.interval(w.last().Layers)
		h := hidden{lake: target.lake, group: target.group, days: days, first: len(w.earlier) == 0, same: same,
			features: q.features(&w), doubt: q.doubt(&w, (own.High-own.Low)/2), truth: truth}
		h.typical, h.years = w.years(q)
		if t, ok := q.(isotherm); ok {
			h.levelC = float64(t)
		}
		out = append(out, h)
	}
	return out
}
