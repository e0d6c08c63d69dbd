package layers

import (
	"testing"

	"coldseam/profile/expect"
)

// pchipColumns are the columns of testdata/pchip.py.
var pchipColumns = map[string][2][]float64{
	"A":   {depthsA, tempsA},
	"B":   {depthsB, tempsB},
	"few": {{0, 1.5, 3.1, 4.6, 7.6}, {23.4, 22.8, 20.1, 12.2, 8.8}},
}

// The curve against the committed answers of scipy, to the nine digits written.
func TestPchipFile(t *testing.T) {
	for _, row := range expect.Rows(t, "pchip.csv") {
		c, known := pchipColumns[row[0]]
		if !known {
			t.Fatalf("no column is called %q", row[0])
		}
		k := cubicOnly(metres(t, c[0], c[1]))
		at, want := expect.Number(t, row[2]), expect.Number(t, row[3])
		what := row[0] + " " + row[1] + " at " + row[2]
		switch row[1] {
		case "value":
			near(t, what, k.At(at), want, 1e-9)
		case "slope":
			near(t, what, k.cubic.PredictDerivative(at), want, 1e-9)
		case "depth":
			z, ok := k.Crossing(at, k.Top(), k.Bottom())
			if !ok {
				t.Errorf("%s: not reached", what)
			}
			near(t, what, z, want, 1e-9)
		default:
			t.Fatalf("no question is called %q", row[1])
		}
	}
}

// The committed answers against scipy itself, where it is installed.
func TestPchipRegenerated(t *testing.T) {
	t.Parallel()
	expect.Remade(t, "pchip.py", "pchip.csv", []int{0, 1, 2, 4}, func(what string, got, want float64) { near(t, what, got, want, 2e-9) })
}
