package notebook

import (
	"strings"
	"testing"
)

// TestWindBehindWords: the speed may stand behind words about the wind.
func TestWindBehindWords(t *testing.T) {
	sheets, err := Read([]byte("wind picking up, 12 mph gusts\n0 ft 74 F\n5 ft 73 F\n"), Options{Name: "p"})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := everything(sheets, nil), "wind 12 mph"; !strings.Contains(got, want) {
		t.Errorf("no %q in\n%s", want, got)
	}
}
