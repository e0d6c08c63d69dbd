package notebook

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/unit"
)

// catches are what anglers write of a fish, and what is read in it: time, count, fish,
// depth, and the rest.
var catches = []struct{ text, want string }{
	{"18:10 rainbow 16 ft black midge", "18:10 | 1 | rainbow | 16 ft | black midge"},
	{"2 rainbows at 16 ft", " | 2 | rainbow | 16 ft | "},
	{"18:10 rainbow on black midge 16ft", "18:10 | 1 | rainbow | 16 ft | black midge"},
	{"perch", " | 1 | perch |  | "},
	{"rainbow 16 ft, black midge", " | 1 | rainbow | 16 ft | black midge"},
	{"rainbow 14 in", " | 1 | rainbow |  | 14 in"},
	{`rainbow 14" 16 ft`, ` | 1 | rainbow | 16 ft | 14"`},
	{"rainbow 45 cm, 5 m", " | 1 | rainbow | 5 m | 45 cm"},
	{"5,5 m brown", " | 1 | brown | 5.5 m | "},
	{"12'6\" kokanee", " | 1 | kokanee | 12.5 ft | "},
	{"16' bow", " | 1 | rainbow | 16 ft | "},
	{"6:40pm 3 nice brookies down 12 1/2 ft", "18:40 | 3 | brook | 12.5 ft | nice"},
	{"two rainbows 12½ ft #14 midge", " | 2 | rainbow | 12.5 ft | #14 midge"},
	{"18h10 rainbow 16-18 ft", "18:10 | 1 | rainbow | 17 ft | "},
	{"a couple of perch 4 to 5 m", " | 2 | perch | 4.5 m | a of"},
	{"rainbow 16 ft over 25 ft", " | 1 | rainbow | 16 ft | over 25 ft"},
	{"rainbow in 25 ft of water", " | 1 | rainbow |  | in 25 ft of water"},
	{"rainbow 3 ft off the bottom", " | 1 | rainbow |  | 3 ft off the bottom"},
	{"rainbow, 20 ft leader", " | 1 | rainbow |  | 20 ft leader"},
	{"rainbow 16 ft, 20 ft leader", " | 1 | rainbow | 16 ft | 20 ft leader"},
	{"rainbow 60 ft cast, 16 ft down", " | 1 | rainbow | 16 ft | 60 ft cast, down"},
	{"rainbow 16 ft, perch 9 ft", " | 1 | rainbow |  | 16 ft, perch 9 ft"},
	{"rainbow 16", " | 1 | rainbow |  | 16"},
	{"16 ft brown leech", " | 1 |  | 16 ft | brown leech"},
	{"brown, 16 ft, brown leech", " | 1 | brown | 16 ft | brown leech"},
	{"burbot 16 ft worm", " | 1 | burbot | 16 ft | worm"},
	{"golden dorado 4 m", " | 1 | golden dorado | 4 m | "},
	{"black midge 16 ft", " | 1 |  | 16 ft | black midge"},
	{"3x perch 4 m", " | 3 | perch | 4 m | "},
	{"perch x3", " | 3 | perch |  | "},
	{"2 at 14 ft", " | 2 |  | 14 ft | "},
	{"5 fish", " | 5 |  |  | fish"},
	{"16 ft", " | 1 |  | 16 ft | "},
	{"18:10", "18:10 | 1 |  |  | "},
	{"2 lb rainbow 16 ft", " | 1 | rainbow | 16 ft | 2 lb"},
	{"rainbow 2.5 m/s", " | 1 | rainbow |  | 2.5 m/s"},
	{"25:10 rainbow", " | 1 | rainbow |  | 25:10"},
	{"trout 16 ft", " | 1 | trout | 16 ft | "},
	{"caught off the bow, 16 ft", " | 1 |  | 16 ft | caught off the bow"},
	{"rainbow 1900 ft", " | 1 | rainbow |  | 1900 ft"},
	{"regenbogenforelle 5 m 🐟", " | 1 | regenbogenforelle | 5 m | 🐟"},
}

func TestReadCatch(t *testing.T) {
	for _, tc := range catches {
		c, err := ReadCatch(tc.text)
		if err != nil {
			t.Errorf("%s: %v", tc.text, err)
			continue
		}
		depth := ""
		if c.Depth.Known {
			depth = exact(c.Depth.Value) + " " + c.DepthUnit.String()
		}
		if got := strings.Join([]string{c.Time, fmt.Sprint(c.Count), c.Fish, depth, c.Rest}, " | "); got != tc.want {
			t.Errorf("%s:\n got %s\nwant %s", tc.text, got, tc.want)
		}
		if c.Text != tc.text {
			t.Errorf("%s is kept as %s", tc.text, c.Text)
		}
	}
	own := fish.Fish{Name: "glass eel", Key: "glass-eel"}
	if c, err := ReadCatch("took a fine glass eel at 4 m", own); err != nil || c.Fish != "glass-eel" {
		t.Errorf("own fish: %+v, %v", c, err)
	}
	for _, bad := range []string{"", " ", "nothing", "none today", "0", "no fish", "a\x1bb", strings.Repeat("perch ", 200)} {
		if c, err := ReadCatch(bad); err == nil {
			t.Errorf("%q is taken: %+v", bad, c)
		}
	}
}

// TestCaughtOnAPage: a catch is read wherever it stands, parts no drop, belongs to the drop
// above it, and changes no reading; what names no fish stays a note.
func TestCaughtOnAPage(t *testing.T) {
	const one, two = "0 74\n5 73\n10 66\n15 60\n", "0 73\n5 72\n10 65\n15 59\n"
	for _, tc := range []struct {
		page string
		want []string // catches of each drop, and its notes
	}{
		{one + "caught: 18:10 rainbow 16 ft", []string{"18:10 rainbow 16 ft|"}},
		{"caught: 18:10 rainbow 16 ft\n" + one, []string{"18:10 rainbow 16 ft|"}},
		{"0 74\n5 73\ncaught: perch\ncaught: 15 perch\n10 66\n15 60\n", []string{"perch;15 perch|"}},
		{one + "caught 2 rainbows at 16 ft", []string{"2 rainbows at 16 ft|"}},
		{one + "landed 1 lake trout 38 ft on a spoon, 8:15", []string{"1 lake trout 38 ft on a spoon, 8:15|"}},
		{one + "got one brown trout @ 13 feet", []string{"one brown trout @ 13 feet|"}},
		{one + "got out at dawn", []string{"|got out at dawn"}},
		{one + "18:10 caught 2 rainbows at 16 ft", []string{"18:10 2 rainbows at 16 ft|"}},
		{one + "caught rainbow # the big one", []string{"rainbow|"}},
		{one + "landed: trout 14 ft\ncatch: perch", []string{"trout 14 ft;perch|"}},
		{one + "caught 2 at 14 ft", []string{"|caught 2 at 14 ft"}},
		{one + "caught nothing", []string{"|caught nothing"}},
		{one + "caught: nothing", []string{"|caught: nothing"}},
		{one + "caught a rainbow here last week", []string{"|caught a rainbow here last week"}},
		{one + "caught: rainbow 16 ft\n\n" + two + "caught: perch 9 ft", []string{"rainbow 16 ft|", "perch 9 ft|"}},
		{one + "\ncaught: rainbow 16 ft\n\ndate: 2026-07-19\n" + two, []string{"rainbow 16 ft|", "|"}},
		{one + "\ncaught: rainbow 16 ft\n\n" + two, []string{"rainbow 16 ft|", "|"}},
		{one + "\ndate: 2026-07-19\ncaught: rainbow 16 ft\n\n" + two, []string{"|", "rainbow 16 ft|"}},
		{"depth,temp\n0,74\n5,73\ncaught: rainbow 16 ft\n10,66\n15,60\n", []string{"rainbow 16 ft|"}},
	} {
		page := "units: ft F\n" + tc.page
		sheets, err := Read([]byte(page), Options{Name: "p"})
		if err != nil {
			t.Errorf("%q: %v", tc.page, err)
			continue
		}
		var got []string
		for _, s := range sheets {
			var texts []string
			for _, c := range s.Drop.Catches {
				texts = append(texts, c.Text)
			}
			got = append(got, strings.Join(texts, ";")+"|"+strings.Join(s.Drop.Notes, ";"))
			if len(s.Drop.Readings) != 4 {
				t.Errorf("%q: %d readings", tc.page, len(s.Drop.Readings))
			}
		}
		if diff := cmp.Diff(tc.want, got); diff != "" {
			t.Errorf("%q (-want +got):\n%s", tc.page, diff)
		}
	}
}

// TestCaughtLeavesThePage: lines of catches, put anywhere between the lines of the pages of
// the other tests, change nothing else.
func TestCaughtLeavesThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(pages).Draw(t, "page")
		if strings.ContainsAny(p.page, "\x00\r") || strings.HasPrefix(p.page, "\xff") {
			t.Skip()
		}
		before, err := Read([]byte(p.page), p.options())
		if err != nil {
			t.Skip()
		}
		lines := strings.Split(p.page, "\n")
		at := rapid.SampledFrom([]int{0, len(lines)}).Draw(t, "at")
		text := rapid.SampledFrom(catches).Draw(t, "catch").text
		after, err := Read([]byte(strings.Join(slices.Insert(lines, at, "caught: "+text), "\n")), p.options())
		if err != nil || len(after) != len(before) {
			t.Fatalf("%d drops of %d, %v", len(after), len(before), err)
		}
		n := 0
		for i := range after {
			n += len(after[i].Drop.Catches)
			want, _ := columnOf(before[i].Drop)
			got, _ := columnOf(after[i].Drop)
			if diff := cmp.Diff(want, got); diff != "" {
				t.Fatalf("(-want +got):\n%s", diff)
			}
		}
		if n != 1 {
			t.Fatalf("%d catches", n)
		}
	})
}

// FuzzCatch: whatever is said of a catch comes back as it was written, and reads the same
// again.
func FuzzCatch(f *testing.F) {
	for _, tc := range catches {
		f.Add(tc.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := ReadCatch(text)
		if err != nil {
			if strings.ContainsAny(err.Error(), "\n\x1b") {
				t.Fatalf("error %q", err)
			}
			return
		}
		d := profile.Drop{Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}, Catches: []profile.Catch{c},
			Readings: []profile.Reading{{Depth: 1, DepthUnit: unit.Foot, Temp: 70, TempUnit: unit.Fahrenheit, Step: 1}}}
		back, err := Read([]byte(Write(d)), Options{Name: "written"})
		if err != nil {
			t.Fatalf("%v\n%s", err, Write(d))
		}
		if diff := cmp.Diff(d.Catches, back[0].Drop.Catches); diff != "" {
			t.Fatalf("(-want +got):\n%s", diff)
		}
		if c.Count < 1 || c.Depth.Known && (c.DepthM().Value < 0 || c.DepthM().Value > 300) {
			t.Fatalf("%+v", c)
		}
	})
}
