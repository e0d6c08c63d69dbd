package settings

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"coldseam/profile"
	"coldseam/profile/basin"
	"coldseam/profile/notebook"
	"coldseam/profile/rig"
	"coldseam/profile/rig/weight"
)

const full = `# what the angler has settled
units = "ft F"
thermometer = "reads 32.5 F in ice water"
thermometer_precision = "0.5 F"
marks_at = "gunwale 1.5 ft"
bulb_below_zero = "6 in"
oxygen = "mg/L"
for = "rainbow"
fly_weight = "0.25 g"
retrieve = "2 in/s"
prefer = "sinking"
clearance = "18 in"
longest_leader = "25 ft"
rod = "9 ft"
flies = 2
sink_rate = "3 in/s"
time_zone = "-05:00"
project = "LAKES-26"

[[stock]]
kind = "butt"
name = "0.020 in nylon"
diameter = "0.02 in"
material = "nylon"

[[stock]]
kind = "tapered leader"
length = "9 ft"
x = 3

[[stock]]
kind = "tippet"
name = "4X"
x = 4
material = "fluorocarbon"

[[stock]]
kind = "bite"
name = "wire, 20 lb"
material = "wire"

[[fly]]
name = "black midge"
weight = "0.2 g"

[[fly]]
name = "leech"
weight = "1/32 oz"
density = 3000

[[touched]]
rig = "long-leader"
depth = "12 ft"
after = "52 s"

[[touched]]
rig = "hung"
depth = "9 ft"
after = "1 min"

[[water]]
name = "Alder Kettle"
max_leader = "18 ft"
max_flies = 2
added_weight = false
indicator = false
checked = "2026-05-01"
note = "closed in May"
latitude = "46.1 N"
longitude = "89.3 W"
length = "800 m"
secchi = "9 ft"
site = "AK-1"
depths = [
  "0 ft 24 acres",
  "10 ft: 17 acres",
  "20 ft, 9 acres",
  "38 ft 0",
]

[[water]]
name = "Sedge Mere"
added_weight = true
`

// alder is its table of depth and area: 4046.8564224 m2 an acre.
func alder(t *testing.T) *basin.Basin {
	t.Helper()
	b, err := basin.New([]basin.Row{{DepthM: 0, AreaM2: 24 * 4046.8564224}, {DepthM: 3.048, AreaM2: 17 * 4046.8564224}, {DepthM: 6.096, AreaM2: 9 * 4046.8564224}, {DepthM: 38 * 0.3048, AreaM2: 0}})
	if err != nil {
		t.Fatal(err)
	}
	return &b
}

func TestFullFile(t *testing.T) {
	got, err := Parse("settings.toml", []byte(full))
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Stock) != 4 || len(got.Box) != 2 || len(got.BottomContacts) != 2 || len(got.Waters) != 2 {
		t.Fatalf("%+v", got)
	}
	header := func(key, value string) notebook.Header {
		return notebook.Header{Key: key, Value: value, From: "settings"}
	}
	want := Settings{
		Headers: []notebook.Header{
			header("units", "ft F"), header("thermometer", "reads 32.5 F in ice water"), header("thermometer precision", "0.5 F"),
			header("marks at", "gunwale 1.5 ft"), header("bulb below zero", "6 in"), header("oxygen", "mg/L"), header("for", "rainbow"),
			header("fly weight", "0.25 g"), header("retrieve", "2 in/s"),
		},
		ClearanceM: 0.4572,
		Tackle: rig.Tackle{
			LongestM: 7.62, RodM: 2.7432, // 18 in, 25 ft and 9 ft, exact
			Stock: []rig.Piece{
				{Kind: rig.Butt, Name: "0.020 in nylon", DiameterMM: 0.508, Material: "nylon"},
				{Kind: rig.Tapered, LengthM: 2.7432, DiameterMM: 0.2032},
				{Kind: rig.Tippet, Name: "4X", DiameterMM: 0.1778, Material: "fluorocarbon"},
				{Kind: rig.Bite, Name: "wire, 20 lb", Material: "wire"},
			},
			Flies: 2, SinkMps: 0.0762, Prefer: rig.Sinking,
			BottomContacts: []rig.BottomContact{{Kind: rig.LongLeader, DepthM: 3.6576, S: 52}, {Kind: rig.Hung, DepthM: 2.7432, S: 60}},
		},
		Box:   []weight.Weight{{Kg: 0.0002, Density: 4000, Text: "black midge"}, {Kg: 0.45359237 / 16 / 32, Density: 3000, Text: "leech"}},
		Usual: weight.Weight{Kg: 0.00025, Density: 4000, Text: "0.25 g"},
		Zone:  time.FixedZone("-05:00", -5*3600), Project: "LAKES-26",
		Waters: []rig.Rules{
			{Water: "Alder Kettle", MaxLeaderM: 5.4864, MaxFlies: 2, NoAddedWeight: true, NoIndicator: true, Checked: "2026-05-01", Note: "closed in May"},
			{Water: "Sedge Mere"},
		},
		Lakes: []Lake{
			{Water: "Alder Kettle", Latitude: profile.Some(46.1), Longitude: profile.Some(-89.3), LengthM: profile.Some(800), SecchiM: profile.Some(2.7432), Basin: alder(t), Site: "AK-1"},
			{Water: "Sedge Mere"},
		},
	}
	for _, f := range []struct{ got, want *float64 }{
		{&got.ClearanceM, &want.ClearanceM}, {&got.LongestM, &want.LongestM}, {&got.RodM, &want.RodM},
		{&got.Stock[0].DiameterMM, &want.Stock[0].DiameterMM}, {&got.Stock[1].DiameterMM, &want.Stock[1].DiameterMM},
		{&got.Stock[2].DiameterMM, &want.Stock[2].DiameterMM}, {&got.Stock[1].LengthM, &want.Stock[1].LengthM},
		{&got.Box[0].Kg, &want.Box[0].Kg}, {&got.Box[1].Kg, &want.Box[1].Kg},
		{&got.Usual.Kg, &want.Usual.Kg}, {&got.SinkMps, &want.SinkMps},
		{&got.BottomContacts[0].DepthM, &want.BottomContacts[0].DepthM}, {&got.BottomContacts[1].DepthM, &want.BottomContacts[1].DepthM},
		{&got.Waters[0].MaxLeaderM, &want.Waters[0].MaxLeaderM}, {&got.Lakes[0].SecchiM.Value, &want.Lakes[0].SecchiM.Value},
	} {
		if math.Abs(*f.got-*f.want) < 1e-9 { // alike but for the last digit
			*f.got = *f.want
		}
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

// What a file does not say keeps its default, and an empty file is the default.
func TestDefaults(t *testing.T) {
	for _, c := range []struct{ name, text string }{
		{"empty", ""}, {"comments only", "# nothing yet\n\n"}, {"empty texts", "units = \"\"\nrod = \"\"\n"}, {"byte order mark", "\uFEFF# nothing\r\n"},
	} {
		got, err := Parse("settings.toml", []byte(c.text))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if !reflect.DeepEqual(got, Default()) {
			t.Errorf("%s: got %+v, want the defaults", c.name, got)
		}
	}
	d := Default()
	if math.Abs(d.ClearanceM-0.3048) > 1e-12 || math.Abs(d.LongestM-9.144) > 1e-12 || len(d.Stock) == 0 || d.Flies != 1 { // 1 ft and 30 ft
		t.Errorf("defaults %+v", d)
	}
	got, err := Parse("settings.toml", []byte("rod = \"2.7 m\"\r\n"))
	if err != nil || got.RodM != 2.7 || got.LongestM != d.LongestM {
		t.Errorf("one key of its own: %+v, %v", got, err)
	}
}

// The book may be named from the home folder.
func TestBook(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("USERPROFILE", home)
	other := filepath.Join(home, "other")
	for text, want := range map[string]string{"~/drops": filepath.Join(home, "drops"), other: other} {
		if got, err := Parse("s", []byte("book = '"+text+"'\n")); err != nil || got.Book != want {
			t.Errorf("%s: %q, %v, want %q", text, got.Book, err, want)
		}
	}
}

// In a browser the folder of a computer is left alone, whatever system's path it is.
func TestBookElsewhere(t *testing.T) {
	bookElsewhere = true
	defer func() { bookElsewhere = false }()
	for _, dir := range []string{"~/drops", `C:\Users\a\drops`, "/home/a/drops"} {
		if got, err := Parse("s", []byte("book = '"+dir+"'\n")); err != nil || got.Book != "" {
			t.Errorf("%s: %q, %v", dir, got.Book, err)
		}
	}
}

// What is noted of a water wins over what the file says of all.
func TestLakeFor(t *testing.T) {
	s, err := Parse("s", []byte(page(`latitude = "46.1 N"`, `longitude = "89.3 W"`, `[[water]]`, `name = "Alder Kettle"`, `length = "800 m"`, `[[water]]`, `name = "Kea Tarn"`, `latitude = "45 S"`)))
	if err != nil {
		t.Fatal(err)
	}
	for water, want := range map[string]Lake{
		"alder kettle ": {Water: "Alder Kettle", Latitude: profile.Some(46.1), Longitude: profile.Some(-89.3), LengthM: profile.Some(800)},
		"Kea Tarn":      {Water: "Kea Tarn", Latitude: profile.Some(-45)}, // not with the longitude of another place
		"Sedge Mere":    {Water: "Sedge Mere", Latitude: profile.Some(46.1), Longitude: profile.Some(-89.3)},
		"":              {Latitude: profile.Some(46.1), Longitude: profile.Some(-89.3)},
	} {
		if got := s.LakeFor(water); got != want {
			t.Errorf("%q: %+v, want %+v", water, got, want)
		}
	}
}

// A page wins over what is noted of its water.
func TestFill(t *testing.T) {
	l := Lake{Latitude: profile.Some(46.1), Longitude: profile.Some(-89.3), LengthM: profile.Some(800)}
	for _, c := range []struct{ d, want profile.Drop }{
		{profile.Drop{}, profile.Drop{LakeLength: l.LengthM, Latitude: l.Latitude, Longitude: l.Longitude}},
		{profile.Drop{LakeLength: profile.Some(5), Latitude: profile.Some(-45)}, profile.Drop{LakeLength: profile.Some(5), Latitude: profile.Some(-45)}},
	} {
		got := c.d
		if l.Fill(&got); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%+v, want %+v", got, c.want)
		}
	}
}

func TestRulesFor(t *testing.T) {
	s := Settings{Waters: []rig.Rules{{Water: "Alder Kettle", MaxFlies: 2}, {Water: "Sedge Mere", MaxFlies: 3}}}
	for _, c := range []struct {
		water string
		flies int
	}{
		{"Alder Kettle", 2}, {"alder KETTLE", 2}, {"  Alder Kettle ", 2}, {"sedge mere", 3}, {"Alder", 0}, {"", 0},
	} {
		if got := s.RulesFor(c.water); got.MaxFlies != c.flies {
			t.Errorf("%q: %+v, want %d flies", c.water, got, c.flies)
		}
	}
	if got := (Settings{Waters: []rig.Rules{{MaxFlies: 1}}}).RulesFor(""); got != (rig.Rules{}) {
		t.Errorf("a water without a name has rules: %+v", got)
	}
}

// Load looks in the user's configuration directory; this is where Linux has it.
func TestLoad(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	path, err := Path()
	if err != nil || !strings.HasPrefix(path, dir) {
		t.Skipf("the configuration directory is elsewhere on this system: %q, %v", path, err)
	}
	if want := filepath.Join(dir, "coldseam", "settings.toml"); path != want {
		t.Fatalf("path %q, want %q", path, want)
	}
	got, err := Load()
	if err != nil || !reflect.DeepEqual(got, Default()) {
		t.Errorf("no file: %+v, %v, want the defaults", got, err)
	}
	if err := os.Mkdir(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(full), 0o644); err != nil {
		t.Fatal(err)
	}
	if got, err = Load(); err != nil || len(got.Waters) != 2 {
		t.Errorf("a file: %+v, %v", got, err)
	}
	if err := os.WriteFile(path, []byte("rod = \"9\"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err = Load(); err == nil || !strings.HasPrefix(err.Error(), path+":1: ") {
		t.Errorf("a bad file: %v, want its path and line 1", err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(path, 0o755); err != nil {
		t.Fatal(err)
	}
	if _, err = Load(); err == nil {
		t.Error("a folder of that name was read as a file")
	}
}
