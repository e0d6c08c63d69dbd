package static

import (
	"bytes"
	"strings"
	"testing"

	"coldseam/chart"
	"coldseam/profile/demo"
)

// A scene alone is drawn for a desk and a phone, carries every name with its value, says the
// answer in its title, and is the same each time. A drop without an answer has none.
func TestScene(t *testing.T) {
	d := chart.Of(demo.Plan(t, demo.Page(t, "alder-kettle-july")))
	for _, size := range []Size{DeskScene, PhoneScene} {
		var a, b bytes.Buffer
		if err := Scene(&a, SVG, size, d); err != nil {
			t.Fatal(err)
		}
		if err := Scene(&b, SVG, size, d); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("drawn twice it differs, %v", err)
		}
		for _, n := range d.SceneNames() {
			if !strings.Contains(a.String(), ">"+n.Value+"<") || !strings.Contains(a.String(), ">"+n.What+"<") {
				t.Errorf("no %s %s", n.What, n.Value)
			}
		}
		if !strings.Contains(a.String(), "<title>To scale: Fish 15 to 29 ft; fly 16 ft down") {
			t.Errorf("no title that says the answer")
		}
	}
	var b bytes.Buffer
	if err := Scene(&b, SVG, PhoneScene, chart.Of(demo.Plan(t, demo.Page(t, "duck-puddle-august")))); err == nil || b.Len() > 0 {
		t.Errorf("a scene without an answer: %v", err)
	}
	if err := Scene(&b, SVG, Size{WidthPt: 300, HeightPt: 100, TextPt: 11, DPI: 96}, d); err == nil {
		t.Error("a scene too low for its names")
	}
}
