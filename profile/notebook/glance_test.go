package notebook

import (
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// sameAsRead compares a glance at a page with its reading, and says whether there was one.
func sameAsRead(t interface {
	Helper()
	Fatalf(string, ...any)
}, g *Glancer, page string, o Options) bool {
	t.Helper()
	got, ok := g.Look([]byte(page))
	if !ok {
		return false
	}
	sheets, err := Read([]byte(page), o)
	if err != nil || len(sheets) != 1 || len(sheets[0].Drop.Readings) == 0 {
		t.Fatalf("a glance finds %+v, Read %d drops, %v\n%s", got, len(sheets), err, page)
	}
	if want := GlanceOf(sheets[0].Drop); got != want {
		t.Fatalf("a glance finds %+v, Read %+v\n%s", got, want, page)
	}
	want := sheets[0].Drop.Catches
	if caught := g.Catches([]byte(page)); !slices.Equal(caught, want) {
		t.Fatalf("a glance finds %+v caught, Read %+v\n%s", caught, want, page)
	}
	return true
}

// glanceOptions are those that pages of the book are read with: none, and settings.
func glanceOptions() []Options {
	return []Options{{Unread: true}, {Unread: true, Waters: []string{"Sedge Mere"}, Defaults: []Header{
		{Key: "units", Value: "m C", From: "settings"}, {Key: "for", Value: "brook trout", From: "settings"}, {Key: "oxygen", Value: "%", From: "settings"},
		{Key: "marks at", Value: "gunwale 1.5 ft", From: "settings"}, {Key: "thermometer", Value: "reads 32.5 F in ice water", From: "settings"},
	}}}
}

// TestGlance: what a glance says of a page that was written is what Read says, and of one
// that was then edited by hand it says the same or nothing.
func TestGlance(t *testing.T) {
	options := glanceOptions()
	glancers := []*Glancer{NewGlancer(options[0]), NewGlancer(options[1])}
	edits := []func(*rapid.T, []string) []string{
		func(t *rapid.T, l []string) []string { // a line moved
			i, j := rapid.IntRange(0, len(l)-1).Draw(t, "i"), rapid.IntRange(0, len(l)-1).Draw(t, "j")
			l[i], l[j] = l[j], l[i]
			return l
		},
		func(t *rapid.T, l []string) []string { // a line again
			i := rapid.IntRange(0, len(l)-1).Draw(t, "i")
			return slices.Insert(l, rapid.IntRange(0, len(l)-1).Draw(t, "j"), l[i])
		},
		func(t *rapid.T, l []string) []string { // a line from elsewhere
			line := rapid.SampledFrom([]string{"", "---", "date: 7/8/2026", "water: ", "spot: #3", "water: Pond #3 \\# x", "bottom: weeds", "units: ft", "north bay",
				"# windy", "# not ended: coldseam drop goes on with it", "wind: none to speak of", "12 ft: 61 F", "0 m: 20 C", "3 71", "5 ft: 70 F 71 F", "depth temp",
				"note: # nothing", "lake: Heron Reservoir", "5 ft: -71.25 F", "1000 m: 4 C", "3281 ft: 39.2 F", "5.1234 m: 20 C", "7 ft: 65 1/2 F", "7 ft: 65 3/2 F",
				"date: 2026-02-30", "date: 2026-07-18T14:20", "Date: 2026-07-18", "for: \u2028x", "spot: a\u0085b", "bottom: 24 ft 52", "bottom: 5 ft 6 in", "3 m: 20 C  DO 99 mg/L", "caught: 18:10 rainbow 16 ft", "caught: nothing", "caught: # x"}).Draw(t, "line")
			return slices.Insert(l, rapid.IntRange(0, len(l)).Draw(t, "at"), line)
		},
		func(t *rapid.T, l []string) []string { // a sign in a line
			i := rapid.IntRange(0, len(l)-1).Draw(t, "i")
			at := rapid.IntRange(0, len(l[i])).Draw(t, "at")
			l[i] = l[i][:at] + rapid.SampledFrom([]string{"#", " ", ":", "\t", "-", "9", ".", ",", "\r", "\xff", "x"}).Draw(t, "sign") + l[i][at:]
			return l
		},
	}
	rapid.Check(t, func(t *rapid.T) {
		d := drawDrop(t)
		page := Write(d)
		if rapid.Bool().Draw(t, "cut off") {
			page += "# not ended: coldseam drop goes on with it\n"
		}
		for range rapid.IntRange(0, 3).Draw(t, "edits") {
			lines := strings.Split(strings.TrimSuffix(page, "\n"), "\n")
			page = strings.Join(rapid.SampledFrom(edits).Draw(t, "edit")(t, lines), "\n") + "\n"
		}
		for i, o := range options {
			sameAsRead(t, glancers[i], page, o)
		}
	})
}

// TestGlanceWritten: pages as Write makes them in feet and metres are known at a glance.
func TestGlanceWritten(t *testing.T) {
	for _, o := range glanceOptions() {
		for _, page := range []string{
			"water: Alder Kettle\nspot: Pond #3\ndate: 2026-07-18 14:20\nunits: ft F\nbottom: 31 ft\nwind: 8 mph SW\nmarks at: water\nfor: rainbow\nnote: mist\ncaught: 18:10 rainbow 16 ft black midge\ncaught: 2 rainbow\n0 ft: 74 F\n5 ft: 73.5 F\n10 ft: 65 1/2 F +-0.5 F\n20 ft: 56 F  DO 7.5 mg/L\n",
			"date: 2026-07-18\nunits: m C\n0 m: 22 C\n1.5 m: 21.5 C\n",
		} {
			sheets, err := Read([]byte(page), o)
			if err != nil {
				t.Fatal(err)
			}
			page = Write(sheets[0].Drop)
			if !sameAsRead(t, NewGlancer(o), page, o) {
				t.Errorf("no glance at\n%s", page)
			}
		}
		for _, p := range pages { // notebooks as they come
			sameAsRead(t, NewGlancer(o), p.page, o)
		}
	}
	if _, ok := NewGlancer(Options{Flags: []Header{{Key: "water", Value: "x"}}}).Look([]byte("water: y\nunits: ft F\n0 ft: 70 F\n")); ok {
		t.Error("a flag wins over the page")
	}
}

// TestGlanceLeaves: pages that Read refuses, or takes otherwise than line by line, are left
// to it.
func TestGlanceLeaves(t *testing.T) {
	readings := "0 ft: 74 F\n5 ft: 73 F\n10 ft: 70 F\n"
	for _, page := range []string{
		"date: 2026-02-30\n" + readings, "date: 7/8/2026\n" + readings, "date: 18 July 2026\n" + readings, "date: 2026-07-18 24:00\n" + readings,
		readings + readings, "10 ft: 70 F\n5 ft: 73 F\n", "units: bananas\n" + readings, "water: \n" + readings, "water: X\nwater: Y\n" + readings,
		readings + "water: X\n", "bottom: 9999 m\n" + readings, "caught: nothing\n" + readings, "0 ft: 74\n", "note: x\n", "", "0 ft: 74 F",
		"5000 ft: 39 F\n", "water: a\u0085b\n" + readings, "water: a\xff\n" + readings, "\ufeff" + readings,
	} {
		if got, ok := NewGlancer(Options{}).Look([]byte(page)); ok {
			t.Errorf("a glance finds %+v in %q", got, page)
		}
	}
}

// FuzzGlance: whatever the page, a glance says what Read says, or nothing.
func FuzzGlance(f *testing.F) {
	for _, p := range pages {
		if sheets, err := Read([]byte(p.page), p.options()); err == nil {
			f.Add(Write(sheets[0].Drop))
		}
	}
	options := glanceOptions()
	f.Fuzz(func(t *testing.T, page string) {
		for _, o := range options {
			sameAsRead(t, NewGlancer(o), page, o)
		}
	})
}

// BenchmarkGlance looks at the page of BenchmarkRead.
func BenchmarkGlance(b *testing.B) {
	data, err := os.ReadFile("../../testdata/alder-kettle-july.txt")
	if err != nil {
		b.Fatal(err)
	}
	sheets, err := Read(data, Options{})
	if err != nil {
		b.Fatal(err)
	}
	page, g := []byte(Write(sheets[0].Drop)), NewGlancer(Options{})
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := g.Look(page); !ok {
			b.Fatal("no glance")
		}
	}
}
