package batch

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"runtime"
	"strings"
	"testing"
	"time"
)

// As a filter: a column's line comes out when the next column begins, though more
// input is waited for.
func TestStreams(t *testing.T) {
	inRead, inWrite := io.Pipe()
	outRead, outWrite := io.Pipe()
	done := make(chan error)
	go func() {
		_, err := Run([]Input{{"pipe", func() (io.ReadCloser, error) { return inRead, nil }}}, outWrite, usual)
		outWrite.Close()
		done <- err
	}()
	time.AfterFunc(30*time.Second, func() { outWrite.CloseWithError(errors.New("nothing came out for 30 s")) })
	got := bufio.NewScanner(outRead)
	next := func(name string) {
		t.Helper()
		if !got.Scan() || !strings.Contains(got.Text(), `"profile":"`+name+`"`) {
			t.Fatalf("%s: %q, %v", name, got.Text(), got.Err())
		}
	}
	io.WriteString(inWrite, "profile,depth_m,temp_c\na,0,20\na,1,20\na,2,20\nb,0,20\nb,1")
	next("a")
	io.WriteString(inWrite, ",20\nc,0,20\nd,0,20\n")
	next("b")
	next("c")
	inWrite.Close()
	next("d")
	if got.Scan() {
		t.Errorf("more: %s", got.Text())
	}
	if err := <-done; err != nil {
		t.Error(err)
	}
}

// A column that comes in pieces, behind others that were handed over meanwhile, keeps the
// lines of its own rows, and is the first that could not be read.
func TestPieces(t *testing.T) {
	inRead, inWrite := io.Pipe()
	var out bytes.Buffer
	done := make(chan Summary)
	go func() {
		sum, _ := Run([]Input{{"in", func() (io.ReadCloser, error) { return inRead, nil }}}, &out, usual)
		done <- sum
	}()
	for _, piece := range []string{"profile,depth_m,temp_c\na,0,20\na,1,20\na,2,20\nb,0,20\nb,1,2000\n", "b,2,20\n", "c,0,warm\nd,0,20\n"} {
		io.WriteString(inWrite, piece)
	}
	inWrite.Close()
	sum := <-done
	if sum.Columns != 4 || sum.Problems != 2 || sum.First != "b" || !strings.HasPrefix(sum.Problem, "in:6: ") || !strings.Contains(out.String(), `"problem":"in:6: `) {
		t.Errorf("%+v\n%s", sum, out.String())
	}
}

// closedPipe takes one write.
type closedPipe struct{ writes int }

var errClosed = errors.New("closed")

func (c *closedPipe) Write(p []byte) (int, error) {
	if c.writes++; c.writes > 1 {
		return 0, errClosed
	}
	return len(p), nil
}

// Nobody reads on: the run ends, and leaves nothing behind.
func TestOutputLost(t *testing.T) {
	before := runtime.NumGoroutine()
	var out closedPipe
	if _, err := Run([]Input{text("in", manyColumns(5000))}, &out, usual); !errors.Is(err, errClosed) {
		t.Errorf("%v", err)
	}
	if out.writes != 2 {
		t.Errorf("%d writes", out.writes)
	}
	for end := time.Now().Add(10 * time.Second); runtime.NumGoroutine() > before; time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("%d goroutines, %d before", runtime.NumGoroutine(), before)
		}
	}
}

// An input that breaks off: the columns before it are good, the last one is not.
func TestInputLost(t *testing.T) {
	lost := errors.New("the cable")
	in := io.MultiReader(strings.NewReader("profile,depth_m,temp_c\na,0,20\nb,0,20\nb,1"), iotestErr{lost})
	var out bytes.Buffer
	sum, err := Run([]Input{{"in", func() (io.ReadCloser, error) { return io.NopCloser(in), nil }}}, &out, usual)
	if !errors.Is(err, lost) || sum.Columns != 2 || sum.Problem != "the input broke off in this column" || sum.First != "b" {
		t.Errorf("%+v, %v\n%s", sum, err, out.String())
	}
}

type iotestErr struct{ error }

func (e iotestErr) Read([]byte) (int, error) { return 0, e.error }

// endless gives so many bytes of one line.
type endless struct{ left int }

var xs = bytes.Repeat([]byte("x"), 64<<10)

func (e *endless) Read(p []byte) (int, error) {
	if e.left <= 0 {
		return 0, io.EOF
	}
	n := copy(p, xs)
	e.left -= n
	return n, nil
}

// A line or a column without end is not kept.
func TestMemoryCapped(t *testing.T) {
	var m0, m1 runtime.MemStats
	for name, in := range map[string]io.Reader{
		"line":   &endless{64 << 20},
		"column": io.LimitReader(&repeat{text: strings.Repeat("a,1,20\n", 8<<10)}, 64<<20),
	} {
		in := io.MultiReader(strings.NewReader("profile,depth_m,temp_c\na,0,20\n"), in)
		runtime.ReadMemStats(&m0)
		sum, err := Run([]Input{{"in", func() (io.ReadCloser, error) { return io.NopCloser(in), nil }}}, io.Discard, Options{Workers: 2})
		runtime.ReadMemStats(&m1)
		if err != nil || sum.Columns != 1 || sum.Problems != 1 {
			t.Errorf("%s: %+v, %v", name, sum, err)
		}
		if used := m1.TotalAlloc - m0.TotalAlloc; used > 16<<20 {
			t.Errorf("%s: %d MB allocated", name, used>>20)
		}
	}
}

// repeat gives a text over and over.
type repeat struct {
	text string
	at   int
}

func (r *repeat) Read(p []byte) (int, error) {
	n := copy(p, r.text[r.at:])
	r.at = (r.at + n) % len(r.text)
	return n, nil
}
