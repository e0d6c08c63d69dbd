package session

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// kept is a Store in memory.
type kept struct {
	name    string
	page    string // as it was saved last
	ended   bool
	saves   int
	fails   int // saves that fail from now on
	logFull int // lines until the log fails; 0: never
	log     []string
	synced  int
	removed bool
}

var errFull = errors.New("no space left on device")

func (k *kept) Save(d profile.Drop, ended bool) error {
	if k.fails > 0 {
		k.fails--
		return errFull
	}
	k.name, k.page, k.ended = "kettle.txt", notebook.Write(d), ended
	k.saves++
	return nil
}
func (k *kept) Remove() error { k.removed, k.page = true, ""; return nil }
func (k *kept) Name() string  { return k.name }
func (k *kept) Line(atS float64, raw []byte) error {
	return k.keep(fmt.Sprintf("+%.3f %s", atS, raw))
}
func (k *kept) Remark(text string) error { return k.keep("# " + text) }
func (k *kept) keep(line string) error {
	if k.logFull > 0 {
		if k.logFull--; k.logFull == 0 {
			k.logFull = -1
			return errFull
		}
	}
	if k.logFull == 0 {
		k.log = append(k.log, line)
	}
	return nil
}
func (k *kept) Sync() error { k.synced = len(k.log); return nil }
func (k *kept) Log() string { return "kettle.probe" }

// talk is a session with what it told so far.
type talk struct {
	*Session
	t     testing.TB
	store *kept
	said  strings.Builder
	view  View
}

func fixedNow() time.Time { return time.Date(2026, 7, 18, 14, 20, 0, 0, time.UTC) }

// begin begins a session on a drop of which a page is known.
func begin(t testing.TB, page string, o Options) *talk {
	t.Helper()
	k := &talk{t: t, store: &kept{}}
	for _, line := range strings.Split(strings.TrimSpace(page), "\n") {
		if key, value, ok := strings.Cut(line, ":"); ok {
			o.Flags = append(o.Flags, notebook.Header{Key: key, Value: strings.TrimSpace(value), From: "--" + key})
		}
	}
	o.Now = fixedNow()
	if o.New == nil {
		o.New = k.store
	}
	k.Session = New(o)
	k.see()
	return k
}

func (k *talk) see() {
	k.view = k.View()
	for _, told := range k.view.Told {
		fmt.Fprintln(&k.said, told.Text+told.Page)
	}
	if k.view.Question != nil {
		fmt.Fprintln(&k.said, k.view.Question.What)
	}
}

// types types lines, one after the other.
func (k *talk) types(lines ...string) *talk {
	for _, line := range lines {
		k.Type(line)
		k.see()
	}
	return k
}

// told is what was told since some length of it.
func (k *talk) told(from int) string { return k.said.String()[from:] }

func (k *talk) want(what string) {
	k.t.Helper()
	if !strings.Contains(k.said.String(), what) {
		k.t.Errorf("never told %q:\n%s", what, k.said.String())
	}
}

// rows are the readings of what was saved last.
func (k *talk) rows() []string {
	var out []string
	for _, line := range strings.Split(k.store.page, "\n") {
		if head, _, ok := strings.Cut(line, ":"); ok && (strings.HasSuffix(head, " ft") || strings.HasSuffix(head, " m")) && head[0] <= '9' {
			out = append(out, line)
		}
	}
	return out
}

const feet = "units: ft F\nbottom: 30 ft"

func reading(depthFt, tempF float64) profile.Reading {
	return profile.Reading{Depth: depthFt, DepthUnit: unit.Foot, Temp: tempF, TempUnit: unit.Fahrenheit, Step: 0.1}
}

func temps(d profile.Drop) []float64 {
	var out []float64
	for _, r := range d.Readings {
		out = append(out, r.Temp)
	}
	return out
}

// A reading that is odd is told at once, and one that shows that an older was odd.
func TestOdd(t *testing.T) {
	var k sitting
	k.set(profile.Drop{Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}, Bottom: profile.Some(9.144)}, 0)
	for _, c := range []struct {
		r    profile.Reading
		want []string
	}{
		{reading(1, 74), nil},
		{reading(10, 35), nil}, // the end of the drop so far, and a cold lake has it
		{reading(20, 60), []string{"10 ft: spike"}},
		{reading(200, 51), []string{"200 ft: below bottom"}},
		{reading(15, 610), []string{"15 ft: slipped digit"}},
	} {
		var got []string
		for _, o := range k.add(c.r) {
			got = append(got, fmt.Sprintf("%v %s: %s", o.Depth, o.DepthUnit, o.Flag))
		}
		if !cmp.Equal(got, c.want) {
			t.Errorf("%v F at %v ft: flags %q, want %q", c.r.Temp, c.r.Depth, got, c.want)
		}
	}
}

func TestSkip(t *testing.T) {
	k := begin(t, feet, Options{})
	first := k.view.Advice.DepthM
	if k.types("skip"); k.view.Advice.DepthM == first {
		t.Errorf("asks again for %v m", first)
	}
}

// What was noted stays when no reading was taken; a page with nothing on it goes.
func TestEndWithoutReadings(t *testing.T) {
	k := begin(t, feet, Options{}).types("note: loons at the inlet", "stop")
	if !k.store.ended || !strings.Contains(k.store.page, "loons") || k.store.removed || k.Err() != ErrNothing {
		t.Errorf("%+v, %v", k.store, k.Err())
	}
	k = begin(t, feet, Options{}).types("74", "undo", "stop")
	if !k.store.removed || k.Err() != ErrNothing {
		t.Errorf("%+v, %v", k.store, k.Err())
	}
	if k = begin(t, feet, Options{}).types("stop"); k.store.saves > 0 || k.store.removed {
		t.Errorf("%+v", k.store)
	}
}

// A save that failed is tried again for as long as somebody says so, in another place
// where one is given, and nothing is lost by it.
func TestFailedIsTriedAgain(t *testing.T) {
	other := &kept{}
	asked := ""
	k := begin(t, feet, Options{Elsewhere: func(where string) (Store, error) {
		asked = where
		if where == "nowhere" {
			return nil, errors.New("nowhere: not a folder")
		}
		return other, nil
	}})
	k.types("1 74")
	k.store.fails = 2
	k.types("5 73", "1", "1")
	if !slices.Equal(temps(k.Drop()), []float64{74, 73}) || len(k.rows()) != 2 || strings.Count(k.said.String(), "SAVING FAILED: no space left on device") != 2 {
		t.Fatalf("%v, saved %q:\n%s", temps(k.Drop()), k.rows(), k.said.String())
	}
	k.store.fails = 1
	k.types("10 70", "2", "nowhere", "2", "", "2", "a stick")
	if asked != "a stick" || !strings.Contains(other.page, "10 ft: 70 F") || strings.Contains(k.store.page, "10 ft") {
		t.Fatalf("asked for %q, saved %q, before %q", asked, other.page, k.store.page)
	}
	k.want("nowhere: not a folder")
	other.fails = 9
	k.types("15 66", "3")
	if !errors.As(k.Err(), new(Unsaved)) || !errors.Is(k.Err(), errFull) || !k.view.Ended {
		t.Errorf("given up: %v", k.Err())
	}
	if got := temps(k.Drop()); !slices.Equal(got, []float64{74, 73, 70, 66}) {
		t.Errorf("the drop has %v", got)
	}
}

// At any question undo, skip, stop and help are heard.
func TestWordsAtQuestions(t *testing.T) {
	cut := Cut{Store: &kept{name: "old.txt"}, Drop: profile.Drop{Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}, Readings: []profile.Reading{reading(1, 74)}}}
	old := Options{Cut: []Cut{cut}}
	type after struct{ word, says string }
	for _, c := range []struct {
		name  string
		page  string
		o     Options
		typed []string // up to the question
		asks  string
		after []after
	}{
		{"which drop", feet, old, nil, "was cut off", []after{{"undo", nothingToUndo}, {"skip", "Read 1 ft next"}, {"help", helpOffer}, {"stop", ""}}},
		{"units", "", Options{}, nil, "Which units", []after{{"undo", nothingToUndo}, {"skip", mustBeAnswered}, {"help", helpUnits}, {"", helpUnits}, {"stop", ""}}},
		{"bottom", "units: ft F", Options{}, nil, "", []after{{"undo", nothingToUndo}, {"skip", "Read 1 ft next"}, {"help", typedWords.helpBottom}, {"stop", ""}}},
		{"meaning", feet, Options{}, []string{"34 60"}, "A depth of 34 ft", []after{{"undo", "Not taken."}, {"skip", "Not taken."}, {"help", helpChoice}, {"stop", "Not taken."}}},
		{"twice", feet, Options{}, []string{"10 72", "10 70"}, "At 10 ft it was 72 F before", []after{{"undo", "Removed: 70 F at 10 ft"}, {"skip", "Read 1 ft next"}, {"help", helpTwice}, {"stop", ""}}},
		{"saving", feet, Options{New: &kept{fails: 99}}, []string{"74"}, "What now?", []after{{"undo", nothingToUndo}, {"skip", mustBeAnswered}, {"help", helpFailed}, {"stop", ""}}},
		{"folder", feet, Options{New: &kept{fails: 99}, Elsewhere: func(string) (Store, error) { return nil, errFull }}, []string{"74", "2"}, "", []after{{"undo", "What now?"}, {"skip", "What now?"}, {"help", helpFolder}, {"stop", "What now?"}}},
	} {
		for _, a := range c.after {
			k := begin(t, c.page, c.o).types(c.typed...)
			if k.view.Question == nil || !strings.Contains(k.view.Question.What, c.asks) {
				t.Fatalf("%s: no question:\n%s", c.name, k.said.String())
			}
			from, prompt := k.said.Len(), k.view.Prompt
			k.types(a.word)
			if !strings.Contains(k.told(from), a.says) {
				t.Errorf("%s, %s: told\n%s", c.name, a.word, k.told(from))
			}
			switch {
			case a.word == "help" && (k.view.Question == nil || k.view.Prompt != prompt):
				t.Errorf("%s: the question is gone after help", c.name)
			case a.word == "stop" && c.name != "folder" && !k.view.Ended:
				t.Errorf("%s: not ended by stop:\n%s", c.name, k.told(from))
			}
		}
	}
	// stop at the folder gives nothing up: the drop goes on once it is saved
	there := &kept{}
	k := begin(t, feet, Options{New: &kept{fails: 1}, Elsewhere: func(string) (Store, error) { return there, nil }}).types("74", "2", "stop", "2", "a stick")
	if k.view.Ended || !strings.Contains(there.page, "1 ft: 74 F") {
		t.Errorf("ended %v, saved %q", k.view.Ended, there.page)
	}
	// a line that was typed in part of an answer is lost by none of these
	k = begin(t, feet, Options{}).types("10 72", "10 70 / 20 60", "stop")
	if got := k.rows(); !k.view.Ended || k.Err() != nil || len(got) != 3 {
		t.Errorf("saved %q, %v", got, k.Err())
	}
}

// The next depth is asked for by the fish that was typed.
func TestFishServesTheAdvice(t *testing.T) {
	k := begin(t, feet, Options{})
	for _, c := range [][2]string{{"for: walleye", "walleye"}, {"Rainbows", "rainbow"}, {"for: walley", "rainbow"}} {
		if k.types(c[0]); k.fish.Key != c[1] {
			t.Errorf("%s: %q", c[0], k.fish.Key)
		}
	}
}

// Whatever is done in whatever order, what is saved is the drop: read back it gives the
// same readings, and a list kept beside it agrees.
func TestPageIsTheDrop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		store := &kept{}
		u := unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}
		s := &Session{store: store, mode: typing}
		s.set(profile.Drop{Water: "Alder Kettle", Units: u, Bottom: profile.Some(9.144)}, 0)
		var model []profile.Reading
		before := 0 // readings before this sitting
		for range rapid.IntRange(1, 25).Draw(t, "steps") {
			r := reading(float64(rapid.IntRange(0, 12).Draw(t, "depth")), float64(rapid.IntRange(40, 80).Draw(t, "temp")))
			switch rapid.SampledFrom([]string{"add", "add", "undo", "correct", "go on", "note"}).Draw(t, "step") {
			case "add":
				s.add(r)
				model = append(model, r)
			case "undo":
				if _, ok := s.undo(); ok != (len(model) > before) {
					t.Fatalf("undo gives %v with %d readings, %d from before", ok, len(model), before)
				} else if ok {
					model = model[:len(model)-1]
				}
			case "correct":
				var rest []profile.Reading
				n := 0
				for i, m := range model {
					if m.Depth == r.Depth {
						continue
					}
					if i < before {
						n++
					}
					rest = append(rest, m)
				}
				model, before = append(rest, r), n
				s.correct(r)
			case "note":
				d := s.Drop()
				d.Wind = profile.Some(float64(rapid.IntRange(0, 5).Draw(t, "wind")))
				s.note(d)
			case "go on":
				sheets, err := notebook.Read([]byte(store.page), notebook.Options{Unread: true})
				if store.page == "" || err != nil {
					continue
				}
				s.set(sheets[0].Drop, len(sheets[0].Drop.Readings))
				before, model = len(model), s.Drop().Readings // sorted by depth now
			}
			s.keep()
			var want []float64
			for _, m := range model {
				want = append(want, m.Temp)
			}
			if got := temps(s.Drop()); !cmp.Equal(got, want) {
				t.Fatalf("readings %v, want %v", got, want)
			}
			if store.page == "" {
				continue
			}
			sheets, err := notebook.Read([]byte(store.page), notebook.Options{Unread: true})
			if err != nil || len(sheets) != 1 || len(sheets[0].Drop.Readings) != len(model) {
				t.Fatalf("page %q: %v", store.page, err)
			}
			if notebook.Write(sheets[0].Drop) != notebook.Write(s.Drop()) {
				t.Fatalf("page %q is not the drop", store.page)
			}
		}
	})
}

// What is no depth at the question of the bottom is named as it was typed, and asked for
// again; a line of a page belongs behind it.
func TestNoBottom(t *testing.T) {
	k := begin(t, "units: ft F", Options{}).types("wind: light S")
	if !strings.Contains(k.said.String(), `"wind: light S" is not a depth: type e.g. 24 or 24 ft, or Enter if you do not know.`) || k.view.Question == nil {
		t.Errorf("told\n%s", k.said.String())
	}
	if k.types("24"); k.view.Drop.Bottom.Value != 24*0.3048 {
		t.Errorf("the bottom is at %v", k.view.Drop.Bottom)
	}
}
