package book

import (
	"bytes"
	"errors"
	"math"
	"os"
	"strings"
	"testing"
)

func FuzzLog(f *testing.F) {
	for _, s := range []string{"12.4,18.31", "\x00\xff\x1b[2J", `C:\x41`, "+1.000 x", "", "a\nb", "# x"} {
		f.Add([]byte(s), 12.3456)
	}
	f.Fuzz(func(t *testing.T, raw []byte, at float64) {
		if !(at >= 0 && at < 1e9) {
			at = 7
		}
		var l Log
		if err := l.Line(at, raw); err != nil {
			t.Fatal(err)
		}
		text := l.waiting.Bytes()
		if bytes.Count(text, []byte("\n")) != 1 || bytes.ContainsFunc(text[:len(text)-1], func(r rune) bool { return r < ' ' && r != '\t' || r > '~' }) {
			t.Fatalf("%q is kept as %q", raw, text)
		}
		since, got, ok := Logged(text[:len(text)-1])
		if !ok || !bytes.Equal(got, raw) || math.Abs(since-at) > 0.0006 {
			t.Fatalf("%q at %v comes back as %q at %v, %v", raw, at, got, since, ok)
		}
		Logged(append([]byte("+"), raw...))
	})
}

func TestLogged(t *testing.T) {
	for _, s := range []string{"", "+", "18.31", "+18.31", "+18.31 C", "+1.5000 x", "+.500 x", "+-1.000 x", "+NaN x", "# +1.000 x"} {
		if _, _, ok := Logged([]byte(s)); ok {
			t.Errorf("%q is taken for a line of a log", s)
		}
	}
}

// Lines that came before the page stand before those that came after.
func TestLog(t *testing.T) {
	b := open(t, System{})
	p, err := b.Begin(drop("Alder Kettle", 74))
	if err != nil {
		t.Fatal(err)
	}
	var l Log
	long := bytes.Repeat([]byte{'x'}, maxWaiting/2)
	l.Remark("begun")
	l.Line(0.5, []byte("18.31"))
	if err := l.Sync(nil); err != nil {
		t.Fatal(err)
	}
	l.Line(1, long)
	l.Line(2, long)
	l.Line(3, long)
	if err := l.Sync(p); err != nil {
		t.Fatal(err)
	}
	if err := l.Line(4, []byte("18.30")); err != nil {
		t.Fatal(err)
	}
	if err := l.Close(); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(p.Beside(LogEnding))
	if err != nil {
		t.Fatal(err)
	}
	got := strings.ReplaceAll(string(data), string(long), "long")
	if want := "# begun\n+0.500 18.31\n+1.000 long\n# 2 lines before the first reading were not kept\n+4.000 18.30\n"; got != want {
		t.Errorf("kept %q", got)
	}
}

// noLog is a disk on which no file can grow, from some write on.
type noLog struct {
	System
	writes int
}

type noLogFile struct {
	File
	left *int
}

var errNoSpace = errors.New("no space left on device")

func (d *noLog) Append(path string) (File, error) {
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

// A log that cannot be kept says so once.
func TestNoLog(t *testing.T) {
	for _, writes := range []int{0, 1, 5} {
		b := open(t, &noLog{writes: writes})
		p, err := b.Begin(drop("Alder Kettle", 74))
		if err != nil {
			t.Fatal(err)
		}
		var l Log
		failed := 0
		for i := range 20 {
			if l.Line(float64(i), []byte("18.31")) != nil {
				failed++
			}
			if l.Sync(p) != nil {
				failed++
			}
		}
		if l.Close(); failed != 1 {
			t.Errorf("%d writes: %d errors", writes, failed)
		}
	}
}
