package page

import (
	"cmp"
	"slices"
	"strings"

	"coldseam/chart"
	"coldseam/profile/plain"
)

// part is a piece of a title: a name that somebody wrote, or what stands between names. A
// name may run from right to left, and must not turn its neighbours round.
type part struct {
	Text string
	Name bool
}

// parts cuts a title at the names of its drops.
func parts(title string, drops ...chart.Drop) []part {
	var names []string
	for _, d := range drops {
		for _, n := range []string{plain.Line(d.Water), plain.Line(d.Spot)} {
			if n = strings.TrimSpace(n); n != "" {
				names = append(names, n)
			}
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return cmp.Compare(len(b), len(a)) }) // the longest first
	out := []part{{title, false}}
	for _, n := range names {
		var next []part
		for _, q := range out {
			before, after, found := strings.Cut(q.Text, n)
			if q.Name || !found {
				next = append(next, q)
				continue
			}
			for _, piece := range []part{{before, false}, {n, true}, {after, false}} {
				if piece.Text != "" {
					next = append(next, piece)
				}
			}
		}
		out = next
	}
	return out
}
