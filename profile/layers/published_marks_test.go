package layers

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"coldseam/profile/internal/measured"
)

// The metalimnion by each method, against what field crews marked: U.S. EPA, National
// Lakes Assessment 2007 and 2017. The number of a step's widths was chosen on 2007.
// The floors are the mean overlap reached (intersection over union), rounded down.
func TestPublishedEdges(t *testing.T) {
	t.Parallel()
	floors := map[string][2]float64{
		FirstToLast:   {.66, .67},
		Unbroken:      {.64, .68},
		UnbrokenDense: {.59, .61},
		StepEdges:     {.56, .58},
	}
	all := measured.Casts(t, "nla_marked.csv")
	var b strings.Builder
	fmt.Fprintf(&b, "\n%-40s %s", "", "mean overlap; top, bottom, both within 1 m")
	for y, year := range []string{"_2007", "_2017"} {
		sums := map[string]*[4]float64{}
		var names []string
		n := 0.0
		add := func(name string, z Zone, c measured.Cast) {
			if sums[name] == nil {
				sums[name] = &[4]float64{}
				names = append(names, name)
			}
			if !z.OK {
				return
			}
			s := sums[name]
			both := math.Max(0, math.Min(z.BottomM, c.Mark["B"])-math.Max(z.TopM, c.Mark["T"]))
			s[0] += both / (math.Max(z.BottomM, c.Mark["B"]) - math.Min(z.TopM, c.Mark["T"]))
			top, bottom := math.Abs(z.TopM-c.Mark["T"]) <= 1+equal, math.Abs(z.BottomM-c.Mark["B"]) <= 1+equal
			for i, good := range []bool{top, bottom, top && bottom} {
				if good {
					s[i+1]++
				}
			}
		}
		for _, c := range all {
			if !strings.Contains(c.Name, year) {
				continue
			}
			n++
			temps := stable(c.Temps)
			for _, z := range Edges(c.Depths, temps) {
				add(z.Name, z, c)
			}
			s, ok := fitStep(c.Depths, temps)
			for _, w := range []float64{1, 1.5, 2, 2.5, 3} {
				z := Zone{
					TopM:    math.Max(c.Depths[0], s.centreM-w*s.widthM),
					BottomM: math.Min(c.Depths[len(c.Depths)-1], s.centreM+w*s.widthM),
					OK:      ok,
				}
				add(fmt.Sprintf("step, %.1f widths", w), z, c)
			}
		}
		for _, name := range names {
			fmt.Fprintf(&b, "\n%s %-34s", year[1:], name)
			for _, v := range sums[name] {
				fmt.Fprintf(&b, " %.3f", v/n)
			}
			if got := sums[name][0] / n; got < floors[name][y] {
				t.Errorf("%s: %s: overlap %.3f, below the %.2f reached before", year[1:], name, got, floors[name][y])
			}
		}
	}
	t.Log(b.String())
}
