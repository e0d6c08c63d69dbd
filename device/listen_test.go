package device

import (
	"errors"
	"io"
	"io/fs"
	"slices"
	"strings"
	"syscall"
	"testing"
	"testing/synctest"
	"time"
)

// The clock of these tests is that of synctest: times are exact, and cost nothing.

func TestLinesOverTimeouts(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		start := time.Now()
		l, _ := listen(t, Options{}, &fake{steps: []step{
			says(".3\r\n18."), silence, silence, silence, says("4\r\n17.9\r16.0\n\n"), {Poll, "", nil}, says("15"), silence, says("\n"),
		}})
		for _, want := range []struct {
			line string
			at   time.Duration // of its end
		}{
			{"18.4", 300 * time.Millisecond},
			{"17.9", 300 * time.Millisecond},
			{"16.0", 300 * time.Millisecond},
			{"15", 500 * time.Millisecond},
		} {
			e := next(t, l, Line)
			if string(e.Line) != want.line || e.At.Sub(start) != want.at {
				t.Errorf("%q at %v, want %q at %v", e.Line, e.At.Sub(start), want.line, want.at)
			}
		}
		if got, want := l.Counts(), (Counts{Lines: 4, Torn: 1}); got != want {
			t.Errorf("%+v, want %+v", got, want)
		}
	})
}

// The line within which a port was opened may be a whole row of names: it is handed on
// where it is wanted, and never as a Line.
func TestCutLineHandedOn(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		l, _ := listen(t, Options{Cut: true}, &fake{steps: []step{says("depth_m,te"), silence, says("mp_c\r\n1,18\r\n\r\n")}})
		if e := next(t, l, Cut); string(e.Line) != "depth_m,temp_c" {
			t.Errorf("cut line %q", e.Line)
		}
		wantLines(t, l, "1,18")
		if got, want := l.Counts(), (Counts{Lines: 1, Torn: 1}); got != want {
			t.Errorf("%+v, want %+v", got, want)
		}
	})
}

func TestQuietOncePerSilence(t *testing.T) {
	for name, quiet := range map[string]step{
		"Linux":   silence,
		"Windows": {Poll, "", nil},
		"at once": {0, "", nil}, // on no system known, but it must not burn
		"slow":    {250 * time.Millisecond, "", io.EOF},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				start := time.Now()
				f := &fake{steps: []step{says("\n1\n"), quiet}, forever: true}
				l, _ := listen(t, Options{}, f)
				wantLines(t, l, "1")
				e := next(t, l, Quiet)
				if got := e.At.Sub(start); got != 5*time.Second || e.Text != "no byte for 5 s" {
					t.Errorf("%q after %v", e.Text, got)
				}
				nothing(t, l, time.Minute)
				if perSecond := f.reads.Load() / 65; perSecond > 50 {
					t.Errorf("%d reads a second", perSecond)
				}
				if got, want := l.Counts(), (Counts{Lines: 1}); got != want {
					t.Errorf("%+v, want %+v", got, want)
				}
			})
		})
	}
}

func TestQuietAgainAfterAByte(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		start := time.Now()
		steps := slices.Repeat([]step{silence}, 30) // 3 s
		steps = append(steps, says("x"))
		l, _ := listen(t, Options{QuietAfter: 2 * time.Second}, &fake{steps: steps})
		for _, want := range []time.Duration{2 * time.Second, 5 * time.Second} {
			if got := next(t, l, Quiet).At.Sub(start); got != want {
				t.Errorf("quiet after %v, want %v", got, want)
			}
		}
		nothing(t, l, time.Minute)
	})
}

func TestEndsAtOnce(t *testing.T) {
	end := step{0, "", io.EOF}
	synctest.Test(t, func(t *testing.T) { // four of them running are not enough
		var steps []step
		for _, between := range []step{silence, says("x"), {0, "", nil}, silence} {
			steps = append(steps, end, end, end, end, between)
		}
		l, _ := listen(t, Options{}, &fake{steps: steps})
		next(t, l, Quiet)
		if got := l.Counts().Lost; got != 0 {
			t.Errorf("lost %d times", got)
		}
	})
	synctest.Test(t, func(t *testing.T) {
		f := &fake{steps: []step{says("\n1\n"), end}, forever: true}
		l, _ := listen(t, Options{}, f, fs.ErrNotExist)
		wantLines(t, l, "1")
		if e := next(t, l, Lost); e.Text != "the port has closed: the cable was pulled" {
			t.Errorf("lost: %q", e.Text)
		}
		synctest.Wait()
		if !f.closed.Load() || f.reads.Load() != 1+pulled {
			t.Errorf("closed: %v, %d reads", f.closed.Load(), f.reads.Load())
		}
	})
}

func TestTornLineIsNeverJoined(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		eio := &fs.PathError{Op: "read", Path: "/dev/probe", Err: syscall.EIO}
		l, _ := listen(t, Options{},
			&fake{steps: []step{says("8.4\n18.4\n17."), {0, "2", eio}}}, // the last bytes come with the error
			&fake{steps: []step{says("9\r\n16.0\r\n" + strings.Repeat("z", 2000)), {0, "", errors.New("\x1bodd\n")}}},
			&fake{steps: []step{says("zz\n15.0\n")}},
		)
		wantLines(t, l, "18.4")
		if e := next(t, l, Lost); e.Text != "read /dev/probe: input/output error" {
			t.Errorf("lost: %q", e.Text)
		}
		if e := next(t, l, Back); e.Text != "/dev/probe" {
			t.Errorf("back: %q", e.Text)
		}
		wantLines(t, l, "16.0")
		if e := next(t, l, Lost); e.Text != "\ufffdodd" {
			t.Errorf("lost: %q", e.Text)
		}
		next(t, l, Back)
		wantLines(t, l, "15.0")
		// torn: 8.4, 17.2, 9, zz
		if got, want := l.Counts(), (Counts{Lines: 3, Torn: 4, TooLong: 1, Lost: 2}); got != want {
			t.Errorf("%+v, want %+v", got, want)
		}
	})
}

func TestBackOff(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dead := &fake{steps: []step{{0, "", syscall.EIO}}}
		gone := fs.ErrNotExist
		l, op := listen(t, Options{}, dead, gone, gone, gone, gone, gone, gone, gone,
			&fake{steps: []step{{0, "", syscall.EIO}}}, // opens, but brings nothing: the row goes on
			&fake{steps: []step{says("x"), {0, "", syscall.EIO}}},
			&fake{})
		next(t, l, Lost)
		next(t, l, Back)
		next(t, l, Lost)
		next(t, l, Back)
		next(t, l, Lost)
		next(t, l, Back)
		want := []time.Duration{0}
		for _, wait := range []float64{0.5, 1, 2, 4, 8, 10, 10, 10, 10, 0.5} {
			want = append(want, want[len(want)-1]+time.Duration(wait*float64(time.Second)))
		}
		if !slices.Equal(op.times, want) {
			t.Errorf("opened at %v, want %v", op.times, want)
		}
	})
}

func TestWaitingSaysANewReasonOnce(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		busy := errors.New("busy")
		l, _ := listen(t, Options{}, &fake{steps: []step{{0, "", syscall.EIO}}},
			fs.ErrNotExist, busy, busy, busy, errors.New("no\nright"), &fake{})
		next(t, l, Lost)
		for _, want := range []string{"busy", "no\ufffdright"} {
			if e := next(t, l, Waiting); e.Text != want {
				t.Errorf("waiting: %q, want %q", e.Text, want)
			}
		}
		next(t, l, Back)
	})
}

func TestSlowConsumer(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		f := &fake{steps: []step{says("\n"), {time.Millisecond, "1\n2\n3\n", nil}}, forever: true}
		l, _ := listen(t, Options{}, f)
		time.Sleep(time.Hour)
		synctest.Wait()
		if got := l.Counts().Lines; got != waitingEvents+1 {
			t.Errorf("%d lines in an hour without a consumer, want %d", got, waitingEvents+1)
		}
		if got, most := f.reads.Load(), int64(2+waitingEvents/3); got > most {
			t.Errorf("%d reads, want %d at most", got, most)
		}
		// every line comes, in order, and the hour was no silence
		for i := range 300 {
			wantLines(t, l, string("123"[i%3]))
		}
	})
}

// TestSlowConsumerIsNoSilence: what comes before the slowness keeps its time, and a
// silence is counted from when the port is read again.
func TestSlowConsumerIsNoSilence(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		start := time.Now()
		l, _ := listen(t, Options{}, &fake{steps: []step{says(strings.Repeat("1\n", waitingEvents+20))}})
		time.Sleep(time.Hour)
		for range waitingEvents + 19 { // the first is torn
			if e := next(t, l, Line); !e.At.Equal(start) {
				t.Fatalf("a line read at once has the time %v", e.At.Sub(start))
			}
		}
		if got := next(t, l, Quiet).At.Sub(start); got != time.Hour+5*time.Second {
			t.Errorf("quiet after %v", got)
		}
	})
}

func TestClose(t *testing.T) {
	for _, c := range []struct {
		name  string
		after time.Duration // from the start to Close
		steps []step
		most  time.Duration // that Close takes
	}{
		{"in a read", 230 * time.Millisecond, nil, Poll},
		{"in the pause after a read", 10 * time.Millisecond, []step{{0, "", nil}}, Poll},
		{"in the wait to open again", 20 * time.Second, []step{{0, "", syscall.EIO}}, 0},
		{"with all events waiting", time.Second, []step{says("1\n")}, 0},
		{"while bytes stream", time.Second, []step{{time.Millisecond, "x", nil}}, time.Millisecond},
	} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				f := &fake{steps: c.steps, forever: true}
				l, _ := listen(t, Options{}, f, fs.ErrNotExist)
				time.Sleep(c.after)
				start := time.Now()
				go l.Close()
				if err := l.Close(); err != nil {
					t.Error(err)
				}
				if took := time.Since(start); took > c.most {
					t.Errorf("took %v, want %v at most", took, c.most)
				}
				if !f.closed.Load() {
					t.Error("the port is open still")
				}
				if err := l.Close(); err != nil {
					t.Errorf("second Close: %v", err)
				}
				for range l.Events() { // ends, or synctest finds all asleep
				}
			})
		})
	}
}

// TestCloseUnderADeadRead: a driver that hangs does not hang the program, and the port
// is still not closed under the read.
func TestCloseUnderADeadRead(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		f := &fake{t: t, steps: []step{{time.Hour, "", nil}}}
		l, err := Listen(Config{Name: "p"}, Options{
			Open:  func(Config) (io.ReadCloser, error) { return f, nil },
			Ports: func() ([]Info, error) { return nil, nil },
		})
		if err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Second)
		start := time.Now()
		if err := l.Close(); err == nil || time.Since(start) != closing {
			t.Errorf("%v after %v", err, time.Since(start))
		}
		if f.closed.Load() {
			t.Error("closed under the read")
		}
		time.Sleep(time.Hour)
		if err := l.Close(); err != nil || !f.closed.Load() {
			t.Errorf("after the read: %v, closed: %v", err, f.closed.Load())
		}
	})
}

func TestListenRefuses(t *testing.T) {
	broken := errors.New("broken")
	open := func(Config) (io.ReadCloser, error) { return nil, broken }
	if _, err := Listen(Config{Name: "p"}, Options{Open: open}); !errors.Is(err, broken) {
		t.Errorf("first Open: %v", err)
	}
	if _, err := Listen(Config{Name: "p", Baud: 1}, Options{Open: open}); err == nil || errors.Is(err, broken) {
		t.Errorf("settings: %v", err)
	}
	if _, err := Listen(Config{Name: "p"}, Options{Open: open, QuietAfter: -1}); err == nil || errors.Is(err, broken) {
		t.Errorf("negative silence: %v", err)
	}
}

func TestOpenGetsDefaults(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var got Config
		l, err := Listen(Config{Name: "p"}, Options{
			Open:  func(c Config) (io.ReadCloser, error) { got = c; return &fake{t: t}, nil },
			Ports: func() ([]Info, error) { return nil, errors.New("not known") },
		})
		if err != nil {
			t.Fatal(err)
		}
		defer l.Close()
		if want := (Config{"p", 9600, 8, "none"}); got != want {
			t.Errorf("%+v, want %+v", got, want)
		}
	})
}
