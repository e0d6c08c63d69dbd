package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"coldseam/device"
	"coldseam/device/format"
	"coldseam/profile/book"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/response"
	"coldseam/profile/settings"
	"coldseam/profile/taking"
)

// sitting is a drop from a probe, step by step: what is heard, what is typed, and what
// is said, with a clock of its own.
type sitting struct {
	*probing
	t    *testing.T
	said bytes.Buffer
	at   time.Time
	dir  string
}

func sit(t *testing.T, lines, page string, disk book.Disk) *sitting {
	t.Helper()
	s := &sitting{t: t, at: fixedNow(), dir: t.TempDir()}
	l, err := format.Parse(lines)
	if err != nil {
		t.Fatal(err)
	}
	c := &cable{decoder: newDecoder(&l, format.Options{}), name: "a probe", now: func() time.Time { return s.at }, begun: s.at}
	b, err := book.Open(s.dir, disk)
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := notebook.Read([]byte(page), notebook.Options{Unread: true})
	if err != nil {
		t.Fatal(err)
	}
	closed := make(chan string)
	close(closed)
	p := &program{disk: disk}
	d := p.dropping(&talk{err: &s.said, lines: closed, cut: new(atomic.Bool)}, settings.Settings{}, b, func() {})
	d.keep(taking.Begin(b, sheets[0].Drop))
	if d.fish, err = fish.Find("rainbow"); err != nil {
		t.Fatal(err)
	}
	if s.probing, err = d.probing(c); err != nil {
		t.Fatal(err)
	}
	s.ask()
	return s
}

// hear has the probe say a line, half a second after the last.
func (s *sitting) hear(format string, args ...any) (taken bool) {
	s.t.Helper()
	s.at = s.at.Add(500 * time.Millisecond)
	return s.hearFrom(s.at, format, args...)
}

func (s *sitting) hearFrom(at time.Time, format string, args ...any) (taken bool) {
	s.t.Helper()
	taken, err := s.heard(device.Event{Kind: device.Line, At: at, Line: fmt.Appendf(nil, format, args...)})
	if err != nil {
		s.t.Fatal(err)
	}
	if taken {
		s.ask()
	}
	return taken
}

// enter types Enter, and reports whether that took a reading.
func (s *sitting) enter() (taken bool) {
	s.t.Helper()
	before := len(s.take.Drop().Readings)
	if changed, _, err := s.typed(""); err != nil {
		s.t.Fatal(err)
	} else if changed {
		s.ask()
	}
	return len(s.take.Drop().Readings) > before
}

// settles has the probe hang in water until its reading is taken.
func (s *sitting) settles(format string, args ...any) {
	s.t.Helper()
	for range 400 {
		if s.hear(format, args...) {
			return
		}
	}
	s.t.Fatalf("never taken: %s\n%s", fmt.Sprintf(format, args...), s.said.String())
}

// Enter twice before the probe said anything at its new depth takes nothing there: the
// last reading ended with itself.
func TestEnterTwice(t *testing.T) {
	s := sit(t, "temp C", "units: m C\nbottom: 9 m\n", book.System{})
	s.enter()
	s.settles("22.00")
	for range 3 {
		if s.enter() {
			t.Fatalf("a reading of nothing: %v", s.take.Drop().Readings)
		}
	}
	s.settles("9.50")
	if got := readings(pageIn(t, s.dir)); len(got) != 2 || got[0] != "0.5 m: 22.0 C" || got[1] != "8.5 m: 9.5 C" {
		t.Errorf("saved %q", got)
	}

	s = sit(t, "depth m, temp C", "units: m C\nbottom: 9 m\n", book.System{})
	s.settles("0.50,22.00")
	if first := s.enter(); first || s.enter() {
		t.Errorf("one reading was taken twice: %v", s.take.Drop().Readings)
	}
}

// Lines that waited from before the probe hung are not of the depth where it hangs, and
// a probe whose cable was lost hangs nowhere.
func TestNotOfThisDepth(t *testing.T) {
	s := sit(t, "temp C", "units: m C\nbottom: 9 m\n", book.System{})
	early := s.at
	s.at = s.at.Add(5 * time.Minute) // somebody thought about an answer
	s.enter()
	for i := range 300 {
		if s.hearFrom(early.Add(time.Duration(i)*500*time.Millisecond), "22.00") {
			t.Fatal("lines from before count")
		}
	}
	for range 5 {
		s.hear("9.50")
	}
	s.restarted(device.Lost)
	if s.watch.State().Fitted || s.watch.State().Phase != response.Moving {
		t.Errorf("something is known of a probe that is lost: %+v", s.watch.State())
	}
	if !s.restarted(device.Back) {
		t.Error("not asked anew for its depth")
	}
	for range 300 {
		if s.hear("22.00") {
			t.Fatalf("taken: %v", s.take.Drop().Readings)
		}
	}
}

var giveOrTake = regexp.MustCompile(`give or take ([\d.]+) ([CF])`)

// An early reading is taken only where it is known to 1.5 C, 19 times in 20 (two
// standard errors), and says so: a difference of temperatures, on the angler's scale.
func TestEarly(t *testing.T) {
	const known = 1.5
	for _, units := range []string{"m C", "ft F"} {
		taken, refused := 0, 0
		for _, tau := range []float64{4, 8, 15} {
			s := sit(t, "temp C", "units: "+units+"\nbottom: 30 ft\n", book.System{})
			s.enter()
			for i := range 60 {
				s.hear("%.2f", 12+14*math.Exp(-float64(i)/2/tau)+0.05*math.Sin(float64(7*i)))
				doubt := 2 * s.watch.State().ErrC
				if len(s.take.Drop().Readings) > 0 {
					break
				}
				before := s.said.Len()
				if !s.enter() {
					refused++
					if said := s.said.String()[before:]; doubt <= known || !strings.Contains(said, "Not yet") {
						t.Errorf("refused at %.2f C: %s", doubt, said)
					}
					if m := giveOrTakeOff.FindStringSubmatch(s.said.String()[before:]); m != nil && !sameDoubt(m, doubt) {
						t.Errorf("could be off by %s %s, want %.2f C", m[1], m[2], doubt)
					}
					continue
				}
				taken++
				r := s.take.Drop().Readings[0]
				if doubt > known || math.Abs(r.SpreadC-doubt) > 0.11 || r.SpreadC < doubt-1e-9 {
					t.Errorf("taken with %.3f C of doubt: %+v", doubt, r)
				}
				if m := giveOrTake.FindStringSubmatch(s.said.String()[before:]); m == nil || !sameDoubt(m, doubt) {
					t.Errorf("says %q of %.2f C", m, doubt)
				}
				if page := pageIn(t, s.dir); !regexp.MustCompile(`C \+-\d\.\d C|F \+-\d\.\d F`).MatchString(page) {
					t.Errorf("page %s", page)
				}
			}
		}
		if taken != 3 || refused < 3 {
			t.Errorf("%s: taken %d, refused %d", units, taken, refused)
		}
	}
}

var giveOrTakeOff = regexp.MustCompile(`be off by ([\d.]+) ([CF])`)

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
	s := sit(t, "temp C", "units: ft F\nbottom: 30 ft\n", book.System{})
	s.enter()
	for i := range 60 {
		if s.hear("%.2f", 12+14*math.Exp(-float64(i)/16)); s.watch.State().ErrC > soonC || len(s.take.Drop().Readings) > 0 {
			continue
		}
		if m := giveOrTake.FindStringSubmatch(s.progress()); m == nil || !sameDoubt(m, 2*s.watch.State().ErrC) {
			t.Errorf("%s: not %.2f C", s.progress(), 2*s.watch.State().ErrC)
		}
		return
	}
	t.Error("never known well enough")
}

// What is noted of a line's marks, bulb and angle is not for a probe that states its
// own depth: what it says counts, to the page and in it.
func TestMarksOfAProbe(t *testing.T) {
	s := sit(t, "depth m, temp C", "units: m C\nbottom: 9 m\nmarks at: gunwale 0.5 m\nbulb below zero: 0.3 m\nline angle: 30\n", book.System{})
	s.settles("4.00,15.00")
	page := pageIn(t, s.dir)
	for _, noted := range []string{"gunwale", "bulb", "angle: 30"} {
		if strings.Contains(page, noted) {
			t.Errorf("%q is kept:\n%s", noted, page)
		}
	}
	sheets, err := notebook.Read([]byte(page), notebook.Options{})
	if err != nil || sheets[0].Drop.Readings[0].DepthM != 4 || sheets[0].Drop.DepthError(4) != 0 {
		t.Errorf("%v, %+v", err, sheets[0].Drop)
	}
	if !strings.Contains(s.said.String(), "left out") {
		t.Errorf("not told:\n%s", s.said.String())
	}
}

// noLog is a disk on which no file can grow, from some write on.
type noLog struct {
	book.System
	writes int
}

type noLogFile struct {
	book.File
	left *int
}

var errNoSpace = &fs.PathError{Op: "write", Path: "x", Err: errors.New("no space left on device")}

func (d *noLog) Append(path string) (book.File, error) {
	if d.writes == 0 {
		return nil, errNoSpace
	}
	f, err := d.System.Append(path)
	return noLogFile{f, &d.writes}, err
}

func (f noLogFile) Write(b []byte) (int, error) {
	if *f.left--; *f.left < 1 {
		return 0, errNoSpace
	}
	return f.File.Write(b)
}

// A log that cannot be kept is told of once, and the drop goes on.
func TestNoLog(t *testing.T) {
	for _, writes := range []int{0, 1, 5} {
		s := sit(t, "temp C", "units: m C\nbottom: 9 m\n", &noLog{writes: writes})
		for _, temp := range []string{"22.00", "9.50", "15.00"} {
			s.enter()
			s.settles("%s", temp)
		}
		said := strings.Join(strings.Fields(s.said.String()), " ")
		if n := strings.Count(said, "can no longer be kept beside the page: no space left on device"); n != 1 || strings.Contains(said, "SAVING FAILED") {
			t.Errorf("%d writes: told %d times:\n%s", writes, n, s.said.String())
		}
		if got := readings(pageIn(t, s.dir)); len(got) != 3 {
			t.Errorf("%d writes: saved %q", writes, got)
		}
	}
}

// A probe whose lines cannot be understood, and a moving one that states no depth, end
// no drop.
func TestLearnFails(t *testing.T) {
	for _, c := range []struct {
		line, says string
		how        learnt
	}{{"hello from the deep", "could not be understood, so the readings are typed", byHand}, {"18.31,18.02", "", stopped}} {
		k := &cable{decoder: newDecoder(nil, format.Options{})}
		closed, said := make(chan string), new(bytes.Buffer)
		close(closed)
		talk := &talk{err: said, lines: closed}
		var first [][]byte
		for n := 1; ; n++ {
			first = append(first, []byte(c.line))
			how, ended := k.settleLayout(talk, first)
			if n == 100 {
				t.Fatalf("%q: never ends", c.line)
			}
			if !ended {
				continue
			}
			if how != c.how || !strings.Contains(strings.Join(strings.Fields(said.String()), " "), c.says) {
				t.Errorf("%q: %v after %d lines: %s", c.line, how, n, said)
			}
			break
		}
	}
}

// TestSavingTriedAgain: a first save that fails is not the end: the readings are shown
// and the angler says whether to try again, in another folder, or to end.
func TestSavingTriedAgain(t *testing.T) {
	noSettings(t)
	t.Chdir(t.TempDir()) // where an answer taken for a folder does no harm
	drop := func(typed string, disk book.Disk) (status int, dir, out, errOut string) {
		var o, e bytes.Buffer
		dir = t.TempDir()
		p := &program{in: strings.NewReader(typed), stdout: &o, err: &e, disk: disk, now: fixedNow}
		status = p.run([]string{"coldseam", "drop", "--book", dir, "--units", "ft F", "--bottom", "30ft"})
		return status, dir, o.String(), e.String()
	}
	three := []string{"1 ft: 74 F", "14 ft: 63 F", "29 ft: 52 F"}
	saved := func(what, dir string, want []string) {
		t.Helper()
		if got := readings(pageIn(t, dir)); fmt.Sprint(got) != fmt.Sprint(want) || strings.Contains(pageIn(t, dir), "not ended") != (len(want) < 3) {
			t.Errorf("%s: saved %q", what, got)
		}
	}
	status, dir, _, errOut := drop("74\n52\n1\n63\nstop\n", &full{left: 1, then: 1})
	if status != 0 || strings.Count(errOut, "SAVING FAILED: no space left on device") != 1 || len(readings(errOut)) != 2 {
		t.Errorf("status %d: %s", status, errOut)
	}
	saved("again", dir, three)

	other := filepath.Join(t.TempDir(), "a stick")
	status, dir, _, errOut = drop("74\n52\n2\n"+other+"\n63\nstop\n", &full{left: 1, then: 1})
	if status != 0 || !strings.Contains(errOut, "Saved: "+other) {
		t.Errorf("status %d: %s", status, errOut)
	}
	saved("elsewhere", other, three)
	saved("before", dir, three[:1])

	status, dir, out, errOut := drop("74\n52\nwhat\n2 68\n3\n63\n", &full{left: 1, then: 9})
	if status != 1 || out != "" || strings.Contains(errOut, "Which folder?") || !strings.HasSuffix(errOut, "\ncoldseam: the drop could not be saved: no space left on device\n") {
		t.Errorf("status %d, %q: %s", status, out, errOut)
	}
	saved("copied down", dir, three[:1])

	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	status, dir, _, errOut = drop("74\n52\n2\n"+file+"\n1\n63\nstop\n", &full{left: 1, then: 1})
	if status != 0 || !strings.Contains(strings.Join(strings.Fields(errOut), " "), file+": drops cannot be saved there: not a folder") {
		t.Errorf("status %d: %s", status, errOut)
	}
	saved("no folder", dir, three)
}
