package rehearse

import (
	"io"
	"strings"
	"testing"
	"testing/synctest"
	"time"
)

// move is one call of Lower at a time of the lake's clock.
type move struct{ atS, depthM float64 }

// run opens a new probe, makes the moves and reads n lines with a buffer of size bytes.
// It must be called in a bubble of synctest.
func run(t *testing.T, o Options, n, size int, moves ...move) []string {
	t.Helper()
	p := New(o)
	port := open(t, p)
	go func() {
		for _, m := range moves {
			time.Sleep(duration(m.atS/p.o.Speed) - time.Since(p.start))
			p.Lower(m.depthM)
		}
	}()
	var text strings.Builder
	b := make([]byte, size)
	end := time.Now().Add(24 * time.Hour)
	for strings.Count(text.String(), "\r\n") < n {
		got, err := port.Read(b)
		if err != nil && err != io.EOF {
			t.Fatalf("after %q: %v", text.String(), err)
		}
		if time.Now().After(end) {
			t.Fatalf("no %d lines in a day", n)
		}
		text.Write(b[:got])
	}
	if err := port.Close(); err != nil {
		t.Fatal(err)
	}
	synctest.Wait()
	return strings.Split(text.String(), "\r\n")[:n]
}

func open(t *testing.T, p *Probe) io.ReadWriteCloser {
	t.Helper()
	port, err := p.Open()
	if err != nil {
		t.Fatal(err)
	}
	return port
}

// next reads until something comes, for a minute at most.
func next(t *testing.T, port io.Reader) string {
	t.Helper()
	b := make([]byte, 64)
	for end := time.Now().Add(time.Minute); time.Now().Before(end); {
		n, err := port.Read(b)
		if n > 0 {
			return string(b[:n])
		}
		if err != io.EOF {
			t.Fatalf("%d bytes, %v", n, err)
		}
	}
	t.Fatal("silent for a minute")
	return ""
}
