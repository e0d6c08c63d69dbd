package session

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/response"
)

// heldProbe is a drop from a probe, step by step, with a clock of its own.
type heldProbe struct {
	*talk
	atS    float64
	depths bool
}

func hold(t *testing.T, page string, depths bool, store *kept) *heldProbe {
	t.Helper()
	h := &heldProbe{depths: depths}
	h.talk = begin(t, page, Options{New: store, Probe: &Probe{
		Name: "a probe", Known: true, Layout: "temp C", Depths: depths,
		NowS: func() float64 { return h.atS }, Counted: func() string { return "some lines read" },
	}})
	h.store = store
	return h
}

// hear has the probe say a temperature, and its depth where it states one, half a second
// after the last.
func (h *heldProbe) hear(tempC float64, depthM ...float64) (taken bool) {
	h.atS += 0.5
	return h.hearAt(h.atS, tempC, depthM...)
}

func (h *heldProbe) hearAt(atS, tempC float64, depthM ...float64) (taken bool) {
	before := len(h.view.Drop.Readings)
	heard := Heard{AtS: atS, Raw: fmt.Appendf(nil, "%.2f", tempC), TempC: profile.Some(tempC)}
	if len(depthM) > 0 {
		heard.DepthM = profile.Some(depthM[0])
	}
	h.Hear(heard)
	h.see()
	return len(h.view.Drop.Readings) > before
}

// enter types Enter, and reports whether that took a reading.
func (h *heldProbe) enter() (taken bool) {
	before := len(h.view.Drop.Readings)
	h.types("")
	return len(h.view.Drop.Readings) > before
}

// settles has the probe hang in water until its reading is taken.
func (h *heldProbe) settles(tempC float64, depthM ...float64) {
	h.t.Helper()
	for range 400 {
		if h.hear(tempC, depthM...) {
			return
		}
	}
	h.t.Fatalf("never taken: %v\n%s", tempC, h.said.String())
}

const metric = "units: m C\nbottom: 9 m"

// Enter twice before the probe said anything at its new depth takes nothing there: the
// last reading ended with itself.
func TestEnterTwice(t *testing.T) {
	h := hold(t, metric, false, &kept{})
	h.enter()
	h.settles(22)
	for range 3 {
		if h.enter() {
			t.Fatalf("a reading of nothing: %v", h.view.Drop.Readings)
		}
	}
	h.settles(9.5)
	if got := h.rows(); len(got) != 2 || got[0] != "0.5 m: 22.0 C" || got[1] != "8.5 m: 9.5 C" {
		t.Errorf("saved %q", got)
	}
	if h.store.synced < 2 || h.store.log[0] != "# a probe, lines read as: temp C" {
		t.Errorf("log %q, %d of it durable", h.store.log, h.store.synced)
	}

	h = hold(t, metric, true, &kept{})
	h.settles(22, 0.5)
	for range 2 {
		if h.enter() {
			t.Errorf("one reading was taken twice: %v", h.view.Drop.Readings)
		}
	}
}

// Lines that waited from before the probe hung are not of the depth where it hangs, and a
// probe whose connection was lost hangs nowhere.
func TestNotOfThisDepth(t *testing.T) {
	h := hold(t, metric, false, &kept{})
	early := h.atS
	h.atS += 300 // somebody thought about an answer
	h.enter()
	for i := range 300 {
		if h.hearAt(early+float64(i)/2, 22) {
			t.Fatal("lines from before count")
		}
	}
	for range 5 {
		h.hear(9.5)
	}
	h.Port("The probe is lost: pulled.", "lost: pulled", true, false)
	if now := h.estimate(); now.Fitted || now.Phase != response.Moving {
		t.Errorf("something is known of a probe that is lost: %+v", now)
	}
	from := h.said.Len()
	h.Port("The probe is back: here.", "back: here", false, true)
	h.see()
	if !strings.Contains(h.told(from), "Lower the probe to") {
		t.Error("not asked anew for its depth")
	}
	for range 300 {
		if h.hear(22) {
			t.Fatalf("taken: %v", h.view.Drop.Readings)
		}
	}
	for _, want := range []string{"# lost: pulled", "# back: here"} {
		if !strings.Contains(strings.Join(h.store.log, "\n"), want) {
			t.Errorf("no %q in the log", want)
		}
	}
}

var (
	giveOrTake    = regexp.MustCompile(`give or take ([\d.]+) ([CF])`)
	giveOrTakeOff = regexp.MustCompile(`be off by ([\d.]+) ([CF])`)
)

// An early reading is taken only where it is known to 1.5 C, 19 times in 20 (two standard
// errors), and says so: a difference of temperatures, on the angler's scale.
func TestEarly(t *testing.T) {
	const known = 1.5
	for _, units := range []string{"m C", "ft F"} {
		taken, refused := 0, 0
		for _, tau := range []float64{4, 8, 15} {
			h := hold(t, "units: "+units+"\nbottom: 30 ft", false, &kept{})
			h.enter()
			for i := range 60 {
				h.hear(math.Round(100*(12+14*math.Exp(-float64(i)/2/tau)+0.05*math.Sin(float64(7*i)))) / 100)
				doubt := 2 * h.estimate().ErrC
				if len(h.view.Drop.Readings) > 0 {
					break
				}
				before := h.said.Len()
				if !h.enter() {
					refused++
					if said := h.told(before); doubt <= known || !strings.Contains(said, "Not yet") {
						t.Errorf("refused at %.2f C: %s", doubt, said)
					}
					if m := giveOrTakeOff.FindStringSubmatch(h.told(before)); m != nil && !sameDoubt(m, doubt) {
						t.Errorf("could be off by %s %s, want %.2f C", m[1], m[2], doubt)
					}
					continue
				}
				taken++
				r := h.view.Drop.Readings[0]
				if doubt > known || math.Abs(r.SpreadC-doubt) > 0.11 || r.SpreadC < doubt-1e-9 {
					t.Errorf("taken with %.3f C of doubt: %+v", doubt, r)
				}
				if m := giveOrTake.FindStringSubmatch(h.told(before)); m == nil || !sameDoubt(m, doubt) {
					t.Errorf("says %q of %.2f C", m, doubt)
				}
				if !regexp.MustCompile(`C \+-\d\.\d C|F \+-\d\.\d F`).MatchString(h.store.page) {
					t.Errorf("page %s", h.store.page)
				}
			}
		}
		if taken != 3 || refused < 3 {
			t.Errorf("%s: taken %d, refused %d", units, taken, refused)
		}
	}
}

// sameDoubt compares a difference as printed with one in C: a degree C is 1.8 degrees F.
func sameDoubt(printed []string, c float64) bool {
	v, err := strconv.ParseFloat(printed[1], 64)
	if printed[2] == "F" {
		c *= 1.8
	}
	return err == nil && math.Abs(v-c) < 0.19
}

// The live line says how far off the reading may still be, as a difference too.
func TestProgress(t *testing.T) {
	h := hold(t, "units: ft F\nbottom: 30 ft", false, &kept{})
	h.enter()
	for i := range 60 {
		if h.hear(math.Round(100*(12+14*math.Exp(-float64(i)/16))) / 100); h.estimate().ErrC > soonC || len(h.view.Drop.Readings) > 0 {
			continue
		}
		if m := giveOrTake.FindStringSubmatch(h.view.Live); m == nil || !sameDoubt(m, 2*h.estimate().ErrC) {
			t.Errorf("%s: not %.2f C", h.view.Live, 2*h.estimate().ErrC)
		}
		return
	}
	t.Error("never known well enough")
}

// What is noted of a line's marks, bulb and angle is not for a probe that states its own
// depth: what it says counts, to the page and in it.
func TestMarksOfAProbe(t *testing.T) {
	h := hold(t, metric+"\nmarks at: gunwale 0.5 m\nbulb below zero: 0.3 m\nline angle: 30", true, &kept{})
	h.settles(15, 4)
	for _, noted := range []string{"gunwale", "bulb", "angle: 30"} {
		if strings.Contains(h.store.page, noted) {
			t.Errorf("%q is kept:\n%s", noted, h.store.page)
		}
	}
	sheets, err := notebook.Read([]byte(h.store.page), notebook.Options{})
	if err != nil || sheets[0].Drop.Readings[0].DepthM != 4 || sheets[0].Drop.DepthError(4) != 0 {
		t.Errorf("%v, %+v", err, sheets[0].Drop)
	}
	h.want("left out")
}

// A log that cannot be kept is told of once, and the drop goes on.
func TestNoLog(t *testing.T) {
	for _, lines := range []int{1, 2, 6} {
		h := hold(t, metric, false, &kept{logFull: lines})
		for _, temp := range []float64{22, 9.5, 15} {
			h.enter()
			h.settles(temp)
		}
		if n := strings.Count(h.said.String(), "can no longer be saved beside the page: no space left on device"); n != 1 || strings.Contains(h.said.String(), "SAVING FAILED") {
			t.Errorf("%d lines: told %d times:\n%s", lines, n, h.said.String())
		}
		if got := h.rows(); len(got) != 3 {
			t.Errorf("%d lines: saved %q", lines, got)
		}
	}
}

// learning begins a session that listens to the first lines of a probe.
func listen(t *testing.T, moving bool) *talk {
	return begin(t, metric, Options{Probe: &Probe{Name: "a probe", Moving: moving, NowS: func() float64 { return 0 }, Counted: func() string { return "no line read" }}})
}

// A reading that is typed while the probe's first lines are listened to is taken, and the
// words are heard.
func TestTypedWhileListening(t *testing.T) {
	k := listen(t, false)
	k.types("help", "undo")
	k.want(listenHelp)
	if k.types("22.5"); len(k.rows()) != 1 || k.rows()[0] != "0.5 m: 22.5 C" {
		t.Errorf("saved %q:\n%s", k.rows(), k.said.String())
	}
	k.want(notWaiting)
	if k = listen(t, false); !k.types("stop").view.Ended {
		t.Error("stop does not end it")
	}
	k = listen(t, false)
	k.NotUnderstood()
	k.see()
	if k.want(notUnderstood); k.view.Prompt == "" {
		t.Error("nothing is asked for")
	}
}

// What is open in the probe's lines is asked, and a line that comes meanwhile is no answer.
func TestAskLayout(t *testing.T) {
	ask := func() (*talk, *int) {
		k, chosen := listen(t, false), -1
		k.AskLayout("18.31,18.02", "two temperatures", []string{"temp C, skip", "skip, temp C"}, func(n int) {
			chosen = n
			k.Learnt([]string{"temp C, skip", "skip, temp C"}[n], false, true)
		})
		k.see()
		k.Hear(Heard{Raw: []byte("18.30,18.02"), TempC: profile.Some(18.3)})
		k.see()
		return k, &chosen
	}
	k, chosen := ask()
	if k.types("2"); *chosen != 1 || k.mode != holding {
		t.Errorf("chosen %d:\n%s", *chosen, k.said.String())
	}
	k.want("read as: skip, temp C")
	if k, _ = ask(); k.types("skip").mode != typing {
		t.Error("skip does not lead to typing")
	}
	if k, _ = ask(); !k.types("stop").view.Ended {
		t.Error("stop does not end it")
	}
}

// A moving probe gives its readings when Enter is typed, and not before; a word that has
// no meaning in a cast does not end it.
func TestCast(t *testing.T) {
	k := listen(t, true)
	k.Learnt("depth m, temp C", true, true)
	k.see()
	for i := range 200 {
		z := 8 - math.Abs(8-float64(i)*0.08)
		k.Hear(Heard{AtS: float64(i), Raw: []byte("x"), DepthM: profile.Some(z), TempC: profile.Some(20 - z)})
	}
	k.Port("The probe is silent: no byte.", "quiet: no byte", false, false)
	if k.types("undo", "help"); k.view.Ended || len(k.rows()) > 0 {
		t.Fatalf("ended: %v, %q", k.view.Ended, k.rows())
	}
	if !slices.Contains(k.store.log, "# quiet: no byte") {
		t.Error("the silence is not in the log")
	}
	k.types("")
	if !k.view.Ended || k.Err() != nil || len(k.rows()) < 15 {
		t.Errorf("%v, %q", k.Err(), k.rows())
	}
	k = listen(t, true)
	k.Learnt("temp C", false, true)
	k.see()
	if k.want(mustState); k.mode != holding {
		t.Error("a probe without depth cannot be cast")
	}
	k = listen(t, true)
	k.Learnt("depth m, temp C", true, true)
	if k.types(""); k.Err() != ErrNothing {
		t.Errorf("a cast of nothing: %v", k.Err())
	}
	k.want("The probe's lines are kept in kettle.probe")
}
