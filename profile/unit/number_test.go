package unit

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestScanNumber(t *testing.T) {
	for _, c := range []struct {
		text        string
		comma       bool
		value, step float64
		rest        string
	}{
		{"71", false, 71, 1, ""}, {"71.2 F", false, 71.2, 0.1, " F"}, {".5", false, 0.5, 0.1, ""}, {"5.", false, 5, 1, "."}, {"007", false, 7, 1, ""},
		{"4,5m", true, 4.5, 0.1, "m"}, {"4,5m", false, 4, 1, ",5m"}, {"4, 5", true, 4, 1, ", 5"}, {"1.234,5", true, 1.234, 0.001, ",5"},
		{"12 1/2 ft", false, 12.5, 0.5, " ft"}, {"3/4", false, 0.75, 0.25, ""}, {"5/73", false, 5, 1, "/73"}, {"12 5/4", false, 12, 1, " 5/4"},
		{"123456789012", false, 123456789012, 1, ""}, {"123456789.1234", false, 123456789, 1, ".1234"}, {"1e3", false, 1, 1, "e3"}, {"0x10", false, 0, 1, "x10"}, {"1_000", false, 1, 1, "_000"},
	} {
		n, rest, ok := ScanNumber(c.text, c.comma)
		if !ok || n.Value != c.value || math.Abs(n.Step-c.step) > 1e-15 || rest != c.rest {
			t.Errorf("%q: %+v, %q, %v; want %v by %v, %q", c.text, n, rest, ok, c.value, c.step, c.rest)
		}
	}
	for _, text := range []string{"", "-5", "+5", ".", ",5", "x", "NaN", "Inf", "1234567890123", " 5"} {
		if n, rest, ok := ScanNumber(text, false); ok || rest != text {
			t.Errorf("%q: %+v, %q", text, n, rest)
		}
	}
}

func TestScanDecimal(t *testing.T) {
	for _, c := range []struct {
		text  string
		mark  byte
		value float64
		n     int
	}{
		{"18.25,4", '.', 18.25, 5}, {"18,25;4", ',', 18.25, 5}, {"18,25", '.', 18, 2}, {"18.25", ',', 18, 2}, {"-0.5", '.', -0.5, 4}, {"+7C", '.', 7, 2},
		{"5.", '.', 5, 2}, {".5.5", '.', 0.5, 2}, {"1e3", '.', 1, 1}, {"0000000000000000001", '.', 1, 19}, {"999999999999999", '.', 999999999999999, 15},
		{"0.1234567890123456789", '.', 0.1234567890123456789, 21},
		{"", '.', 0, 0}, {"-", '.', 0, 0}, {"+.", '.', 0, 0}, {"NaN", '.', 0, 0}, {"- 5", '.', 0, 0}, {"1000000000000000", '.', 0, 0},
	} {
		if v, n := ScanDecimal([]byte(c.text), c.mark); v != c.value || n != c.n {
			t.Errorf("%q with %c: %v in %d bytes, want %v in %d", c.text, c.mark, v, n, c.value, c.n)
		}
	}
	line := []byte("-18.25")
	if n := testing.AllocsPerRun(10, func() { ScanDecimal(line, '.') }); n > 0 {
		t.Errorf("%v allocations", n)
	}
}

func TestParseDecimal(t *testing.T) {
	for text, want := range map[string]float64{"18.25": 18.25, "-9999": -9999, "+1e-3": 0.001, ".5": 0.5, "5.": 5, "12.345678901234567": 12.345678901234567} {
		if v, ok := ParseDecimal([]byte(text)); !ok || v != want {
			t.Errorf("%q: %v, %v", text, v, ok)
		}
	}
	for _, text := range []string{"", "NaN", "Inf", "0x1p4", "1_000", "12,5", "1e999", " 5", "5 "} {
		if v, ok := ParseDecimal([]byte(text)); ok {
			t.Errorf("%q: %v", text, v)
		}
	}
}

// What one scanner reads, the others read alike.
func TestScannersAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{1,6}(\.[0-9]{1,6})?`).Draw(t, "number")
		n, rest, ok := ScanNumber(text, false)
		v, length := ScanDecimal([]byte(text), '.')
		w, whole := ParseDecimal([]byte(text))
		if !ok || rest != "" || length != len(text) || !whole || n.Value != v || v != w {
			t.Fatalf("%q: %v, %v, %v", text, n, v, w)
		}
		comma := strings.Replace(text, ".", ",", 1)
		if c, rest, _ := ScanNumber(comma, true); c != n || rest != "" {
			t.Fatalf("%q: %v, %q", comma, c, rest)
		}
		if c, length := ScanDecimal([]byte(comma), ','); c != v || length != len(text) {
			t.Fatalf("%q: %v", comma, c)
		}
	})
}
