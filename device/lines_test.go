package device

import (
	"bytes"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// split feeds the chunks and gives the lines.
func split(s *splitter, chunks ...string) []string {
	var lines []string
	for _, c := range chunks {
		for line := range s.lines([]byte(c)) {
			lines = append(lines, string(line))
		}
	}
	return lines
}

func TestSplitEverywhere(t *testing.T) {
	for _, end := range []string{"\n", "\r", "\r\n", "\n\r", "\r\r\n", "\n\n"} {
		text := strings.Join([]string{".9", "18.4", "17.95 C", "x"}, end) + end
		for i := range text {
			for j := i; j < len(text); j++ {
				var s splitter
				got := split(&s, text[:i], text[i:j], text[j:])
				if !slices.Equal(got, []string{"18.4", "17.95 C", "x"}) || s.torn.Load() != 1 || s.tooLong.Load() != 0 {
					t.Fatalf("%q cut at %d and %d: %q, torn %d", text, i, j, got, s.torn.Load())
				}
			}
		}
	}
}

func TestSplitTable(t *testing.T) {
	full := strings.Repeat("y", MaxLine)
	for _, c := range []struct {
		name          string
		chunks        []string
		want          []string
		torn, tooLong int64
	}{
		{"nothing", nil, nil, 0, 0},
		{"opened between lines", []string{"\n", "18.4\n"}, []string{"18.4"}, 0, 0},
		{"mixed ends", []string{"\n1\r2\n3\r\n4\n\r5\r"}, []string{"1", "2", "3", "4", "5"}, 0, 0},
		{"end without line end", []string{"\n18.4"}, nil, 0, 0},
		{"longest", []string{"\n" + full + "\r\n"}, []string{full}, 0, 0},
		{"longest in two", []string{"\n" + full[:500], full[500:], "\n"}, []string{full}, 0, 0},
		{"one too many", []string{"\n" + full + "y\n18.4\n"}, []string{"18.4"}, 0, 1},
		{"one too many, later", []string{"\n" + full, "y", "y", "\n18.4\n"}, []string{"18.4"}, 0, 1},
		{"too long, not ended", []string{"\n" + full, "y"}, nil, 0, 1},
		{"first too long", []string{full, full, "\n18.4\n"}, []string{"18.4"}, 0, 1},
		{"any byte", []string{"\n\x00\xff\x1b[2J\n"}, []string{"\x00\xff\x1b[2J"}, 0, 0},
	} {
		var s splitter
		got := split(&s, c.chunks...)
		if !slices.Equal(got, c.want) || s.torn.Load() != c.torn || s.tooLong.Load() != c.tooLong {
			t.Errorf("%s: %.60q, torn %d, too long %d; want %.60q, %d, %d",
				c.name, got, s.torn.Load(), s.tooLong.Load(), c.want, c.torn, c.tooLong)
		}
	}
}

func TestCut(t *testing.T) {
	var s splitter
	s.cut() // nothing there, nothing torn
	got := split(&s, "\n18.4\n17.")
	s.cut()
	got = append(got, split(&s, "9\n16.0\n")...)
	s.cut()
	got = append(got, split(&s, strings.Repeat("y", 2*MaxLine))...)
	s.cut() // counted as too long already
	got = append(got, split(&s, "\n15.0\n")...)
	if !slices.Equal(got, []string{"18.4", "16.0", "15.0"}) || s.torn.Load() != 2 || s.tooLong.Load() != 1 {
		t.Errorf("%q, torn %d, too long %d", got, s.torn.Load(), s.tooLong.Load())
	}
}

// TestSplitIsChunkFree compares any bytes, cut anywhere, with the plain way over the
// whole text at once.
func TestSplitIsChunkFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		piece := rapid.SampledFrom([]string{"\r", "\n", "\r\n", "1", "18.4", "\x00", strings.Repeat("z", 1000), strings.Repeat("z", 24)})
		text := strings.Join(rapid.SliceOfN(piece, 0, 40).Draw(t, "text"), "")

		var want []string
		var torn, tooLong int64
		runs := strings.Split(strings.ReplaceAll(text, "\r", "\n"), "\n")
		for i, run := range runs {
			switch {
			case len(run) > MaxLine:
				tooLong++
			case run == "" || i == len(runs)-1: // not ended
			case i == 0:
				torn++
			default:
				want = append(want, run)
			}
		}

		var s splitter
		var got []string
		for rest := text; rest != ""; {
			n := rapid.IntRange(1, len(rest)).Draw(t, "cut")
			got = append(got, split(&s, rest[:n])...)
			rest = rest[n:]
		}
		if !slices.Equal(got, want) || s.torn.Load() != torn || s.tooLong.Load() != tooLong {
			t.Fatalf("%.80q: %.80q, torn %d, too long %d; want %.80q, %d, %d",
				text, got, s.torn.Load(), s.tooLong.Load(), want, torn, tooLong)
		}
	})
}

// TestSplitMemory: neither noise without an end nor lines cost memory.
func TestSplitMemory(t *testing.T) {
	noise := bytes.Repeat([]byte{0xAA}, 1<<20)
	lines := bytes.Repeat([]byte("18.4 C\r\n"), 512)
	var s splitter
	n := 0
	if allocs := testing.AllocsPerRun(16, func() {
		for range s.lines(noise) {
			n++
		}
		for range s.lines(lines) {
			n++
		}
	}); allocs != 0 {
		t.Errorf("%v allocations for 1 MB of noise and 512 lines", allocs)
	}
	if want := 17*512 - 17; n != want { // the first of the lines ends the noise
		t.Errorf("%d lines, want %d", n, want)
	}
	if got := s.tooLong.Load(); got != 17 {
		t.Errorf("%d too long, want 17", got)
	}
}

func BenchmarkSplit(b *testing.B) {
	for _, c := range []struct {
		name string
		text []byte
	}{
		{"lines", bytes.Repeat([]byte("$PROBE,12.50,18.437*5A\r\n"), 170)}, // about a full read
		{"noise", noise(4096)},
	} {
		b.Run(c.name, func(b *testing.B) {
			var s splitter
			b.SetBytes(int64(len(c.text)))
			b.ReportAllocs()
			lines := 0
			for b.Loop() {
				for line := range s.lines(c.text) {
					kept = bytes.Clone(line) // as an Event has it
					lines++
				}
			}
			b.ReportMetric(float64(lines)/float64(b.N), "lines/op")
		})
	}
}

var kept []byte

// noise is what a wrong speed makes of a probe's text: any bytes, the same each time.
func noise(n int) []byte {
	r := rand.New(rand.NewPCG(1, 2))
	b := make([]byte, n)
	for i := range b {
		b[i] = byte(r.Uint32())
	}
	return b
}
