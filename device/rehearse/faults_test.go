package rehearse

import (
	"errors"
	"io"
	"io/fs"
	"strings"
	"testing"
	"testing/synctest"
	"time"
)

func TestParseFaults(t *testing.T) {
	for list, want := range map[string]Faults{
		"": {}, "boot": {Boot: true}, "garbage": {Garbage: true}, "torn,boot": {Boot: true, Torn: true},
		"sentinel": {Sentinel: true}, "quiet": {Quiet: true}, "pulled": {Pulled: true},
		"all": {true, true, true, true, true, true},
	} {
		if got, err := ParseFaults(list); err != nil || got != want {
			t.Errorf("%q: %+v, %v", list, got, err)
		}
	}
	for _, list := range []string{"boot,", "wet", "boot,wet", " ", "all,wet"} {
		got, err := ParseFaults(list)
		if err == nil || got != (Faults{}) {
			t.Errorf("%q: %+v, %v", list, got, err)
			continue
		}
		for _, name := range []string{"boot", "garbage", "torn", "sentinel", "quiet", "pulled", "all"} {
			if !strings.Contains(err.Error(), name) {
				t.Errorf("%q: %v does not name %s", list, err, name)
			}
		}
	}
}

// text is text that any terminal can show.
func text(s string) bool {
	return !strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r > '~' })
}

func TestBoot(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(Options{StatesDepth: true, Faults: Faults{Boot: true}})
		var before string
		for range 2 {
			port := open(t, p)
			got := ""
			for strings.Count(got, "\r\n") < 3 {
				got += next(t, port)
			}
			noise, rest, found := strings.Cut(got, "cable probe")
			banner, lines, _ := strings.Cut(rest, "\r\n")
			if !found || len(noise) < 8 || text(noise) || !text(banner) || !strings.HasPrefix(lines, "depth_m,temp_c\r\n") {
				t.Errorf("%q", got)
			}
			if strings.ContainsFunc(noise, func(r rune) bool { return r >= ' ' && r <= '~' }) || noise == before {
				t.Errorf("noise %q", noise)
			}
			before = noise
			port.Close()
		}
	})
}

// pair gives the lines of one rehearsal without faults, some more than it needs, and with
// them.
func pair(t *testing.T, lake Lake, statesDepth bool, f Faults) (clean, got []string) {
	o := Options{Lake: lake, Seed: 5, Speed: 20, StatesDepth: statesDepth}
	clean = run(t, o, 1400, 64, move{2, 4}, move{100, 6}, move{300, 9})
	o.Faults = f
	return clean, run(t, o, 1200, 64, move{2, 4}, move{100, 6}, move{300, 9})
}

func TestSentinel(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		for _, statesDepth := range []bool{false, true} {
			clean, got := pair(t, Kettle(), statesDepth, Faults{Sentinel: true})
			count := map[string]int{}
			for i, line := range got {
				if line == clean[i] {
					continue
				}
				at := strings.LastIndex(line, ",") + 1
				count[line[at:]]++
				if !strings.HasPrefix(clean[i], line[:at]) {
					t.Errorf("%q instead of %q", line, clean[i])
				}
			}
			if len(count) != 2 || count["85.00"] == 0 || count["-127.00"] == 0 || count["85.00"]+count["-127.00"] > 120 {
				t.Errorf("%v", count)
			}
		}
	})
}

// A torn line is the beginning or the end of a whole one, still numbers of a lake in the
// same number of fields, and now and then far from the truth.
func TestTorn(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		for i := range 4 {
			lake, statesDepth := []Lake{Kettle(), lakes[2]}[i/2], i%2 == 1 // two digits of a degree, and one
			clean, got := pair(t, lake, statesDepth, Faults{Torn: true})
			atEnd, atStart, far := 0, 0, 0
			for i, line := range got {
				if line == clean[i] {
					continue
				}
				were, fields := strings.Split(clean[i], ","), strings.Split(line, ",")
				switch {
				case strings.HasPrefix(clean[i], line):
					atEnd++
				case strings.HasSuffix(clean[i], line):
					atStart++
				default:
					t.Errorf("%q is no part of %q", line, clean[i])
				}
				if len(fields) != len(were) {
					t.Errorf("%q out of %q", line, clean[i])
					continue
				}
				for j := range fields {
					v, truth := number(t, fields[j]), number(t, were[j])
					if v < -5 || v > 40 {
						t.Errorf("%q out of %q is no lake's", line, clean[i])
					}
					if v < truth-0.5 {
						far++
					}
				}
			}
			if atEnd == 0 || atStart == 0 || atEnd+atStart > 150 || far == 0 {
				t.Errorf("%d torn at the end, %d at the start, %d far from the truth", atEnd, atStart, far)
			}
		}
	})
}

// Garbage takes the place of lines; every line that is still text came whole.
func TestGarbage(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		clean, got := pair(t, Kettle(), false, Faults{Garbage: true})
		garbled, at := 0, 0
		for _, line := range got {
			if !text(line) || line == "" { // noise may hold the end of a line
				garbled++
				continue
			}
			for at < len(clean) && clean[at] != line {
				at++
			}
			if at++; at > len(clean) {
				t.Fatalf("%q is none of the lines that were still to come", line)
			}
		}
		if garbled == 0 || garbled > 120 {
			t.Errorf("%d lines of %d garbled", garbled, len(got))
		}
	})
}

func TestQuiet(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		port := open(t, New(Options{Faults: Faults{Quiet: true}}))
		b := make([]byte, 64)
		start := time.Now()
		heard := start
		var gaps []time.Duration
		for time.Since(start) < 15*time.Minute {
			n, err := port.Read(b)
			if err != nil && err != io.EOF {
				t.Fatal(err)
			}
			if n == 0 {
				continue
			}
			if gap := time.Since(heard).Round(100 * time.Millisecond); gap > 600*time.Millisecond {
				gaps = append(gaps, gap)
			}
			heard = time.Now()
		}
		// 15 s without a line every 0.5 s are a gap of 15 to 15.5 s, ten in 15 minutes.
		for _, gap := range gaps {
			if gap < 15*time.Second || gap > 15500*time.Millisecond {
				t.Errorf("silent for %v", gap)
			}
		}
		if len(gaps) != 10 {
			t.Errorf("silences: %v", gaps)
		}
	})
}

func TestPulledThenBack(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(Options{Faults: Faults{Pulled: true}})
		p.Lower(6)
		for range 3 {
			port := open(t, p)
			b := make([]byte, 64)
			got := ""
			var err error
			for end := time.Now().Add(time.Hour); err == nil || err == io.EOF; {
				var n int
				n, err = port.Read(b)
				got += string(b[:n])
				if time.Now().After(end) {
					t.Fatal("not pulled in an hour")
				}
			}
			if lines := strings.Count(got, "\r\n"); !errors.Is(err, ErrPulled) || lines < 240 || lines > 480 {
				t.Errorf("%v after %d lines", err, lines)
			}
			before := time.Now()
			for range 10 {
				if n, err := port.Read(b); n != 0 || err != io.EOF || time.Since(before) != 0 {
					t.Fatalf("after the error: %d, %v after %v", n, err, time.Since(before))
				}
			}
			if _, err := p.Open(); !errors.Is(err, fs.ErrNotExist) {
				t.Errorf("opened while pulled: %v", err)
			}
			if err := port.Close(); err != nil {
				t.Errorf("close: %v", err)
			}
			time.Sleep(pulledFor)
		}
		next(t, open(t, p))
		if p.Depth() != 6 {
			t.Errorf("the probe is at %v m", p.Depth())
		}
	})
}
