package oxygen

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"

	"coldseam/profile/layers"
)

// goneMgL: with no more oxygen than this there is taken to be none.
const goneMgL = 1

// The factors again, from the fitted casts that are layered and run short: a weighted
// quantile of the parts is where the pinball loss of one factor is least. Each lake
// counts once, however often it was read.
func TestFactors(t *testing.T) {
	all := lakes(t)
	var b strings.Builder
	for i, need := range needs {
		for _, table := range []struct {
			name string
			at   [5][3]float64
		}{{"fall", ofFall}, {"mud", ofMud}} {
			fmt.Fprintf(&b, "\n%g mg/L, of the %s:", need, table.name)
			for j := range chances {
				part, weight := parts(t, all, need, table.name == "mud", j)
				stat.SortWeighted(part, weight)
				got := stat.Quantile(chances[j], stat.Empirical, part, weight)
				fmt.Fprintf(&b, " %.3f", got)
				if off := math.Abs(got - table.at[i][j]); off > 0.0051 {
					t.Errorf("%g mg/L, of the %s, %g: %.3f, the table has %.3f", need, table.name, chances[j], got, table.at[i][j])
				}
			}
		}
	}
	t.Log(b.String())
}

// parts are the depths at which oxygen falls under a need as parts of what a table is of,
// with weights by which each lake counts once.
func parts(t *testing.T, all []lake, need float64, mud bool, j int) (part, weight []float64) {
	t.Helper()
	count := map[string]float64{}
	var of []string
	for i := range all {
		l := &all[i]
		z, how := l.crossing(need)
		if !l.fitted || how != crosses || l.whole.Layers.Structure != layers.Layered {
			continue
		}
		fall, ok := fallDepths(l.whole.Layers)
		if !ok {
			t.Fatalf("%s: layered, but no fall", l.Name)
		}
		whole := fall[j]
		if mud {
			if whole, ok = layers.Linear(l.z, l.v, goneMgL); !ok {
				continue
			}
		}
		part, of = append(part, z/whole), append(of, l.water)
		count[l.water]++
	}
	for _, lake := range of {
		weight = append(weight, 1/count[lake])
	}
	return part, weight
}
