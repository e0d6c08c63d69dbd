package layers

import (
	"bytes"
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
)

// pchipColumns are the columns of testdata/pchip.py.
var pchipColumns = map[string][2][]float64{
	"A":   {depthsA, tempsA},
	"B":   {depthsB, tempsB},
	"few": {{0, 1.5, 3.1, 4.6, 7.6}, {23.4, 22.8, 20.1, 12.2, 8.8}},
}

func pchipRows(t *testing.T, text []byte) [][]string {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(rows) < 2 {
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

// The curve against the committed answers of scipy, to the nine digits written.
func TestPchipFile(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "pchip.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range pchipRows(t, text) {
		c, known := pchipColumns[row[0]]
		if !known {
			t.Fatalf("no column is called %q", row[0])
		}
		k := cubicOnly(metres(t, c[0], c[1]))
		at, want := number(t, row[2]), number(t, row[3])
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
	cmd := exec.Command(python, "pchip.py")
	cmd.Dir = "testdata"
	made, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join("testdata", "pchip.csv"))
	if err != nil {
		t.Fatal(err)
	}
	got, want := pchipRows(t, made), pchipRows(t, text)
	if len(got) != len(want) {
		t.Fatalf("scipy gives %d lines, the file has %d", len(got), len(want))
	}
	for i, row := range want {
		for _, j := range []int{0, 1, 2, 4} {
			if got[i][j] != row[j] {
				t.Errorf("line %d: %q, the file has %q", i+2, got[i][j], row[j])
			}
		}
		near(t, row[0]+" "+row[1]+" at "+row[2], number(t, got[i][3]), number(t, row[3]), 2e-9)
	}
}
