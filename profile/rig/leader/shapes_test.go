package leader

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"coldseam/profile/expect"
	"coldseam/profile/water"
)

// listed is a leader of testdata/rigs.json.
type listed struct {
	Name      string
	Speed     float64
	Temp      float64
	Rho, Mu   float64
	Parts     [][4]float64 // length, upper and lower diameter, density
	BodiesRow [][4]float64 `json:"bodies"` // distance from the tip, mass, density, diameter
}

func (l listed) leader() Leader {
	r := Leader{TempC: l.Temp}
	for _, p := range l.Parts {
		r.Parts = append(r.Parts, Part{LengthM: p[0], DiameterM: p[1], EndDiameterM: p[2], DensityKgM3: p[3]})
	}
	for _, b := range l.BodiesRow {
		body := Body{AtM: b[0], KgDry: b[1], DensityKgM3: b[2]}
		if b[3] > 0 {
			body = sized(body, b[3])
		}
		r.Bodies = append(r.Bodies, body)
	}
	return r
}

func listedLeaders(t testing.TB) []listed {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "rigs.json"))
	if err != nil {
		t.Fatal(err)
	}
	var rigs []listed
	if err := json.Unmarshal(text, &rigs); err != nil {
		t.Fatal(err)
	}
	return rigs
}

// Six leaders against scipy, which integrates the same balance by itself, in angle
// and tension and to eleven digits.
func TestShapesOfScipy(t *testing.T) {
	rigs, number := listedLeaders(t), expect.Number
	seen := map[int]bool{}
	for _, row := range expect.Rows(t, "shapes.csv") {
		n, body := int(number(t, row[0])), int(number(t, row[1]))
		seen[n] = true
		s, err := rigs[n].leader().Tow(rigs[n].Speed)
		if err != nil {
			t.Fatal(err)
		}
		const tol = 5e-5
		what := rigs[n].Name + ", body " + row[1]
		within(t, what+": depth", s.Bodies[body].DepthM, number(t, row[2]), tol)
		within(t, what+": behind", s.Bodies[body].BehindM, number(t, row[3]), tol)
		within(t, what+": tension", s.TensionN, number(t, row[4]), tol)
		near(t, what+": angle", s.AngleDeg, number(t, row[5]), 0.005)
	}
	if len(seen) != len(rigs) {
		t.Errorf("%d of %d rigs seen", len(seen), len(rigs))
	}
	for _, r := range rigs {
		within(t, "density", water.Density(r.Temp), r.Rho, 1e-8)
		within(t, "viscosity", water.Viscosity(r.Temp), r.Mu, 5e-6)
	}
}

// The committed answers against scipy itself, where it is installed.
func TestShapesRegenerated(t *testing.T) {
	expect.Remade(t, "shapes.py", "shapes.csv", []int{0, 1, 6, 7}, func(what string, got, want float64) { within(t, what, got, want, 1e-8) })
}
