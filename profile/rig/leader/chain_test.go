package leader

import (
	"testing"

	"coldseam/profile/expect"
)

// asked is a leader of testdata/chain.py.
type asked struct {
	leader Leader
	tip    Tip
}

// chainLeaders are those of testdata/chain.py.
func chainLeaders() map[string]asked {
	one := func(parts []Part, tip Tip, bodies ...Body) asked {
		return asked{Leader{Parts: parts, Bodies: bodies, TempC: 15}, tip}
	}
	l6, l10, l15, l20, l30 := 7.5*ft, 3.81, 18.75*ft, 25*ft, 37.5*ft
	return map[string]asked{
		"6 ft, 0.05 g":  one([]Part{{l6, 0.18e-3, 0, FluoroKgM3}}, Held, Body{l6, 5e-5, 4000, 2}),
		"10 ft, 0.1 g":  one([]Part{{3, 0.30e-3, 0, NylonKgM3}, {0.81, 0.18e-3, 0, FluoroKgM3}}, Held, Body{l10, 1e-4, 4000, 2}),
		"15 ft, 0.25 g": one(built(l15, 1.5, 0.18e-3, FluoroKgM3), Held, Body{l15, 2.5e-4, 4000, 2}),
		"20 ft, 0.05 g, nylon and two droppers": one(built(l20, 3, 0.20e-3, NylonKgM3), Held,
			Body{l20 - 2, 3e-5, 3000, 2}, Body{l20 - 1, 3e-5, 3000, 2}, Body{l20, 5e-5, 4000, 2}),
		"15 ft, 0.25 g, tip slides": one(built(l15, 1.5, 0.18e-3, FluoroKgM3), Slides, Body{l15, 2.5e-4, 4000, 2}),
		"30 ft, 1 g and a shot": one(built(l30, 5, 0.20e-3, FluoroKgM3), Held,
			Body{l30 - 0.4, 4e-4, 7290, 1}, Body{l30, 1e-3, 4000, 2}),
	}
}

// The sink times against the committed ones of scipy, which come from another formulation
// with its own drag formulas. Both leave out under 1 % by their cutting.
func TestChainFile(t *testing.T) {
	leaders, number := chainLeaders(), expect.Number
	seen := map[string]bool{}
	for _, row := range expect.Rows(t, "chain.csv") {
		a, known := leaders[row[0]]
		if !known {
			t.Fatalf("no rig is called %q", row[0])
		}
		seen[row[0]] = true
		s, err := a.leader.SinkTime(number(t, row[1]), a.tip)
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
		}
		within(t, row[0]+" to "+row[1]+" m", s, number(t, row[2]), 0.02)
		t.Logf("%-40s %s m: %7.2f s, scipy %s: %+.2f %%", row[0], row[1], s, row[2], 100*(s/number(t, row[2])-1))
	}
	if len(seen) != len(leaders) {
		t.Errorf("%d leaders in the file, want %d", len(seen), len(leaders))
	}
}

// The committed answers against scipy itself, where it is installed.
func TestChainRegenerated(t *testing.T) {
	if testing.Short() || !expect.Full() {
		t.Skip("it takes scipy some 20 s of a processor, and COLDSEAM_FULL=1 has it done")
	}
	// to the tolerance that scipy was given
	expect.Remade(t, "chain.py", "chain.csv", []int{0, 1, 3}, func(what string, got, want float64) { within(t, what, got, want, 0.002) })
}
