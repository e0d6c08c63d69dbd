package page

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"testing"

	"coldseam/chart"
)

type drawnSeries struct {
	ID        string
	LineStyle struct{ Type string }
	AreaStyle *struct{ Opacity float64 }
	MarkArea  struct {
		Data [][]struct {
			Name      string
			ItemStyle struct{ Color string }
		}
	}
}

// optionsOf are the parts of a page's options that say how a thing is drawn.
func optionsOf(t *testing.T, page string) (out struct {
	YAxis []struct {
		Inverse  bool
		Min, Max float64
	}
	Series []drawnSeries
}) {
	t.Helper()
	var all struct{ Option json.RawMessage }
	if err := json.Unmarshal([]byte(dataElement.FindStringSubmatch(page)[1]), &all); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(all.Option, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// Depth goes downward, from the surface: on the picture and in the names beside it.
func TestDepthDownward(t *testing.T) {
	for n, drops := range map[int][]chart.Drop{2: {lake(t, "alder-kettle-july")}, 1: three(t)} {
		axes := optionsOf(t, written(t, Options{Script: stub}, drops...)).YAxis
		if len(axes) != n {
			t.Errorf("%d axes of depth, want %d", len(axes), n)
		}
		for _, a := range axes {
			if !a.Inverse || a.Min != 0 || a.Max < 31 { // the bottom at 31 ft
				t.Errorf("%+v", a)
			}
		}
	}
}

// The curve is drawn through between the readings, and broken where it is assumed.
func TestAssumedBroken(t *testing.T) {
	d := figureOf(t, "units: m C\nbottom: 12 m\n0.8 20\n4 16\n10 10\n")
	page := written(t, Options{Script: stub}, d)
	parts, drawn := runs(d.Curve), optionsOf(t, page)
	if len(parts) != 3 {
		t.Fatalf("%d parts, want one above, one between and one below the readings", len(parts))
	}
	for i, want := range []string{short, "solid", short} {
		k := slices.IndexFunc(drawn.Series, func(s drawnSeries) bool {
			return s.ID == "curve"+strconv.Itoa(i)
		})
		if k < 0 || drawn.Series[k].LineStyle.Type != want {
			t.Errorf("part %d, from %.1f m: %+v, want %s", i, parts[i][0].DepthM, drawn.Series[k].LineStyle, want)
		}
	}
}

// The oxygen of a reading that was left out is no part of its curve: 11.9 mg/L at 10 ft.
func TestOxygenLeftOut(t *testing.T) {
	d := figureOf(t, leftOutOxygen)
	if slices.IndexFunc(d.Readings, func(r chart.Reading) bool { return !r.Used && r.Oxygen.Value == 11.9 }) < 0 {
		t.Fatal("the reading was used")
	}
	page := dataOf(t, written(t, Options{Script: stub}, d))
	if got := page.points(t, "oxygen"); len(got) != 5 || slices.ContainsFunc(got, func(p []float64) bool { return p[0] > 9 }) {
		t.Errorf("%v", got)
	}
	page = dataOf(t, written(t, Options{Script: stub}, d, d))
	if got := page.points(t, "oxygen1"); len(got) != 5 {
		t.Errorf("compared: %v", got)
	}
}

const leftOutOxygen = "units: ft F\nbottom: 26 ft\n0 74 DO 9\n5 73 DO 9\n10 720 DO 11.9\n15 62 DO 8\n20 55 DO 7\n25 52 DO 6\n"

// The water of which oxygen is not known is hatched, in its lane and in the band.
func TestUnprovenHatched(t *testing.T) {
	d := lake(t, "alder-kettle-july")
	hatched := map[string]int{}
	for _, s := range optionsOf(t, written(t, Options{Script: stub}, d)).Series {
		for _, a := range s.MarkArea.Data {
			hatch := a[0].ItemStyle.Color == falling || a[0].ItemStyle.Color == unknown
			if (a[0].Name == "oxygen unknown") != hatch {
				t.Errorf("%+v", a[0])
			}
			if hatch {
				hatched[s.ID]++
			}
		}
	}
	if hatched["lanes"] != 1 || hatched["zones"] != 1 {
		t.Errorf("hatched %v", hatched)
	}
}

// The fish's limits stand where they are on their axes: for rainbow trout 66 F.
func TestLimits(t *testing.T) {
	d := lake(t, "alder-kettle-july")
	page := written(t, Options{Script: stub}, d)
	for _, at := range dataOf(t, page).points(t, "limit0") {
		if want := d.Units.Shown().Temp.FromC(d.Limits.WarmC.Value); !d.Limits.WarmC.Known || at[0] < want-1e-4 || at[0] > want+1e-4 {
			t.Errorf("the limit stands at %v, want %v", at[0], want)
		}
	}
	if !strings.Contains(page, "66 F, the fish&#39;s limit") {
		t.Error("the limit has no name")
	}
}
