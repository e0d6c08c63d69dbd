package rehearse

import (
	"errors"
	"io"
	"math"
	"os"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
	"time"
)

// A Read waits for a line, but 100 ms at most, then says (0, io.EOF).
func TestReadsOfASlowProbe(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		port := open(t, New(Options{PeriodS: 0.35}))
		b := make([]byte, 64)
		for i, want := range []struct {
			n      int
			err    error
			waited time.Duration
		}{
			{0, io.EOF, 100 * time.Millisecond}, {0, io.EOF, 100 * time.Millisecond}, {0, io.EOF, 100 * time.Millisecond},
			{5, nil, 50 * time.Millisecond}, {2, nil, 0}, // "23.96" and the end of the line
			{0, io.EOF, 100 * time.Millisecond},
		} {
			before := time.Now()
			n, err := port.Read(b)
			waited := time.Since(before).Truncate(time.Millisecond)
			if n != want.n || err != want.err || waited != want.waited {
				t.Errorf("read %d: %d, %v after %v; want %+v", i, n, err, waited, want)
			}
		}
	})
}

// However fast the lake, a Read that found nothing has slept, and not for long.
func TestReadNeitherSpinsNorSleepsLong(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		for _, o := range []Options{{Speed: 100, PeriodS: 0.05}, {Speed: 0.01, PeriodS: 600}, {Speed: 20}, {Faults: Faults{Quiet: true}}} {
			port := open(t, New(o))
			b := make([]byte, 8)
			for range 3000 {
				before := time.Now()
				n, err := port.Read(b)
				waited := time.Since(before)
				if waited > poll+breath {
					t.Fatalf("%+v: a read of %v", o, waited)
				}
				if n == 0 && (err != io.EOF || waited < poll) {
					t.Fatalf("%+v: nothing, %v after %v", o, err, waited)
				}
				if n > 0 && err != nil {
					t.Fatalf("%+v: %d bytes and %v", o, n, err)
				}
			}
			port.Close()
		}
	})
}

func TestReadIntoNothing(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		if n, err := open(t, New(Options{})).Read(nil); n != 0 || err != nil {
			t.Errorf("%d, %v", n, err)
		}
	})
}

func TestCloseEndsAWaitingRead(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(Options{})
		port := open(t, p)
		ended := make(chan error, 1)
		before := time.Now()
		go func() {
			_, err := port.Read(make([]byte, 8))
			ended <- err
		}()
		synctest.Wait()
		if err := port.Close(); err != nil {
			t.Error(err)
		}
		if err := <-ended; !errors.Is(err, os.ErrClosed) || time.Since(before) != 0 {
			t.Errorf("%v after %v", err, time.Since(before))
		}
		if err := port.Close(); !errors.Is(err, os.ErrClosed) {
			t.Errorf("closed again: %v", err)
		}
		if _, err := port.Read(make([]byte, 8)); !errors.Is(err, os.ErrClosed) {
			t.Errorf("read after Close: %v", err)
		}
		next(t, open(t, p))
	})
}

func TestOneOpenAtATime(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(Options{})
		port := open(t, p)
		if again, err := p.Open(); !errors.Is(err, ErrBusy) || again != nil {
			t.Errorf("%v, %v", again, err)
		}
		if n, err := port.Write([]byte("ignored")); n != 7 || err != nil {
			t.Errorf("write: %d, %v", n, err)
		}
		port.Close()
		open(t, p)
	})
}

// What nobody reads is kept up to a limit, in whole lines, and none of it is left over
// for the next opening.
func TestNobodyReads(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(Options{NoiseC: -1})
		port := open(t, p)
		time.Sleep(time.Hour)
		got := ""
		b := make([]byte, 64)
		for {
			n, err := port.Read(b)
			if err == io.EOF {
				break
			}
			got += string(b[:n])
		}
		// Lines of 7 bytes: 585 of them are 4095.
		if strings.Count(got, "\r\n") < 585 || len(got)%7 != 0 || len(got) > 4096+7 {
			t.Errorf("%d bytes, %d lines", len(got), strings.Count(got, "\r\n"))
		}
		port.Close()
		time.Sleep(time.Minute)
		before := p.elapsed()
		next(t, open(t, p))
		if p.elapsed() < before.Truncate(p.period)+p.period {
			t.Error("a line at once")
		}
	})
}

// For the race detector: one reads, reopens and closes, others move and ask.
func TestManyHands(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(Options{Speed: 20, StatesDepth: true, Faults: Faults{true, true, true, true, true, true}})
		var hands sync.WaitGroup
		read, opened := 0, 0
		hands.Go(func() {
			b := make([]byte, 16)
			for range 40 {
				port, err := p.Open()
				if err != nil {
					time.Sleep(50 * time.Millisecond)
					continue
				}
				opened++
				for range 400 {
					n, err := port.Read(b)
					if read += n; err != nil && err != io.EOF {
						break
					}
				}
				port.Close()
			}
		})
		for hand := range 2 {
			hands.Go(func() {
				for i := range 200 {
					p.Lower(float64(i*(3+hand)%10) + 0.5)
					if d := p.Depth(); !(d >= 0 && d <= Kettle().BottomM()) {
						t.Errorf("at %v m", d)
					}
					p.Now()
					time.Sleep(time.Duration(31+hand) * time.Millisecond)
				}
			})
		}
		hands.Wait()
		if read == 0 || opened < 2 {
			t.Errorf("%d bytes in %d openings", read, opened)
		}
	})
}

// What is read late was said when it was said.
func TestHeard(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(Options{Speed: 10, PeriodS: 0.5, NoiseC: -1})
		port, err := p.Open()
		if err != nil {
			t.Fatal(err)
		}
		begun := p.Now()
		time.Sleep(time.Second) // 10 s of the lake's clock, nothing read
		var ends []float64
		line := ""
		for b := make([]byte, 64); len(ends) < 20; {
			n, err := port.Read(b)
			if err != nil && n == 0 {
				t.Fatal(err)
			}
			line += string(b[:n])
			if strings.Contains(line, "\n") {
				_, line, _ = strings.Cut(line, "\n")
				ends = append(ends, p.Heard().Sub(begun).Seconds())
			}
		}
		for i, at := range ends {
			if want := 0.5 * float64(i+1); math.Abs(at-want) > 1e-6 {
				t.Errorf("line %d was said at %v s, want %v", i+1, at, want)
			}
		}
		port.Close()
	})
}
