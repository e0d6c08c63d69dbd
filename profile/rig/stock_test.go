package rig

import "testing"

// The rule of eleven, thousandths of an inch are eleven less X (common practice);
// 25.4 mm to the inch is exact.
func TestTippetMM(t *testing.T) {
	for _, c := range []struct{ x, mm float64 }{
		{0, 0.2794}, {1, 0.2540}, {2, 0.2286}, {3, 0.2032}, {4, 0.1778}, {5, 0.1524}, {6, 0.1270}, {7, 0.1016}, {8, 0.0762},
	} {
		near(t, "diameter in mm", TippetMM(c.x), c.mm, 1e-12)
	}
}

// The box that is assumed holds what a leader is cut from, and each caller has a
// box of its own.
func TestDefaultStock(t *testing.T) {
	for _, kind := range []PieceKind{Butt, Tapered, Tippet} {
		if !has(DefaultStock(), kind) {
			t.Errorf("no %s in the box", kind)
		}
	}
	DefaultStock()[0].Name = "changed"
	if DefaultStock()[0].Name == "changed" {
		t.Error("callers share one box")
	}
}
