package exchange

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/internal/drawn"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// caught are lines of catches, read.
func caught(t interface{ Fatal(...any) }) []profile.Catch {
	var out []profile.Catch
	for _, text := range []string{"18:10 rainbow 16 ft black midge", "2 perch", "=cmd, 3.5 m", "'+1 pike, \"big\"; lost", "trout 9 ft, pond \\# 3"} {
		c, err := notebook.ReadCatch(text)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, c)
	}
	return out
}

// hostile are texts that a spreadsheet would run, that look like something else, or that a
// CSV must quote.
var hostile = []string{"=1+1", "+1-2", "-2+3", "@SUM(A1)", "'=1", "''", "'", "a\"b\"", "a,b;c|d", "-5", "+5", "1e5", "NA", "--", "-", "\uff1dx", "🐟 👨\u200d👩", "sep=;", "# no", "\\# yes", "x\u00a0y", "null"}

// drops draws several drops, some with hostile texts and some without readings.
func drops(t *rapid.T, fish []profile.Catch) []profile.Drop {
	var out []profile.Drop
	for range rapid.IntRange(1, 4).Draw(t, "drops") {
		d := drawn.Drop(t, fish)
		for _, field := range []*string{&d.Water, &d.Spot, &d.For, &d.Weight, &d.Sky, &d.Colour, &d.Anchor} {
			if rapid.IntRange(0, 3).Draw(t, "hostile") == 0 {
				*field = rapid.SampledFrom(hostile).Draw(t, "text")
			}
		}
		for range rapid.IntRange(0, 2).Draw(t, "remarks") {
			d.Notes = append(d.Notes, rapid.SampledFrom(hostile).Draw(t, "note"))
		}
		if rapid.IntRange(0, 5).Draw(t, "none") == 0 {
			d.Readings = nil
		}
		out = append(out, d)
	}
	return out
}

func sources(drops []profile.Drop) []Source {
	var out []Source
	for i, d := range drops {
		out = append(out, Source{Page: fmt.Sprintf("page %d.txt", i/2), Nth: i%2 + 1, Drop: d})
	}
	return out
}

var zone = time.FixedZone("-05:00", -5*3600)

// TestLongLosesNothing: any drops that pages hold are the same when their long form is read.
func TestLongLosesNothing(t *testing.T) {
	fish := caught(t)
	rapid.Check(t, func(t *rapid.T) {
		want := drops(t, fish)
		items, err := Items(sources(want))
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := WriteLong(&out, items, zone); err != nil {
			t.Fatal(err)
		}
		text := out.String()
		if rapid.Bool().Draw(t, "Windows") {
			text = "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n")
		}
		got, notes, err := ReadCSV("long.csv", strings.NewReader(text))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if diff := cmp.Diff(want, got, cmpopts.EquateEmpty(), cmpopts.IgnoreFields(profile.Reading{}, "Line", "Text")); diff != "" {
			t.Fatalf("(-want +got):\n%s\n%s", diff, text)
		}
		for _, n := range notes {
			if !strings.Contains(n.Text, "utc_offset") {
				t.Fatalf("%v\n%s", n, text)
			}
		}
	})
}

// TestWideKeeps: the wide form keeps the last temperature and oxygen of each depth, as
// written, and all header keys.
func TestWideKeeps(t *testing.T) {
	fish := caught(t)
	rapid.Check(t, func(t *rapid.T) {
		all := drops(t, fish)
		items, err := Items(sources(all))
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		lost, err := WriteWide(&out, items, nil)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(all, func(d profile.Drop) bool { return len(d.Readings) > 0 }) {
			return // a table without a depth
		}
		got, _, err := ReadCSV("wide.csv", strings.NewReader(out.String()))
		if err != nil {
			t.Fatalf("%v\n%s", err, out.String())
		}
		again := 0
		for i := range all {
			again += loseAsWide(&all[i])
			slices.SortStableFunc(got[i].Readings, shallower)
		}
		if diff := cmp.Diff(all, got, cmpopts.EquateEmpty(), cmpopts.IgnoreFields(profile.Reading{}, "Line", "Text", "Step", "SpreadC")); diff != "" || again != lost {
			t.Fatalf("%d lost, want %d (-want +got):\n%s\n%s", lost, again, diff, out.String())
		}
	})
}

// loseAsWide does to a drop what its wide form does, and tells how many readings went.
func loseAsWide(d *profile.Drop) (lost int) {
	var out []profile.Reading
	oxygen := map[wideHead]profile.Optional{}
	for i, r := range d.Readings {
		if h := headAt(&d.Readings[i]); r.Oxygen.Known {
			h.scale = unit.NoTemperature
			oxygen[h] = r.Oxygen
		}
		if j := slices.IndexFunc(out, func(o profile.Reading) bool { return headAt(&o) == headAt(&r) }); j >= 0 {
			out[j], lost = r, lost+1
			continue
		}
		out = append(out, r)
	}
	for i := range out {
		h := headAt(&out[i])
		h.scale = unit.NoTemperature
		out[i].Oxygen = oxygen[h]
	}
	slices.SortStableFunc(out, shallower)
	d.Readings = out
	return lost
}

func shallower(a, b profile.Reading) int {
	key := func(r *profile.Reading) string {
		return fmt.Sprintf("%020.9f %s %s", r.DepthUnit.Metres(r.Depth), headAt(r).place(), r.TempUnit)
	}
	return strings.Compare(key(&a), key(&b))
}

// Cells that a spreadsheet runs begin with an apostrophe, numbers never, and all come back.
func TestHarmless(t *testing.T) {
	for cell, want := range map[string]string{
		"=1+1": "'=1+1", "+1-2": "'+1-2", "-2+3": "'-2+3", "@a": "'@a", "\ta": "'\ta", "\ra": "'\ra", "'=1": "''=1", "\uff1d1": "'\uff1d1",
		"-0.3": "-0.3", "+5": "+5", "-": "'-", "--": "'--", "'tis": "'tis", "''": "''", "": "", "a=b": "a=b",
	} {
		if got := harmless(cell); got != want || restored(got) != cell {
			t.Errorf("%q: %q, back %q", cell, got, restored(got))
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		cell := rapid.StringMatching(`['=+@\-\ta1]{0,6}`).Draw(t, "cell")
		out := harmless(cell)
		if restored(out) != cell {
			t.Fatalf("%q: %q", cell, out)
		}
		if strings.ContainsAny(out[:min(1, len(out))], "=+-@\t\r") {
			if _, number := unit.ParseDecimal([]byte(out)); !number {
				t.Fatalf("%q", out)
			}
		}
	})
}
