package probe

import (
	"errors"
	"io"
	"strings"
	"testing"
	"time"

	"coldseam/device"
	"coldseam/device/format"
)

// heard is a probe that says lines, one every half second, to be taken in.
func heard(t *testing.T, l *format.Layout, lines ...string) (*Probe, []Outcome) {
	t.Helper()
	begun := time.Date(2026, 7, 18, 14, 20, 0, 0, time.UTC)
	p, err := Open(Options{
		Port: device.Config{Name: "a probe"}, Layout: l, Now: func() time.Time { return begun },
		Listen: device.Options{
			Open:  func(device.Config) (io.ReadCloser, error) { return io.NopCloser(strings.NewReader("")), nil },
			Ports: func() ([]device.Info, error) { return nil, nil },
		},
	})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { p.Close() })
	var all []Outcome
	for i, line := range lines {
		all = append(all, p.Take(device.Event{Kind: device.Line, At: begun.Add(time.Duration(i) * time.Second / 2), Line: []byte(line)}))
	}
	return p, all
}

func times(line string, n int) []string {
	return strings.Split(strings.Repeat(line+"\n", n-1)+line, "\n")
}

// What the lines hold is found, or asked for once there are enough of them, or given up.
func TestLearn(t *testing.T) {
	for _, c := range []struct {
		line string
		at   int // the line that decides
		open bool
	}{{"18.31,18.02", AskAfter - 1, true}, {"hello from the deep", giveUpAfter - 1, false}} {
		p, said := heard(t, nil, times(c.line, c.at+1)...)
		for i, s := range said[:c.at] {
			if s.Learnt || s.Open != nil || s.Lost {
				t.Errorf("%q: decided at line %d: %+v", c.line, i, s)
			}
		}
		if s := said[c.at]; p.Known() || (s.Open != nil) != c.open || s.Lost == c.open || c.open && len(s.Open.Choices) < 2 {
			t.Errorf("%q: %+v", c.line, s)
		}
	}
	p, said := heard(t, nil, times("depth 4.20 m, temp 18.31 C", 12)...)
	n := 0
	for _, s := range said {
		if s.Learnt {
			n++
		}
	}
	if last := said[11]; n != 1 || !p.Known() || !p.Depths || last.Sample.DepthM.Value != 4.2 || last.Sample.TempC.Value != 18.31 || last.AtS != 5.5 {
		t.Errorf("found %d times: %+v", n, said[11])
	}
}

// While the caller is asked, lines are no answer; once it has chosen they are read.
func TestChoose(t *testing.T) {
	p, said := heard(t, nil, times("18.31,18.02", AskAfter+3)...)
	for _, s := range said[AskAfter:] {
		if s.Open != nil || s.Sample.TempC.Known {
			t.Errorf("asked again, or read: %+v", s)
		}
	}
	p.Choose(0)
	if s := p.Take(device.Event{Kind: device.Line, Line: []byte("18.31,18.02")}); !p.Known() || !s.Sample.TempC.Known || s.Err != nil {
		t.Errorf("%+v", s)
	}
}

// Of sentences only what they say tells whether there is a depth.
func TestLearnSentences(t *testing.T) {
	nmea, err := format.Parse("nmea")
	if err != nil {
		t.Fatal(err)
	}
	p, said := heard(t, &nmea, times("$YXMTW,17.9,C*1D", AskAfter)...)
	if !said[AskAfter-1].Learnt || said[AskAfter-2].Learnt || p.Depths {
		t.Errorf("%+v", said[AskAfter-1])
	}
}

// What is no reading is told apart from what was meant to be one, and both are counted.
func TestNoise(t *testing.T) {
	l, err := format.Parse("depth m, temp C")
	if err != nil {
		t.Fatal(err)
	}
	p, said := heard(t, &l, "4.2,18.31", "", "4.2,garbage")
	if said[0].Err != nil || said[1].Noise || said[1].Err == nil || !said[2].Noise {
		t.Errorf("%+v", said)
	}
	if got := p.Decoder.Counted(); !strings.HasPrefix(got, "1 line read, 1 ") {
		t.Errorf("counted %q", got)
	}
}

// A recording gives a cast, or says why not.
func TestCast(t *testing.T) {
	for _, c := range []struct {
		text string
		err  error
		n    int
	}{
		{"", ErrEmpty, 0},
		{strings.Repeat("18.31 C\n", 20), ErrNoDepth, 0},
		{strings.Repeat("depth 4.20 m, temp 18.31 C\n", 50), nil, 50},
		{"depth_m,temp_c\n1,20\n2,19\n", nil, 2},
	} {
		r, clocked, err := NewDecoder(nil, format.Options{}).Cast(strings.NewReader(c.text))
		if !errors.Is(err, c.err) || err == nil && r.Len() != c.n || clocked {
			t.Errorf("%.30q: %d samples, %v, %v", c.text, r.Len(), clocked, err)
		}
	}
	_, _, err := NewDecoder(nil, format.Options{}).Cast(strings.NewReader(strings.Repeat("18.31,18.02\n", 20)))
	if open := (OpenError{}); !errors.As(err, &open) || open.Example == "" {
		t.Errorf("%v", err)
	}
}
