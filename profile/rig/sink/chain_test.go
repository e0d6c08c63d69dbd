package sink

import (
	"bytes"
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"coldseam/profile/internal/measured"
)

func chainRows(t *testing.T, text []byte) [][]string {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%d lines, %v", len(rows), err)
	}
	return rows[1:]
}

func committedRows(t *testing.T) [][]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "chain.csv"))
	if err != nil {
		t.Fatal(err)
	}
	return chainRows(t, text)
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// The waits against the committed ones of scipy, which come from another formulation
// with its own drag formulas. Both leave out under 1 % by their cutting.
func TestChainFile(t *testing.T) {
	rigs := chainRigs()
	seen := map[string]bool{}
	for _, row := range committedRows(t) {
		a, known := rigs[row[0]]
		if !known {
			t.Fatalf("no rig is called %q", row[0])
		}
		seen[row[0]] = true
		s, err := Wait(a.rig, number(t, row[1]), a.tip)
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
		}
		near(t, row[0]+" to "+row[1]+" m", s, number(t, row[2]), 0.02)
		t.Logf("%-40s %s m: %7.2f s, scipy %s: %+.2f %%", row[0], row[1], s, row[2], 100*(s/number(t, row[2])-1))
	}
	if len(seen) != len(rigs) {
		t.Errorf("%d rigs in the file, want %d", len(seen), len(rigs))
	}
}

// The committed answers against scipy itself, where it is installed.
func TestChainRegenerated(t *testing.T) {
	if testing.Short() {
		t.Skip("it takes scipy some 20 s")
	}
	python := ""
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import scipy").Run() == nil {
			python = name
			break
		}
	}
	if python == "" {
		measured.Missing(t, "no python3 with scipy here, so the committed answers are not made again")
	}
	cmd := exec.Command(python, "-B", "chain.py")
	cmd.Dir = "testdata"
	made, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	got, want := chainRows(t, made), committedRows(t)
	if len(got) != len(want) {
		t.Fatalf("scipy gives %d lines, the file has %d", len(got), len(want))
	}
	for i, row := range want {
		for _, j := range []int{0, 1, 3} {
			if got[i][j] != row[j] {
				t.Errorf("line %d: %q, the file has %q", i+2, got[i][j], row[j])
			}
		}
		near(t, row[0]+" to "+row[1], number(t, got[i][2]), number(t, row[2]), 0.002) // its own tolerance
	}
}
