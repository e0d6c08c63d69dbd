package notebook

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coldseam/profile"
)

// page is one page and what must come of it.
type page struct {
	name     string
	page     string
	settings string   // units of the settings
	want     []string // readings as listed gives them, "---" between two drops
	notes    []string // all notes as "line text", when not nil
	err      string   // the whole error, when the page is refused
	ask      []answer // the page with its question answered; err is then the refusal when nobody can be asked
	question string   // what is asked
}

// answer is one choice of a question and what then is read.
type answer struct {
	choice string
	want   []string
	err    string
}

const (
	fahrenheit74 = "0 temperatures read as Fahrenheit: the warmest is 74"
	fahrenheit73 = "0 temperatures read as Fahrenheit: the warmest is 73"
)

var pages = slices.Concat(formPages, shapePages, tablePages, dropPages, bytePages)

func (p page) options() Options {
	o := Options{Name: "p"}
	if p.settings != "" {
		o.Defaults = []Header{{Key: "units", Value: p.settings, From: "settings"}}
	}
	return o
}

func TestRead(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range pages {
		if seen[p.name] {
			t.Errorf("two pages are named %q", p.name)
		}
		seen[p.name] = true
		t.Run(p.name, func(t *testing.T) {
			sheets, err := Read([]byte(p.page), p.options())
			compare(t, sheets, err, p.want, p.err)
			if err == nil && p.notes != nil {
				if diff := cmp.Diff(p.notes, noteLines(sheets)); diff != "" {
					t.Errorf("notes of %q (-want +got):\n%s", p.page, diff)
				}
			}
			askAll(t, p)
		})
	}
}

// askAll answers the page's question each way.
func askAll(t *testing.T, p page) {
	for n, a := range p.ask {
		asked := 0
		o := p.options()
		o.Ask = func(q Question) (int, error) {
			asked++
			if q.What != p.question {
				t.Errorf("asked %q, want %q", q.What, p.question)
			}
			var choices []string
			for _, a := range p.ask {
				choices = append(choices, a.choice)
			}
			if diff := cmp.Diff(choices, q.Choices); diff != "" {
				t.Errorf("choices (-want +got):\n%s", diff)
			}
			return n, nil
		}
		sheets, err := Read([]byte(p.page), o)
		compare(t, sheets, err, a.want, a.err)
		if asked != 1 {
			t.Errorf("asked %d times, want once", asked)
		}
	}
}

func compare(t *testing.T, sheets []Sheet, err error, want []string, wantErr string) {
	t.Helper()
	got := ""
	if err != nil {
		got = err.Error()
	}
	if got != wantErr {
		t.Errorf("error\n%s\nwant\n%s", got, wantErr)
		return
	}
	if diff := cmp.Diff(want, listed(sheets)); diff != "" {
		t.Errorf("readings (-want +got):\n%s", diff)
	}
}

// listed writes readings out: "15 ft 66 F +-2 DO 7.8", "bottom 24 ft", drops parted
// by "---". Numbers are shown to the millionth, which is the tolerance.
func listed(sheets []Sheet) []string {
	var out []string
	for i, s := range sheets {
		if i > 0 {
			out = append(out, "---")
		}
		for _, r := range s.Drop.Readings {
			line := fmt.Sprintf("%s %s %s %s", millionth(r.Depth), r.DepthUnit, millionth(r.Temp), r.TempUnit)
			if r.SpreadC != 0 {
				line += " +-" + millionth(r.TempUnit.DiffFromC(r.SpreadC))
			}
			if r.Oxygen.Known {
				line += " DO " + millionth(r.Oxygen.Value)
			}
			out = append(out, line)
		}
		if d := s.Drop; d.Bottom.Known {
			out = append(out, "bottom "+millionth(d.Units.Depth.From(d.Bottom.Value))+" "+d.Units.Depth.String())
		}
	}
	return out
}

func millionth(v float64) string {
	return strconv.FormatFloat(math.Round(v*1e6)/1e6, 'f', -1, 64)
}

func noteLines(sheets []Sheet) []string {
	out := []string{}
	for _, s := range sheets {
		for _, n := range s.Notes {
			out = append(out, fmt.Sprintf("%d %s", n.Line, n.Text))
		}
	}
	return out
}

// TestRefusalNamesAllLines: the first bad line is named in full, the others by
// number, at most five of them.
func TestRefusalNamesAllLines(t *testing.T) {
	text := "0 ft 74 F\n" + strings.Repeat("5.0.3 72\n", 9)
	_, err := Read([]byte(text), Options{Name: "p"})
	want := `p:2: "5.0.3 72": two numbers run into each other: put a space between depth and temperature (also line 3, 4, 5, 6, 7, and 3 more)`
	if err == nil || err.Error() != want {
		t.Errorf("error\n%v\nwant\n%s", err, want)
	}
	if _, ok := err.(*Error); !ok {
		t.Errorf("the error is a %T, want *Error", err)
	}
}

// TestAskFails: an answer that is none of the choices, and one that fails, refuse
// the page.
func TestAskFails(t *testing.T) {
	for _, tc := range []struct {
		ask  func(Question) (int, error)
		want string
	}{
		{func(Question) (int, error) { return 7, nil }, "p:1: the depths' unit is not stated: no such choice"},
		{func(Question) (int, error) { return -1, nil }, "p:1: the depths' unit is not stated: no such choice"},
		{func(Question) (int, error) { return 0, fmt.Errorf("the input ended") }, "p:1: the depths' unit is not stated: the input ended"},
	} {
		_, err := Read([]byte("5 73"), Options{Name: "p", Ask: tc.ask})
		if err == nil || err.Error() != tc.want {
			t.Errorf("error %v, want %s", err, tc.want)
		}
	}
}

// TestAskedOnceForAPage: the units are asked for once, however many drops follow.
func TestAskedOnceForAPage(t *testing.T) {
	for _, settings := range []string{"", "F"} {
		var asked []string
		o := page{settings: settings}.options()
		o.Ask = func(q Question) (int, error) {
			asked = append(asked, q.What)
			return 0, nil
		}
		sheets, err := Read([]byte("0 39\n5 38\n10 37\n\n0 38\n5 37\n10 36"), o)
		if err != nil {
			t.Fatal(err)
		}
		want := []string{"the depths' unit is not stated", "the temperatures' scale is not stated"}
		if settings == "F" {
			want = want[:1]
		}
		if diff := cmp.Diff(want, asked); diff != "" {
			t.Errorf("settings %q: questions (-want +got):\n%s", settings, diff)
		}
		if got := listed(sheets); !slices.Contains(got, "---") || got[0] != "0 ft 39 F" || got[len(got)-1] != "10 ft 36 F" {
			t.Errorf("read as %v", got)
		}
	}
}

// columnOf is the Column of all of a drop's readings, whatever a check may say of them, or
// its error, in a form that go-cmp compares.
func columnOf(d profile.Drop) ([]profile.Point, string) {
	var points []profile.Point
	for i, r := range d.Readings {
		points = append(points, profile.Point{DepthM: r.DepthM, TempC: r.TempC, ErrC: d.ErrorC(i), ErrM: d.DepthError(r.DepthM), Oxygen: r.Oxygen})
	}
	c, err := profile.NewColumn(points)
	if err != nil {
		return nil, err.Error()
	}
	return c.Points(), ""
}

// A reading that is left out because it lies below the bottom takes its percent of oxygen
// with it, and no other reading's.
func TestOxygenOfAReadingLeftOut(t *testing.T) {
	page := "units: m C\nbottom: 8 m\n5: 18 DO 80 %\n20: 12 DO 50 %\n7: 16 DO 70 %\n30: 10 DO 40 %\n"
	sheets, err := Read([]byte(page), Options{Ask: func(Question) (int, error) { return 0, nil }})
	if err != nil {
		t.Fatal(err)
	}
	rs := sheets[0].Drop.Readings
	if len(rs) != 2 || rs[0].Depth != 5 || rs[1].Depth != 7 || !rs[0].Oxygen.Known || !rs[1].Oxygen.Known || rs[0].Oxygen.Value <= rs[1].Oxygen.Value-1 {
		t.Errorf("%+v", rs)
	}
}

// The reason behind an Error can be told from others: that of Ask, and of a long line.
func TestErrorUnwraps(t *testing.T) {
	hungUp := errors.New("hung up")
	_, err := Read([]byte("0 1\n5 2\n"), Options{Ask: func(Question) (int, error) { return 0, hungUp }})
	if !errors.Is(err, hungUp) {
		t.Errorf("%v is not %v", err, hungUp)
	}
	if _, err := Read([]byte(strings.Repeat("7 ", MaxLine)), Options{}); !errors.Is(err, errLong) {
		t.Errorf("%v is not %v", err, errLong)
	}
}
