package pull

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"coldseam/profile/water"
)

// listed is a rig of testdata/rigs.json.
type listed struct {
	Name      string
	Speed     float64
	Temp      float64
	Rho, Mu   float64
	Parts     [][4]float64 // length, upper and lower diameter, density
	BodiesRow [][4]float64 `json:"bodies"` // distance from the tip, mass, density, diameter
}

func (l listed) rig() Rig {
	r := Rig{TempC: l.Temp}
	for _, p := range l.Parts {
		r.Parts = append(r.Parts, Part{LengthM: p[0], DiameterM: p[1], EndDiameterM: p[2], DensityKgM3: p[3]})
	}
	for _, b := range l.BodiesRow {
		r.Bodies = append(r.Bodies, Body{AtM: b[0], KgDry: b[1], DensityKgM3: b[2], DragDiameterM: b[3]})
	}
	return r
}

func listedRigs(t testing.TB) []listed {
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

func rowsOf(t *testing.T, text []byte) [][]string {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(rows) < 12 {
		t.Fatalf("%d lines, %v", len(rows), err)
	}
	return rows[1:]
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// missing ends a test that lacks something: skipped, or failed when COLDSEAM_FULL is
// 1, so that a full run cannot pass by leaving tests out.
func missing(t *testing.T, why string) {
	t.Helper()
	if os.Getenv("COLDSEAM_FULL") == "1" {
		t.Fatal("COLDSEAM_FULL=1, but " + why)
	}
	t.Skip(why)
}

// Six leaders against scipy, which integrates the same balance by itself, in angle
// and tension and to eleven digits.
func TestShapesOfScipy(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "shapes.csv"))
	if err != nil {
		t.Fatal(err)
	}
	rigs := listedRigs(t)
	seen := map[int]bool{}
	for _, row := range rowsOf(t, text) {
		n, body := int(number(t, row[0])), int(number(t, row[1]))
		seen[n] = true
		s, err := Solve(rigs[n].rig(), rigs[n].Speed)
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
	python := ""
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import scipy").Run() == nil {
			python = name
			break
		}
	}
	if python == "" {
		missing(t, "no python3 with scipy here, so the committed answers are not made again")
	}
	cmd := exec.Command(python, "shapes.py")
	cmd.Dir = "testdata"
	made, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join("testdata", "shapes.csv"))
	if err != nil {
		t.Fatal(err)
	}
	got, want := rowsOf(t, made), rowsOf(t, text)
	if len(got) != len(want) {
		t.Fatalf("scipy gives %d lines, the file has %d", len(got), len(want))
	}
	for i, row := range want {
		for _, j := range []int{0, 1, 6, 7} {
			if got[i][j] != row[j] {
				t.Errorf("line %d: %q, the file has %q", i+2, got[i][j], row[j])
			}
		}
		for j := 2; j <= 5; j++ {
			within(t, "line "+strconv.Itoa(i+2), number(t, got[i][j]), number(t, row[j]), 1e-8)
		}
	}
}
