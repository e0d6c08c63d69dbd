package weight

import (
	"math"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"
)

func TestParse(t *testing.T) {
	// Nine tenths of a sphere by hand, and 0.05 g of hook and dressing for size 12.
	tungsten33, brass24 := 0.29636+0.05, 0.055373+0.05
	for _, c := range []struct {
		text       string
		g, density float64
		words      string
	}{
		{"0.25 g", 0.25, 4000, "0.25 g"},
		{" 0,25  g ", 0.25, 4000, "0,25 g"},
		{"4 grains", 0.259196, 4000, "4 grains"}, // 7000 are 453.59237 g
		{"1/32 oz", 0.885923, 4000, "1/32 oz"},
		{"250 mg", 0.25, 4000, "250 mg"},
		{"50 g", 50, 4000, "50 g"},

		{"3.3 mm tungsten", tungsten33, 11407, "3.3 mm tungsten bead, hook 12 assumed"},
		{"3.3mm tungsten bead", tungsten33, 11407, ""},
		{"3,3 mm Tungsten #12", tungsten33, 11407, "3.3 mm tungsten bead, hook 12"},
		{"tungsten bead-head, 3.3-mm, on a size 12 hook", tungsten33, 11407, ""},
		{"tungsten bead size 3.3 mm hook size 12", tungsten33, 11407, ""},
		{"hook 12 3.3 mm tungsten", tungsten33, 11407, ""},
		{"hook no. 12, 3.3 mm tungsten", tungsten33, 11407, ""},
		{"2.4mm brass #12", brass24, 5284, ""}, // 6.514 mm3 of bead, 13.429 of hook and dressing
		{"brass bead 2.4 mm hook 12", brass24, 5284, ""},
		{"tungsten bead 1/8 in", 0.26394 + 0.05, 11011, "3.18 mm tungsten bead, hook 12 assumed"}, // 3.175 mm, 15.082 mm3
		{`tungsten bead 1/8"`, 0.26394 + 0.05, 11011, ""},
		{"1/8-inch tungsten", 0.26394 + 0.05, 11011, ""},
		{"1/8 in. tungsten", 0.26394 + 0.05, 11011, ""},
		{"#12 1/8 in tungsten", 0.26394 + 0.05, 11011, ""},
		{"#8 3.3 mm tungsten", 0.29636 + 0.1, 9051, ""},

		{"shot BB", 0.4, 7290, "BB shot"},
		{"BB shot", 0.4, 7290, ""},
		{"bb", 0.4, 7290, ""},
		{"split shot, AAA", 0.8, 7290, ""},
		{"BB lead shot", 0.4, 11340, "BB lead shot"},
		{"no. 4 shot", 0.17, 7290, "No. 4 shot"},
		{"No.4 shot", 0.17, 7290, ""},
		{"shot no 4", 0.17, 7290, ""},
		{"shot 4", 0.17, 7290, ""},
		{"#4 shot", 0.17, 7290, ""},
	} {
		w, err := Parse(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if math.Abs(w.Kg*1000-c.g) > 1e-5*math.Max(1, c.g) || math.Abs(w.Density-c.density) > 1 {
			t.Errorf("%q: %.5f g of %.0f kg/m3, want %.5f of %.0f", c.text, w.Kg*1000, w.Density, c.g, c.density)
		}
		if c.words != "" && w.Text != c.words {
			t.Errorf("%q reads as %q, want %q", c.text, w.Text, c.words)
		}
	}
}

func TestParseErrors(t *testing.T) {
	for _, c := range []struct{ text, has string }{
		{"", "no weight"}, {" \t", "no weight"}, {"0.25", `"0.25" has no unit`}, {"0.25 lb", "has no unit"}, {"heavy", `"heavy"`},
		{"3.3 mm tungstn", `"tungstn"`}, {"3.3 mm gold bead", `"gold"`}, {"3.3 mm bead", "metal is missing"}, {"tungsten bead", "diameter is missing"},
		{"tungsten", "diameter is missing"}, {"#12", "diameter is missing"}, {"3.3 in tungsten", "1 to 10 mm"}, {"0 mm tungsten", "1 to 10 mm"},
		{"-3.3 mm tungsten", `"-"`}, {"2-3 mm tungsten", "no unit"}, {"2.4 mm 3.3 mm brass", "two diameters"}, {"3.3 mm tungsten brass", "two metals"},
		{"3.3 ft tungsten", "no unit"}, {"3.3 mm tungsten 12", "no unit"}, {"3.3 mm tungsten #0", "hook 0"}, {"3.3 mm tungsten #99", "hook 99"},
		{"3.3 mm tungsten #12 #14", "too many"}, {"3.3 mm tungsten #12-14", `"-"`}, {"no tungsten 3.3 mm", `"no"`}, {"0.3 g tungsten", "no unit"},
		{"shot", "size is missing"}, {"shot 2", `no shot "2"`}, {"BB AAA shot", "two shots"}, {"BB shot #4", "two shots"}, {"BB shot 3.3 mm", "at once"},
		{"2 BB shot", "no unit"}, {"1 shot", "no unit"}, {"BB shot on hook 12", "at once"}, {"on a", "not understood"},
		{"0 g", "not a likely weight"}, {"-1 g", "not a likely weight"}, {"51 g", "not a likely weight"}, {"1 kg", "not a likely weight"},
		{"\xff\xfe", ""}, {"3.3 mm\x00 tungsten", ""}, {"\uFFFD", ""}, {"12345678901234567890 mm brass", ""}, {"#99999999999999999999 3 mm brass", "hook 999"},
		{strings.Repeat("tungsten ", 20), "characters"},
	} {
		w, err := Parse(c.text)
		if err == nil || w != (Weight{}) {
			t.Errorf("%q: %+v, %v", c.text, w, err)
			continue
		}
		msg := err.Error()
		if !strings.Contains(msg, c.has) || strings.ContainsFunc(msg, unicode.IsControl) || len(msg) > 300 {
			t.Errorf("%q: %q, want %q in one line", c.text, msg, c.has)
		}
		if !strings.Contains(msg, "e.g.") && !strings.Contains(msg, "not a likely weight") && !strings.Contains(msg, "two shots") {
			t.Errorf("%q: %q shows no example", c.text, msg)
		}
	}
}

// sound checks what holds of any text.
func sound(text string) string {
	w, err := Parse(text)
	switch {
	case err != nil && (strings.Contains(err.Error(), "\n") || w != (Weight{})):
		return err.Error()
	case err == nil && !(w.Kg > 0 && w.Kg <= MostKg && w.Density > 1000 && w.Density <= 17500 && w.Text != ""):
		return w.Text
	case err == nil && strings.ContainsFunc(w.Text, unicode.IsControl):
		return w.Text
	}
	return ""
}

func TestParseNeverPanics(t *testing.T) {
	pieces := []string{"3.3", "1/8", "0", "12", ".", ",", "-", " ", "mm", "in", `"`, "g", "gr", "tungsten", "brass", "bead", "hook", "#", "no", "size", "shot", "BB", "aaa", "\n", "\xff", "é"}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.OneOf(rapid.SampledFrom(pieces), rapid.StringN(0, 3, -1)), 0, 10).Draw(t, "pieces"), "")
		if bad := sound(text); bad != "" {
			t.Fatalf("%q: %q", text, bad)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"0.25 g", "3.3 mm tungsten #12", "no. 4 shot", `1/8" brass`, "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if bad := sound(text); bad != "" {
			t.Fatalf("%q: %q", text, bad)
		}
	})
}
