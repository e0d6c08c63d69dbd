package sink

import (
	"os"
	"testing"

	"coldseam/profile/internal/reference"
)

// The waits against the committed ones of scipy, which come from another formulation
// with its own drag formulas. Both leave out under 1 % by their cutting.
func TestChainFile(t *testing.T) {
	rigs, number := chainRigs(), reference.Number
	seen := map[string]bool{}
	for _, row := range reference.Rows(t, "chain.csv") {
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
	if testing.Short() || os.Getenv("COLDSEAM_FULL") != "1" {
		t.Skip("it takes scipy some 20 s of a processor, and COLDSEAM_FULL=1 has it done")
	}
	// to the tolerance that scipy was given
	reference.Remade(t, "chain.py", "chain.csv", []int{0, 1, 3}, func(what string, got, want float64) { near(t, what, got, want, 0.002) })
}
