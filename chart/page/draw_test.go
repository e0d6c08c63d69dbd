package page

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coldseam/chart"
)

// Names keep their order, cover nobody, stay in the room, and move no further than
// they must: a name that touches neither a neighbour nor an edge has not moved, and a
// run of names that touch has moved by nothing on the whole.
func TestSpread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := rapid.Float64Range(50, 500).Draw(t, "room")
		n := rapid.IntRange(0, 9).Draw(t, "n")
		want, high := make([]float64, n), make([]float64, n)
		at, total := 0.0, 0.0
		for i := range want {
			at += rapid.Float64Range(0, 60).Draw(t, "step")
			want[i], high[i] = math.Min(at, room), rapid.Float64Range(5, 45).Draw(t, "height")
			total += high[i]
		}
		got := spread(want, high, room)
		if len(got) != n {
			t.Fatalf("%d of %d", len(got), n)
		}
		press := math.Max(1, total/room)
		start := 0
		for i := range want {
			h := high[i] / press
			if got[i]-h/2 < -1e-6 || got[i]+h/2 > room+1e-6 {
				t.Fatalf("%v of height %v leaves the room %v", got[i], h, room)
			}
			apart := true
			if i+1 < n {
				gap := got[i+1] - got[i] - h/2 - high[i+1]/press/2
				if gap < -1e-6 {
					t.Fatalf("%v and %v cover each other", got[i], got[i+1])
				}
				apart = gap > 1e-6
			}
			if !apart {
				continue
			}
			moved := 0.0
			for k := start; k <= i; k++ {
				moved += got[k] - want[k]
			}
			free := got[start]-high[start]/press/2 > 1e-6 && got[i]+h/2 < room-1e-6
			if free && math.Abs(moved) > 1e-6 {
				t.Fatalf("%v: names %d to %d moved by %v", got, start, i, moved)
			}
			start = i + 1
		}
	})
}

func TestNamed(t *testing.T) {
	for _, c := range []struct {
		name, value, want string
		lines             int
	}{
		{"fly", "16 ft", "{b|fly} {v|16 ft}", 1},
		{"thermocline", "14 to 16 ft", "{b|thermocline}\n{v|14 to 16 ft}", 2},
		{"oxygen unknown", "below 20 ft", "{b|oxygen}\n{b|unknown}\n{v|below 20 ft}", 3},
		{"cast over", "5 m", "{b|cast over} {v|5 m}", 1},
	} {
		l := named(c.name, c.value)
		if got := l.text(); got != c.want || l.lines() != c.lines {
			t.Errorf("%q in %d lines, want %q", got, l.lines(), c.want)
		}
	}
}

// An axis begins and ends on a step of 1, 2 or 5, holds the values, and wastes little.
func TestAround(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-50, 100).Draw(t, "low")
		high := low + rapid.Float64Range(0.01, 100).Draw(t, "width")
		s := around(low, high, 4)
		slack := 1e-6 * s.step
		if s.min > low+slack || s.max < high-slack || s.min < low-s.step-slack || s.max > high+s.step+slack {
			t.Fatalf("%v to %v: %+v", low, high, s)
		}
		steps := (s.max - s.min) / s.step
		if math.Abs(steps-math.Round(steps)) > 1e-6 || steps > 6 {
			t.Fatalf("%v to %v: %v steps", low, high, steps)
		}
		digit := s.step / math.Pow(10, math.Floor(math.Log10(s.step*(1+1e-9))))
		if k := math.Round(digit); k != 1 && k != 2 && k != 5 || math.Abs(digit-k) > 1e-6 {
			t.Fatalf("a step of %v", s.step)
		}
	})
	if s := around(3, 3, 4); !(s.max > s.min) {
		t.Errorf("%+v", s)
	}
}

// The runs of a curve are measured or assumed throughout, bar the point where they
// meet, which is measured, and leave nothing out.
func TestRuns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 12).Draw(t, "n")
		top := rapid.IntRange(0, n).Draw(t, "top")
		bottom := rapid.IntRange(top, n).Draw(t, "bottom")
		curve := make([]chart.Point, n)
		for i := range curve {
			curve[i] = chart.Point{DepthM: float64(i), Extended: i < top || i >= bottom}
		}
		next := 0.0
		for _, run := range runs(curve) {
			if len(run) < 2 || run[0].DepthM != next {
				t.Fatalf("a run from %v of %d points, want from %v", run[0].DepthM, len(run), next)
			}
			next = run[len(run)-1].DepthM
		}
		if n > 1 && next != float64(n-1) {
			t.Fatalf("runs end at %v of %d", next, n-1)
		}
	})
}

// Drops laid over each other differ in dash or symbol, not in colour alone.
func TestOverlayLooks(t *testing.T) {
	seen := map[[2]string]int{}
	for i := range 15 {
		s := overlay(i, 16)
		k := [2]string{s.Dash, string(s.Symbol)}
		if j, ok := seen[k]; ok {
			t.Errorf("drops %d and %d differ in colour alone", i, j)
		}
		seen[k] = i
	}
}

// contrast of a colour with white, by WCAG 2.1.
func contrast(t *testing.T, hex string) float64 {
	t.Helper()
	v, err := strconv.ParseUint(hex[1:], 16, 32)
	if err != nil || len(hex) != 7 {
		t.Fatalf("%q is no colour", hex)
	}
	light := 0.0
	for k, weight := range []float64{0.0722, 0.7152, 0.2126} {
		c := float64(v>>(8*k)&0xff) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		light += weight * c
	}
	return 1.05 / (light + 0.05)
}

// Text stands out from its ground by 4.5 to 1, by day and by night, lines and points from
// white by 3 to 1 (WCAG 2.1, 1.4.3 and 1.4.11).
func TestContrast(t *testing.T) {
	if c := contrast(t, "#767676"); math.Abs(c-4.54) > 0.01 { // WCAG's own example of a grey that just passes
		t.Fatalf("contrast is computed as %v", c)
	}
	schemes := regexp.MustCompile(`--ink: (#\w+); --paper: (#\w+); --quiet: (#\w+);`).FindAllStringSubmatch(styleText, -1)
	if len(schemes) != 2 {
		t.Fatal("no two schemes of colours, for day and night")
	}
	for _, s := range schemes {
		for _, text := range []string{s[1], s[3]} {
			if a, b := contrast(t, text), contrast(t, s[2]); max(a, b)/min(a, b) < 4.5 {
				t.Errorf("text in %s on %s has a contrast of %.2f", text, s[2], max(a, b)/min(a, b))
			}
		}
	}
	texts := regexp.MustCompile(`[{; ]color: (#[0-9a-f]{6}); background: (#[0-9a-f]{6})`).FindAllStringSubmatch(styleText, -1)
	if len(texts) < 2 { // buttons, and the words under the finger
		t.Fatal("no colours of text found")
	}
	for _, m := range texts {
		if a, b := contrast(t, m[1]), contrast(t, m[2]); max(a, b)/min(a, b) < 4.5 {
			t.Errorf("text in %s on %s", m[1], m[2])
		}
	}
	lines := append([]string{ink, warmth, oxygen, density, quiet, bandInk, ribbonInk}, overlayColors...)
	for _, hex := range lines {
		if c := contrast(t, hex); c < 3 {
			t.Errorf("a line in %s has a contrast of %.2f", hex, c)
		}
	}
}

// No area lets another shine through, so that no two make a third colour: every fill is
// opaque or a hatching.
func TestOpaque(t *testing.T) {
	d := lake(t, "alder-kettle-july")
	for _, hatching := range []string{rising, falling, unknown} { // the script has a paint for each
		if !strings.Contains(scriptText, "    "+hatching+": { up:") {
			t.Errorf("no paint for %s", hatching)
		}
	}
	fills := 0
	for _, s := range optionsOf(t, written(t, Options{Script: stub}, d)).Series {
		for _, a := range s.MarkArea.Data {
			fills++
			if c := a[0].ItemStyle.Color; c != rising && c != falling && c != unknown && !regexp.MustCompile(`^#[0-9a-f]{6}$`).MatchString(c) {
				t.Errorf("%s is filled with %q", a[0].Name, c)
			}
		}
		if s.AreaStyle != nil && s.AreaStyle.Opacity != 1 {
			t.Errorf("%s lets what is under it shine through: %v", s.ID, s.AreaStyle.Opacity)
		}
	}
	if fills < 6 {
		t.Errorf("%d areas", fills)
	}
}
