package vector

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Style has a colour for each class that pictures have, and no other.
func TestStyleHasAllClasses(t *testing.T) {
	drawn := map[string]bool{}
	for _, p := range plans(t) {
		for _, svg := range pictures(p.plan) {
			for _, m := range regexp.MustCompile(`class="(v-[^"]*)"`).FindAllStringSubmatch(svg, -1) {
				drawn[m[1]] = true
			}
		}
	}
	styled := map[string]bool{}
	for _, m := range regexp.MustCompile(`\.(v-[a-z0-9]+)[, ]`).FindAllStringSubmatch(Style, -1) {
		styled[m[1]] = true
		if !drawn[m[1]] {
			t.Errorf("%s is nowhere drawn", m[1])
		}
	}
	for class := range drawn {
		if !styled[class] {
			t.Errorf("%s has no colour", class)
		}
	}
	if strings.Contains(Style, "url(") || strings.Contains(Style, "@import") {
		t.Error("asks for something from elsewhere")
	}
}

// On a light page and on a dark one texts have 7:1 on all they stand on, and lines 3:1 (WCAG 2.2,
// 1.4.6 and 1.4.11).
func TestContrast(t *testing.T) {
	light, dark, ok := strings.Cut(Style, "@media")
	if !ok {
		t.Fatal("no colours for a dark page")
	}
	for name, css := range map[string]string{"light": light, "dark": dark} {
		colour := map[string]float64{}
		for _, m := range regexp.MustCompile(`--v-([a-z0-9]+): #([0-9a-f]{6})`).FindAllStringSubmatch(css, -1) {
			colour[m[1]] = luminance(t, m[2])
		}
		for _, on := range []string{"paper", "band", "bed", "doubt", "t0", "t1", "t2", "t3", "t4", "t5"} {
			if c := contrast(colour["ink"], colour[on]); c < 7 {
				t.Errorf("%s: ink on %s %.1f:1", name, on, c)
			}
			lines := []string{"quiet", "curve"}
			if on == "paper" || on == "band" {
				lines = append(lines, "signal", "edge", "rib")
			}
			for _, l := range lines {
				if c := contrast(colour[l], colour[on]); c < 3 {
					t.Errorf("%s: %s on %s %.1f:1", name, l, on, c)
				}
			}
		}
		if len(colour) != 17 {
			t.Errorf("%s: %d colours", name, len(colour))
		}
	}
}

// luminance is that of an sRGB colour (WCAG 2.2).
func luminance(t *testing.T, hex string) float64 {
	sum := 0.0
	for i, part := range []float64{0.2126, 0.7152, 0.0722} {
		v, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		c := float64(v) / 255
		if c <= 0.04045 {
			sum += part * c / 12.92
		} else {
			sum += part * math.Pow((c+0.055)/1.055, 2.4)
		}
	}
	return sum
}

func contrast(a, b float64) float64 { return (math.Max(a, b) + 0.05) / (math.Min(a, b) + 0.05) }
