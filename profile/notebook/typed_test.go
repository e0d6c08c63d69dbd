package notebook

import (
	"reflect"
	"strings"
	"testing"

	"coldseam/profile"
)

const begun = "water: Alder Kettle\ndate: 2026-07-18 14:20\nunits: ft F\nbottom: 31 ft\naltitude: 1900 ft\noxygen: mg/L\nnote: a # b\n"

func begunDrop(t *testing.T) profile.Drop {
	t.Helper()
	sheets, err := Read([]byte(begun), Options{Unread: true})
	if err != nil {
		t.Fatal(err)
	}
	return sheets[0].Drop
}

// A typed line says what it would say on the last line of the drop's page.
func TestReadLineAsOnThePage(t *testing.T) {
	for _, text := range []string{
		"12 68", "12 68,5", "4 m 18 C", "surf 74", "74 top", "10 72 / 12 70", "5-15 all 73", "~60 @16", "16: 60 61 62",
		"12 68 7.5", "12 68 DO 70 %", "26 ft", "ditto", "", "----", "note: weeds", "bottom: 40 ft", "bottom 31 ft 52", "secchi 9 ft",
		"thunder far off", "north bay", "wind SW 8", "units m C", "sunny, wind 5 mph", "line angle: 30", "date: 2020-01-01", "thermometer: reads 33 F in ice water",
	} {
		page, errPage := Read([]byte(begun+text+"\n"), Options{Unread: true})
		read, err := ReadLine(text, "", begunDrop(t), Options{})
		if (err == nil) != (errPage == nil) {
			t.Errorf("%q: %v, on the page %v", text, err, errPage)
			continue
		}
		if err != nil {
			if err.(*Error).Msg != errPage.(*Error).Msg {
				t.Errorf("%q: %v, on the page %v", text, err, errPage)
			}
			continue
		}
		want := page[0].Drop
		for i := range want.Readings {
			want.Readings[i].Line, want.Readings[i].Text = 0, ""
		}
		if !reflect.DeepEqual(read.Drop, want) {
			t.Errorf("%q:\n%+v, on the page\n%+v", text, read.Drop, want)
		}
	}
}

// What is typed later wins, whether it is keyed or said in words.
func TestReadLineWins(t *testing.T) {
	d := begunDrop(t)
	d.Sky, d.Bottom = "sunny", profile.Some(9)
	for text, is := range map[string]func(profile.Drop) bool{
		"thunder":           func(d profile.Drop) bool { return d.Sky == "thunder" },
		"bottom: 40 ft":     func(d profile.Drop) bool { return d.Bottom.Value == 12.192 },
		"15 66 windy":       func(d profile.Drop) bool { return len(d.Notes) == 2 && d.Notes[1] == "15 66 windy" }, // the page that is saved has no other place for it
		"anchored in 30 ft": func(d profile.Drop) bool { return d.Bottom.Value == 9.144 },
		"bottom 30 ft":      func(d profile.Drop) bool { return d.Bottom.Value == 9.144 },
		"bottom 20 ft 52": func(d profile.Drop) bool {
			return d.Bottom.Value == 6.096 && len(d.Readings) == 1 && d.Readings[0].Depth == 20
		},
	} {
		read, err := ReadLine(text, "", d, Options{})
		if err != nil || !is(read.Drop) {
			t.Errorf("%q: %v, %+v", text, err, read.Drop)
		}
	}
	if d.Sky != "sunny" || d.Bottom.Value != 9 || len(d.Notes) != 1 {
		t.Errorf("the caller's drop has changed: %+v", d)
	}
}

// A temperature alone is at the depth that was asked for; any other line says its own.
func TestReadLineAt(t *testing.T) {
	for text, want := range map[string][3]float64{"64": {14, 64, 0}, "64,5 F": {14, 64.5, 0}, "17,8C": {14, 17.8, 0}, "64 DO 6,1": {14, 64, 6.1}, "12 68": {12, 68, 0}, "-0.5 c": {14, -0.5, 0}} {
		read, err := ReadLine(text, "14 ft", begunDrop(t), Options{})
		if err != nil || len(read.Drop.Readings) != 1 {
			t.Errorf("%q: %v, %+v", text, err, read.Drop.Readings)
			continue
		}
		r := read.Drop.Readings[0]
		if got := [3]float64{r.Depth, r.Temp, r.Oxygen.Or(0)}; got != want || r.Line != 0 || r.Text != "" {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
	for _, text := range []string{"12 68", "surf 74", "64 windy", "64 F at 12", "", "x"} {
		if TemperatureAlone(text) {
			t.Errorf("%q is no temperature alone", text)
		}
	}
}

func TestReadLineRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"0 74\r5 73\r10 72\r\r0 70\r5 69": "two drops", "5 ditto": "there is nothing above", "12 6x.5": "not a number", "12\x0068": "control character", "date: 7/8/2026": "two meanings",
	} {
		if _, err := ReadLine(text, "", begunDrop(t), Options{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// Set reads a value without units to fall back on, and leaves a drop alone where it
// refuses; a copy of the drop does not see what is noted in the other.
func TestSet(t *testing.T) {
	d := begunDrop(t)
	was := d
	for _, h := range []Header{{Key: "bottom", Value: "40"}, {Key: "date", Value: "7/8/2026"}, {Key: "depht", Value: "40 ft"}, {Key: "note", Value: "a\x1bb"}} {
		if err := Set(&d, h.Key, h.Value); err == nil || !reflect.DeepEqual(d, was) {
			t.Errorf("%s %q: %v, %+v", h.Key, h.Value, err, d)
		}
	}
	other := d
	if err := Set(&d, "note", "one"); err != nil {
		t.Fatal(err)
	}
	if err := Set(&other, "note", "two"); err != nil || d.Notes[1] != "one" || other.Notes[1] != "two" {
		t.Errorf("%v, %q, %q", err, d.Notes, other.Notes)
	}
}

func TestNew(t *testing.T) {
	d, err := New(Header{Key: "units", Value: "m C", From: "settings"}, Header{Key: "date", Value: "2026-07-18"}, Header{Key: "spot"}, Header{Key: "units", Value: "ft F", From: "--units"})
	if err != nil || d.Units.String() != "ft F" || d.Date != "2026-07-18" {
		t.Errorf("%v, %+v", err, d)
	}
	if _, err := New(Header{Key: "bottom", Value: "40", From: "--bottom"}); err == nil || !strings.HasPrefix(err.Error(), `--bottom: "40"`) {
		t.Errorf("%v", err)
	}
}
