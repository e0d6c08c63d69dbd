package notebook

import (
	"strings"
	"testing"
)

// TestBottomDecidesNoScale: the number of a bottom may be its depth, and does not make
// Celsius of a page whose readings are written in Fahrenheit.
func TestBottomDecidesNoScale(t *testing.T) {
	sheets, err := Read([]byte("depth_ft temp_F DO\n0 74 8.2\n10 72 8\n20 58 5\nbottom 24\n"), Options{Name: "p"})
	got := everything(sheets, err)
	if strings.Contains(got, "Celsius") || !strings.Contains(got, "0 ft: 74 F") || !strings.Contains(got, "bottom: 24 ft") {
		t.Errorf("a page in Fahrenheit was read as\n%s", got)
	}
}
