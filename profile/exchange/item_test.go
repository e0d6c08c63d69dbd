package exchange

import (
	"bytes"
	"encoding/json"
	"errors"
	"regexp"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

func alder(date string, depths ...float64) profile.Drop {
	d := profile.Drop{Water: "Alder Kettle", Date: date, Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}}
	for _, z := range depths {
		d.Readings = append(d.Readings, profile.Reading{Depth: z, DepthUnit: unit.Foot, Temp: 70, TempUnit: unit.Fahrenheit, Step: 1})
	}
	d.Correct()
	return d
}

// The identifiers of drops, which must never change: an agency takes a row with one that it
// knows for the same drop. (Sums by Python: base32 of sha256, its first ten letters.)
func TestNames(t *testing.T) {
	for _, c := range []struct {
		page string
		nth  int
		want string
	}{
		{"alder-kettle-july.txt", 1, "alder-kettle-july"},
		{"/a/book/alder-kettle-july.txt", 2, "alder-kettle-july.2"},
		{"2026-07-18-14-20-alder-kettle.txt", 1, "20260718-1420-a65qbzc44p"},
		{"2026-07-18-14-20-alder-kettle-2.txt", 1, "20260718-1420-ynldtinuxw"},
		{"2026-07-18-14-20-alder-kettle.txt", 2, "20260718-1420-jix3jne7md"},
		{"My drop.txt", 1, "my-drop-xpledi7e5n"},
		{"湖.txt", 1, "h2mlk3nabg"},
		{"", 1, "20260718-1420-a65qbzc44p"}, // as it would be saved
		{"", 2, "20260718-1420-jix3jne7md"},
	} {
		got := Source{Page: c.page, Nth: c.nth, Drop: alder("2026-07-18 14:20")}.name()
		if got != c.want {
			t.Errorf("%s, %d: %q, want %q", c.page, c.nth, got, c.want)
		}
	}
}

// Whatever a file is called, its drops' names fit, and no two files share one.
func TestNamesDiffer(t *testing.T) {
	plain := regexp.MustCompile(`^[a-z0-9.-]{1,24}$`)
	seen := map[string]string{}
	rapid.Check(t, func(t *rapid.T) {
		page := rapid.StringMatching(`[a-zA-Z0-9 .é湖_-]{1,40}`).Draw(t, "page")
		s := Source{Page: page + ".txt", Nth: rapid.IntRange(1, 3).Draw(t, "nth"), Drop: alder("")}
		name, key := s.name(), page+string(rune('0'+s.Nth))
		if !plain.MatchString(name) {
			t.Fatalf("%q: %q", page, name)
		}
		if other, ok := seen[name]; ok && other != key {
			t.Fatalf("%q and %q are both %q", other, key, name)
		}
		seen[name] = key
	})
}

// What is put right on a page leaves its drop's name, and two pages of one name are refused.
func TestItems(t *testing.T) {
	a, b := Source{Page: "july.txt", Nth: 1, Drop: alder("2026-07-18", 5)}, Source{Page: "july.txt", Nth: 1, Drop: alder("2026-07-19 14:20", 5, 10)}
	if a.name() != b.name() {
		t.Error(a.name(), b.name())
	}
	b.Page = "other/july.txt"
	if _, err := Items([]Source{a, b}); err == nil || err.Error() != "other/july.txt: its identifier would be that of july.txt: give one of the files another name" {
		t.Error(err)
	}
	items, err := Items([]Source{{Page: "a.txt", Nth: 1, Drop: alder("", 5, 1001)}})
	if err != nil || items[0].Drop.Readings[1].Flag != profile.OutOfRange {
		t.Errorf("%+v, %v", items, err)
	}
}

// No activity's name is over 35 characters (handbook/angling-practice.md 6), and none of a
// drop comes twice.
func TestActivities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := alder("2026-07-18", rapid.SliceOfN(rapid.SampledFrom([]float64{0, 5, 5.5, 12.345678, 3280, 999999999}), 1, 130).Draw(t, "depths")...)
		items, err := Items([]Source{{Page: "2026-07-18-14-20-alder-kettle.txt", Nth: 1, Drop: d}})
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := (Agency{}).Write(&out, items); err != nil {
			t.Fatal(err)
		}
		seen := map[string]bool{}
		for _, line := range strings.Split(strings.TrimSpace(out.String()), "\n")[1:] {
			id := strings.Split(line, ",")[2]
			if len(id) > 35 || len(id) < 10 || seen[id] {
				t.Fatal(id)
			}
			seen[id] = true
		}
	})
}

// Daylight saving began on 8 March and ends on 1 November 2026 in the US (Energy Policy Act
// of 2005: second Sunday of March, first of November, at 2 in the morning).
func TestWhen(t *testing.T) {
	chicago, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	saoPaulo, err := time.LoadLocation("America/Sao_Paulo")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		date   string
		zone   *time.Location
		offset string
		clock  string
		code   string
		err    string
	}{
		{"2026-07-18 14:20", chicago, "-05:00", "14:20", "CDT", ""},
		{"2026-01-18 14:20", chicago, "-06:00", "14:20", "CST", ""},
		{"2026-07-18", chicago, "", "", "", ""},
		{"2026-07-18", nil, "", "", "", ""},
		{"2026-07-18 14:20", nil, "", "", "", ErrNoZone.Error()},
		{"2026-07-18 14:20", zone, "-05:00", "", "", ErrNoCode.Error()},
		{"2026-07-18 14:20", saoPaulo, "-03:00", "", "", ErrNoCode.Error()},
		{"2026-07-18 14:20", time.UTC, "+00:00", "14:20", "UTC", ""},
		{"", chicago, "", "", "", ErrNoDate.Error()},
		{"2026-03-08 02:30", chicago, "", "", "", "there is no 2026-03-08 02:30 in America/Chicago, where the clock was put forward"},
		{"2026-11-01 01:30", chicago, "", "", "", "2026-11-01 01:30 came twice in America/Chicago, where the clock was put back"},
		{"2026-11-01 02:00", chicago, "-06:00", "02:00", "CST", ""},
	} {
		if got := offset(c.date, c.zone); got != c.offset {
			t.Errorf("%s %v: offset %q, want %q", c.date, c.zone, got, c.offset)
		}
		clock, code, err := Agency{Zone: c.zone}.when(c.date)
		if clock != c.clock || code != c.code || (err == nil) != (c.err == "") || err != nil && err.Error() != c.err {
			t.Errorf("%s %v: %q %q %v", c.date, c.zone, clock, code, err)
		}
	}
}

// Waters that the exchange cannot tell apart are refused, and so is one site for several.
func TestAgencyCheck(t *testing.T) {
	kettle, marl := alder("2026-07-18", 5), alder("2026-07-18", 5)
	marl.Water = "Marl Hole"
	spot := kettle
	spot.Spot = "reed point"
	of := func(drops ...profile.Drop) []Item {
		var out []Source
		for i, d := range drops {
			out = append(out, Source{Page: "p.txt", Nth: i + 1, Drop: d})
		}
		items, err := Items(out)
		if err != nil {
			t.Fatal(err)
		}
		return items
	}
	site := func(names map[string]string) func(string) string {
		return func(water string) string { return names[water] }
	}
	for _, c := range []struct {
		items []Item
		site  func(string) string
		want  error
	}{
		{of(kettle), nil, nil},
		{of(kettle, spot), nil, nil},
		{of(kettle, marl), nil, ErrNoSite},
		{of(kettle, marl), site(map[string]string{"Alder Kettle": "AK"}), ErrNoSite},
		{of(kettle, marl), site(map[string]string{"Alder Kettle": "AK", "Marl Hole": "MH"}), nil},
		{of(kettle, marl), site(map[string]string{"Alder Kettle": "AK", "Marl Hole": "AK"}), ErrSite},
		{of(kettle, alder("", 5)), nil, ErrNoDate},
	} {
		it, err := Agency{Site: c.site}.Check(c.items)
		if !errors.Is(err, c.want) || (it != nil) != (c.want != nil) {
			t.Errorf("%v %v, want %v", it, err, c.want)
		}
	}
}

// The comments of the exchange say what was done to a value; those of measured values
// nothing.
func TestAgencyComments(t *testing.T) {
	for page, want := range map[string]string{
		"units: ft F\n5 70\n":                                          "",
		"units: ft F\nbulb below zero: 6 in\n5 70\n":                   "Depth by the line 5 ft; corrected for thermometer 0.5 ft below the line's zero",
		"units: fathom C\n3: 18\n":                                     "Depth by the line 3 fathom",
		"units: ft F\n0 74\n5 73\n10 19\n15 66\n20 58\n":               "Flagged: wrong unit, may mean 19 C",
		"units: ft F\nthermometer: reads 31.5 F in ice water\n5 ~70\n": "Thermometer read 70 F; corrected by its ice check, +0.5 F. Read to within 2 F",
	} {
		sheets, err := notebook.Read([]byte(page), notebook.Options{})
		if err != nil {
			t.Fatal(err)
		}
		items, err := Items([]Source{{Page: "p.txt", Nth: 1, Drop: sheets[0].Drop}})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, r := range items[0].Drop.Readings {
			if c := (Agency{}).comment(&items[0], r); len(c) > len(got) {
				got = c
			}
		}
		if got != want {
			t.Errorf("%s: %q, want %q", page, got, want)
		}
	}
}

// JSON has what was noted as the page has it, SI beside it, and nothing for what is unknown.
func TestJSON(t *testing.T) {
	sheets, err := notebook.Read([]byte("water: Alder Kettle\ndate: 2026-07-18 14:20\nunits: ft F\nsecchi: 9 ft\nnote: windy\nnote: cold\n0 73.9\n5 73 1/2 DO 0\n"), notebook.Options{})
	if err != nil {
		t.Fatal(err)
	}
	items, err := Items([]Source{{Page: "july.txt", Nth: 1, Drop: sheets[0].Drop}})
	if err != nil {
		t.Fatal(err)
	}
	got, err := json.Marshal(JSON(items, zone))
	if err != nil {
		t.Fatal(err)
	}
	want := `[{"id":"july","water":"Alder Kettle","date":"2026-07-18","time":"14:20","utc_offset":"-05:00",` +
		`"noted":{"note":["windy","cold"],"secchi":"9 ft","units":"ft F"},"secchi_m":2.7432,"readings":[` +
		`{"depth_m":0,"temp_c":23.2778,"depth_written":0,"depth_unit":"ft","temp_written":73.9,"temp_unit":"F","temp_step":0.1},` +
		`{"depth_m":1.524,"temp_c":23.0556,"oxygen_mgl":0,"depth_written":5,"depth_unit":"ft","temp_written":73.5,"temp_unit":"F","temp_step":0.5}]}]`
	if string(got) != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}
