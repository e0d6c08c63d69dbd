package batch

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"
)

// A number reads as encoding/json writes it once it is rounded.
func TestMilli(t *testing.T) {
	check := func(t rapid.TB, v float64) {
		want, err := json.Marshal(math.Round(v*1e3)/1e3 + 0)
		if got := string(appendMilli(nil, v)); err != nil || got != string(want) {
			t.Errorf("%v: %s, want %s", v, got, want)
		}
	}
	for _, v := range []float64{0, math.Copysign(0, -1), 0.0004, -0.0004, 0.0005, -0.5, 1, 1.2, 1.02, 1.002, 9.9996, -12.34, 2000, 999999.999, 1e12 + 0.5, 1e17} {
		check(t, v)
	}
	rapid.Check(t, func(t *rapid.T) { check(t, rapid.Float64Range(-1e5, 1e5).Draw(t, "v")) })
}

// A name comes back as it was, but for what is no UTF-8, and nothing in it controls a
// terminal.
func TestText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(rapid.String(), rapid.Map(rapid.SliceOf(rapid.Byte()), func(b []byte) string { return string(b) })).Draw(t, "s")
		data := appendText(nil, s)
		var back string
		if err := json.Unmarshal(data, &back); err != nil {
			t.Fatalf("%q: %v", data, err)
		}
		if want := string([]rune(s)); back != want {
			t.Errorf("%q came back as %q", s, back)
		}
		if i := strings.IndexFunc(string(data), func(r rune) bool { return !unicode.IsGraphic(r) }); i >= 0 {
			t.Errorf("%q holds what does not print", data)
		}
	})
}
