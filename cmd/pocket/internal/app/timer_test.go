package app

import (
	"fmt"
	"os"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"coldseam/profile/demo"
	"coldseam/profile/plan"
	"coldseam/profile/report"
	"coldseam/profile/rig"
	"coldseam/profile/settings"
)

var timerSeconds = regexp.MustCompile(`data-seconds="(\d+)" data-low="(\d+)" data-high="(\d+)"`)

// rowOf is a row of the short answer, zero where it has none.
func rowOf(p plan.Plan, label string) (row report.Row) {
	for _, r := range report.Short(p, nil).Rows {
		if r.Label == label {
			row = r
		}
	}
	return row
}

// The timer has the numbers of the answer, and is not there where the answer has none.
func TestTimerNumbers(t *testing.T) {
	timed := 0
	for _, page := range append(everyPage(t), oddPages...) {
		a := withBook(t, "", page)
		shown := strings.Contains(answered(t, a, 0).Main, `data-do="timer"`)
		m := timerSeconds.FindStringSubmatch(a.Do(Event{Do: "timer"}).Main)
		row := report.Row{}
		if a.answer.err == nil {
			row = rowOf(a.answer.plan, "Sink time")
		}
		if row.Value == "" {
			if shown || m != nil {
				t.Errorf("%s\na timer without a sink time: %v %q", page, shown, m)
			}
			continue
		}
		timed++
		if !shown || m == nil || row.Value != m[1]+" s" || m[2] != m[3] && !strings.HasPrefix(row.Detail, m[2]+" to "+m[3]+" s") {
			t.Errorf("%s\n%v %q, the answer says %v", page, shown, m, row)
		}
		if !a.Do(Event{}).Awake {
			t.Error("the screen may go dark over the timer")
		}
	}
	if timed < 10 {
		t.Errorf("only %d pages have a sink time", timed)
	}
}

// A bottom that was touched is one of the settings from then on: the sink time is what it
// is with such an entry, the rest of the file stays, and it can be taken back.
func TestTouchedBottom(t *testing.T) {
	const mine = "# mine\nrod = \"9 ft\"\n"
	july := demo.Page(t, "alder-kettle-july")
	metric := "units: m C\nbottom: 9 m\n0 23\n2 22.5\n3 21.5\n4 18\n5 14\n6 12\n8 10\n"
	for _, c := range []struct {
		page, entry, value, said string
		moves                    []string
	}{
		{july, `depth = "17 ft"` + "\n" + `after = "120 s"`, "120", "over 17 ft", nil},
		{july, `depth = "19 ft"` + "\n" + `after = "95 s"`, "95.4", "over 19 ft", []string{"1", "1"}},
		{july, `depth = "15 ft"` + "\n" + `after = "20 s"`, "20", "only a part of it is believed", []string{"-1", "-1"}},
		{metric, `depth = "%s"` + "\n" + `after = "80 s"`, "80", "Noted: ", nil},
	} {
		a := withBook(t, mine, c.page)
		answered(t, a, 0)
		before := a.answer.plan
		a.Do(Event{Do: "timer"})
		for _, m := range c.moves {
			wellMade(t, a.Do(Event{Do: "touched-at", Value: m}))
		}
		show := a.Do(Event{Do: "touched", Value: c.value})
		wellMade(t, show)
		if !strings.Contains(show.Say, c.said) || !strings.Contains(words(show.Main), show.Say) {
			t.Errorf("%q, want %q", show.Say, c.said)
		}
		entry := c.entry
		if strings.Contains(entry, "%s") {
			entry = fmt.Sprintf(entry, fmt.Sprint(before.Band.WaterM)+" m")
		}
		want := mine + "\n[[touched]]\nrig = \"long-leader\"\n" + entry + "\n"
		text, err := a.settingsText()
		if err != nil || text != want {
			t.Errorf("settings %q, %v\nwant %q", text, err, want)
		}
		set, err := settings.Parse("settings", []byte(want))
		if err != nil {
			t.Fatal(err)
		}
		in, err := set.Input(a.answer.sheet.Drop)
		if err != nil {
			t.Fatal(err)
		}
		made, err := plan.Make(in)
		if err != nil {
			t.Fatal(err)
		}
		if now := a.answer.plan.Rig.SinkTime; !reflect.DeepEqual(now, made.Rig.SinkTime) || reflect.DeepEqual(now, before.Rig.SinkTime) {
			t.Errorf("%s: sink time %v, as the settings have it %v, before %v", c.value, now, made.Rig.SinkTime, before.Rig.SinkTime)
		}
		m := timerSeconds.FindStringSubmatch(show.Main)
		if row := rowOf(made, "Sink time"); m == nil || row.Value != m[1]+" s" {
			t.Errorf("timer %q, want %v", m, row)
		}
		back := a.Do(Event{Do: "untouch"})
		wellMade(t, back)
		text, _ = a.settingsText()
		if text != mine || !reflect.DeepEqual(a.answer.plan.Rig.SinkTime, before.Rig.SinkTime) || strings.Contains(back.Main, "untouch") {
			t.Errorf("taken back: %q, %v, want %v", text, a.answer.plan.Rig.SinkTime, before.Rig.SinkTime)
		}
	}
}

// What cannot be a bottom, or cannot be saved, changes nothing and says so.
func TestTouchedRefused(t *testing.T) {
	july := demo.Page(t, "alder-kettle-july")
	for value, want := range map[string]string{"": "Start the timer", "x": "Start the timer", "1": "not a likely value", "700": "not a likely value", "NaN": "Start the timer", "1e300": "Start the timer", "-3": "Start the timer"} {
		a := withBook(t, "", july)
		answered(t, a, 0)
		a.Do(Event{Do: "timer"})
		show := a.Do(Event{Do: "touched", Value: value})
		wellMade(t, show)
		if text, _ := a.settingsText(); !strings.Contains(show.Say, want) || text != "" || strings.Contains(show.Main, "untouch") {
			t.Errorf("%q: %q, settings %q", value, show.Say, text)
		}
	}
	a := withBook(t, "rod = \"9 ft\"\n", july)
	answered(t, a, 0)
	a.Do(Event{Do: "timer"})
	if err := os.WriteFile(a.o.Settings, []byte("rod = 9 = \n"), 0o600); err != nil {
		t.Fatal(err)
	}
	show := a.Do(Event{Do: "touched", Value: "90"})
	if text, _ := a.settingsText(); !strings.Contains(show.Say, "Not noted: ") || text != "rod = 9 = \n" {
		t.Errorf("%q, %q", show.Say, text)
	}
}

// The button for a bottom is there for a rig whose leader can touch it, and for no other.
func TestTouchedOnlyWhereItCounts(t *testing.T) {
	kinds := map[rig.Kind]int{}
	for _, prefer := range []string{"", "prefer = \"hung\"\n", "prefer = \"sinking\"\n"} {
		for _, page := range append(everyPage(t), oddPages...) {
			a := withBook(t, prefer, page)
			answered(t, a, 0)
			show := a.Do(Event{Do: "timer"})
			if len(a.before) == 1 {
				continue
			}
			p := a.answer.plan
			there := strings.Contains(show.Main, `data-timer="touched"`)
			want := p.Rig.Kind == rig.LongLeader && !p.Band.Suspended && p.Band.WaterM <= p.Rig.LeaderM
			if there != want {
				t.Errorf("%s%s\n%s: %v", prefer, page, p.Rig.Kind, there)
			}
			kinds[p.Rig.Kind]++
			for n := range 40 { // never further than the leader reaches
				a.Do(Event{Do: "touched-at", Value: strconv.Itoa(1 - 2*(n/20))})
				if there && !p.Rig.Touches(a.touchedM(a.answer.timer.marks)) {
					t.Errorf("%d marks: %v", n, a.touchedM(a.answer.timer.marks))
				}
			}
		}
	}
	if kinds[rig.LongLeader] == 0 || kinds[rig.Hung] == 0 || kinds[rig.Sinking] == 0 {
		t.Errorf("the rigs were %v", kinds)
	}
}
