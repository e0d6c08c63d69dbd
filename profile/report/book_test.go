package report

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/demo"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

// TestInBook: a line of the list has what the plan of the drop says of thermocline and band,
// in the drop's units, or why there is none.
func TestInBook(t *testing.T) {
	kettle := demo.Plan(t, demo.Page(t, "alder-kettle-july"))
	caught := profile.Drop{Date: "2026-07-18", Water: "Alder\x1b Kettle", Catches: []profile.Catch{{Count: 2}, {Count: 1}}}
	page := func(text string) plan.Plan { return demo.Plan(t, text) }
	tooFew, mixed := page("units: m C\n0 20\n4 19"), page("units: m C\n0 8\n2 8\n4 8\n6 8")
	for _, c := range []struct {
		name string
		got  BookLine
		want BookLine
	}{
		{"layered", inBook(3, kettle.Drop, &kettle, ""), BookLine{3, kettle.Drop.Date, kettle.Drop.Water, kettle.Drop.Spot, "", "14 to 16 ft", "15 to 29 ft", ""}},
		{"too few", inBook(1, tooFew.Drop, &tooFew, ""), BookLine{Number: 1, Thermocline: "not known", Band: "4 to 4.6 m"}},
		{"one layer", inBook(1, mixed.Drop, &mixed, ""), BookLine{Number: 1, Thermocline: "none", Band: "0 to 6 m"}},
		{"caught", inBook(2, caught, nil, noReadings), BookLine{2, "2026-07-18", "Alder\ufffd Kettle", "", "3", "", "", "no readings"}},
		{"cut off", inBook(2, caught, nil, notEnded(kettle.Drop)), BookLine{2, "2026-07-18", "Alder\ufffd Kettle", "", "3", "", "", "not ended, 10 readings"}},
		{"odd", inBook(2, caught, nil, allOdd), BookLine{2, "2026-07-18", "Alder\ufffd Kettle", "", "3", "", "", "no reading that can be used"}},
		{"fish", inBook(2, caught, nil, fishUnknown(profile.Drop{For: "snark"})), BookLine{2, "2026-07-18", "Alder\ufffd Kettle", "", "3", "", "", "no fish is called snark"}},
		{"damaged", damagedLine("", "a\n.txt"), BookLine{Instead: "cannot be read: a\ufffd.txt"}},
	} {
		if c.got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, c.got, c.want)
		}
	}
}

// TestInBookEntry: a saved drop has its plan, or why there is none.
func TestInBookEntry(t *testing.T) {
	kettle := demo.Plan(t, demo.Page(t, "alder-kettle-july"))
	input := func(d profile.Drop) (plan.Input, error) { return settings.Default().Input(d) }
	odd := kettle.Drop
	odd.Readings = []profile.Reading{{Depth: 1, DepthUnit: unit.Metre, Temp: 80, TempUnit: unit.Celsius}}
	unknown := kettle.Drop
	unknown.For = "snark"
	for _, c := range []struct {
		e       book.Entry
		instead string
	}{
		{book.Entry{Sheet: notebook.Sheet{Drop: kettle.Drop}, Number: 7}, ""},
		{book.Entry{Sheet: notebook.Sheet{Drop: kettle.Drop}, Number: 7, Unended: true}, "not ended, 10 readings"},
		{book.Entry{Number: 7}, "no readings"},
		{book.Entry{Sheet: notebook.Sheet{Drop: odd}, Number: 7}, "no reading that can be used"},
		{book.Entry{Sheet: notebook.Sheet{Drop: unknown}, Number: 7}, "no fish is called snark"},
		{book.Entry{Path: "/b/x.txt", Err: errors.New("torn")}, "cannot be read: x.txt"},
	} {
		line, made := InBook(c.e, input)
		if line.Instead != c.instead || (made == nil) == (c.instead == "") || line.Number != c.e.Number || (line.Thermocline == "14 to 16 ft") != (c.instead == "") {
			t.Errorf("%+v, plan %v, want %q", line, made != nil, c.instead)
		}
	}
}

// TestBookTable: whatever stands in the book, no line is wider than the terminal, no number
// is cut, and from 66 columns up a drop has one line.
func TestBookTable(t *testing.T) {
	lines := []BookLine{
		{Number: 100000, Date: "2026-07-18 14:20", Water: "Alder Kettle", Spot: "north bay", Thermocline: "14 to 16 ft", Band: "15 to 29 ft", Caught: "12"},
		{Number: 2, Water: strings.Repeat("😀 long ", 60), Spot: strings.Repeat("x", 300), Thermocline: "12.5 to 13.5 m", Band: "none"},
		{Number: 1, Date: "2026-07-18", Water: "Sedge Mere", Instead: "not ended, 12 readings"},
		{Date: "2026-07-01", Instead: "cannot be read: " + strings.Repeat("n", 250) + ".txt"},
	}
	for width := 40; width <= 100; width++ {
		shown := BookTable(lines[:3], width) + BookTable(lines, width)
		for _, line := range strings.Split(shown, "\n") {
			if n := utf8.RuneCountInString(line); n > width {
				t.Errorf("%d columns at %d: %s", n, width, line)
			}
		}
		said := strings.Join(strings.Fields(shown), " ")
		for _, whole := range []string{"100000 ", "2026-07-18", "14 to 16 ft", "15 to 29 ft", "12.5 to 13.5 m", "12", "not ended, 12 readings", "no date", "- 2026-07-01"} {
			if !strings.Contains(said, whole) {
				t.Errorf("at %d columns %q is missing:\n%s", width, whole, shown)
			}
		}
		if table := strings.Contains(BookTable(lines[:1], width), "Band"); table != (width >= 66) {
			t.Errorf("at %d columns:\n%s", width, BookTable(lines[:1], width))
		}
		if width >= 80 && !strings.Contains(shown, "Alder Kettle") {
			t.Errorf("at %d columns:\n%s", width, shown)
		}
	}
	for text, want := range map[string]string{
		MoreDrops(0): "", MoreDrops(1): "1 older drop not shown: --all shows all, --most 50 the newest 50.",
		DamagedPages(0): "", DamagedPages(2): "2 pages of the book cannot be read: coldseam book check says why.",
	} {
		if text != want {
			t.Errorf("%q, want %q", text, want)
		}
	}
}
