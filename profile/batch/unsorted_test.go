package batch

import (
	"bytes"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestAlternating: rows of two profiles in turn are no two hundred profiles: each that
// comes back is a problem that says what to do.
func TestAlternating(t *testing.T) {
	var b strings.Builder
	b.WriteString("profile,depth_m,temp_c\n")
	for z := range 100 {
		fmt.Fprintf(&b, "north,%d,20\nsouth,%d,20\n", z, z)
	}
	sum, out := answer(t, b.String(), usual)
	if sum.Columns != 200 || sum.Problems != 198 || sum.First != "north" || sum.Problem != "in:4: "+comesBack {
		t.Errorf("%+v", sum)
	}
	if out[2] != `{"profile":"north","problem":"in:4: `+comesBack+`"}` {
		t.Errorf("%s", out[2])
	}
	unsorted := usual
	unsorted.Unsorted = true
	if sum, _ := answer(t, b.String(), unsorted); sum.Columns != 2 || sum.Problems != 0 {
		t.Errorf("unsorted: %+v", sum)
	}
}

// TestUnsorted: however the rows of profiles are mixed, --unsorted gives each profile's
// line as it is where its rows stand together, in the order of the first rows.
func TestUnsorted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		names := []string{"north", "south", `"bay, west"`, "x", ""}[:rapid.IntRange(1, 5).Draw(t, "profiles")]
		next := make([]int, len(names))
		together := make([]string, len(names))
		mixed, order := "profile,temp_c,depth_m\n", []int{}
		for range rapid.IntRange(0, 60).Draw(t, "rows") {
			i := rapid.IntRange(0, len(names)-1).Draw(t, "which")
			if next[i] == 0 {
				order = append(order, i)
			}
			row := fmt.Sprintf("%s,%.1f,%d\n", names[i], 14-8*math.Tanh(float64(next[i]-5-i)), next[i])
			if rapid.IntRange(0, 30).Draw(t, "fault") == 0 {
				row = fmt.Sprintf("%s,warm,%d\n", names[i], next[i])
			}
			next[i]++
			together[i] += row
			mixed += row
		}
		sorted := "profile,temp_c,depth_m\n"
		for _, i := range order {
			sorted += together[i]
		}
		o := Options{ErrC: 0.25, Intervals: true, Workers: rapid.IntRange(1, 4).Draw(t, "workers")}
		result := func(csv string) (Summary, string) {
			var out bytes.Buffer
			sum, err := run([]Input{text("in", []byte(csv))}, &out, o, rapid.IntRange(1, 3).Draw(t, "full"))
			if err != nil {
				t.Fatal(err)
			}
			return sum, out.String()
		}
		_, want := result(sorted)
		o.Unsorted = true
		sum, got := result(mixed)
		if withoutLines(got) != withoutLines(want) || sum.Columns != len(order) {
			t.Fatalf("%s\ngives\n%s\nwant\n%s", mixed, got, want)
		}
	})
}

// withoutLines leaves the number of the line out of a problem.
func withoutLines(out string) string {
	var all []string
	for l := range strings.Lines(out) {
		if at := strings.Index(l, "in:"); at >= 0 {
			l = l[:at] + strings.TrimLeft(l[at+3:], "0123456789")
		}
		all = append(all, l)
	}
	return strings.Join(all, "")
}

// TestUnsortedHidden: a row that hides its profile refuses an unsorted input, for it may
// be anyone's.
func TestUnsortedHidden(t *testing.T) {
	for _, csv := range []string{"profile,depth_m,temp_c\na,0,20\n\"b,1,20\n", "temp_c,depth_m,profile\n20,0,a\n20,5,1,b\n"} {
		var out bytes.Buffer
		_, err := Run([]Input{text("in", []byte(csv))}, &out, Options{Unsorted: true})
		if !errors.As(err, new(*InputError)) || !strings.HasPrefix(err.Error(), "in: line 3: ") || out.Len() > 0 {
			t.Errorf("%v, %s", err, out.String())
		}
	}
	lost := errors.New("the cable")
	in := io.MultiReader(strings.NewReader("profile,depth_m,temp_c\na,0,20\n"), iotestErr{lost})
	if _, err := Run([]Input{{"in", func() (io.ReadCloser, error) { return io.NopCloser(in), nil }}}, io.Discard, Options{Unsorted: true}); !errors.Is(err, lost) {
		t.Errorf("%v", err)
	}
}

// TestSeen: a name is known again among the next 65,536, and what is held does not grow.
func TestSeen(t *testing.T) {
	var s seen
	s.reset()
	if s.again("north") || !s.again("north") {
		t.Error("the same at once")
	}
	for i := range remembered - 1 {
		if s.again(fmt.Sprint(i)) {
			t.Fatalf("%d is new", i)
		}
	}
	if !s.again("north") || !s.again("0") {
		t.Error("forgotten too early")
	}
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	for i := range 10 * remembered {
		s.again(fmt.Sprint("lake ", i))
	}
	runtime.GC()
	runtime.ReadMemStats(&after)
	if grown := int64(after.HeapAlloc) - int64(before.HeapAlloc); grown > 4<<20 {
		t.Errorf("%d kB more after ten times as many names", grown>>10)
	}
	if n := len(s.young) + len(s.old); n > 2*remembered {
		t.Errorf("%d names held", n)
	}
	s.reset()
	if s.again("lake 655359") {
		t.Error("another input has profiles of its own")
	}
}

// The hash is FNV-1a as the standard library has it.
func TestHash(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.String().Draw(t, "name")
		h := fnv.New64a()
		io.WriteString(h, name)
		if hash(name) != h.Sum64() {
			t.Fatalf("%q", name)
		}
	})
}

// Rows that are mixed within many small inputs belong to each of them.
func TestUnsortedInputs(t *testing.T) {
	csv := "profile,depth_m,temp_c\na,0,20\nb,0,20\na,1,20\n"
	var out bytes.Buffer
	sum, err := Run(slices.Repeat([]Input{text("in", []byte(csv))}, 3), &out, Options{ErrC: 0.25, Unsorted: true})
	if err != nil || sum.Columns != 6 || sum.Problems != 0 {
		t.Errorf("%+v, %v, %s", sum, err, out.String())
	}
}
