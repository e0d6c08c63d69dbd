package rig

import (
	"cmp"
	"math"

	"coldseam/profile/unit"
)

// Lengths of the parts (common practice).
const (
	buttM      = 0.6096 // 2 ft of butt
	buttFromM  = 3.9624 // a leader under 13 ft has none
	leastEndM  = 0.6096 // at least 2 ft of it is tippet
	biteM      = 0.3048 // 1 ft of wire or of 60 lb line against teeth
	mostM      = 1000   // no leader is this long
	leastStepM = 0.001  // no piece is cut finer
	twelveFtAt = 5.1816 // from 17 ft on the longer tapered leader leaves enough tippet
)

// Cut makes the parts of a leader of a length, from the fly line to the fly, from
// the angler's stock: about 2 ft of butt, a tapered leader of 9 to 12 ft, the rest
// tippet; under 13 ft no butt and a tapered leader cut back. The parts are whole
// steps and sum exactly to the leader rounded to a step. It gives nil for what is no
// leader: a length or a step that is not a positive number, or past all measure.
func Cut(leaderM, stepM float64, stock []Piece) []Part {
	if !(leaderM > 0 && leaderM < mostM && stepM > leastStepM) {
		return nil
	}
	total := steps(leaderM, stepM)
	if total < 1 {
		return nil
	}
	butt, end := 0, int(math.Ceil(leastEndM/stepM-1e-6)) // rounded it could be under 2 ft
	if total >= steps(buttFromM, stepM) && has(stock, Butt) {
		butt = steps(buttM, stepM)
	}
	piece, ok := tapered(stock, leaderM)
	taper := 0
	if ok {
		taper = min(steps(piece.LengthM, stepM), total-butt-end)
	}
	if taper < 1 {
		taper = 0
	}
	return parts(stepM, count{butt, Butt, first(stock, Butt)}, count{taper, Tapered, piece}, count{total - butt - taper, Tippet, first(stock, Tippet)})
}

// cutFor is Cut with a bite tippet at the end for fish with teeth, where the stock has
// one; it takes up as much of the length.
func cutFor(leaderM, stepM float64, stock []Piece, teeth bool) []Part {
	n := bite(leaderM, stepM, stock, teeth)
	return append(Cut(leaderM-float64(n)*stepM, stepM, stock), parts(stepM, count{n, Bite, first(stock, Bite)})...)
}

// bite is how many steps of a leader are bite tippet.
func bite(leaderM, stepM float64, stock []Piece, teeth bool) int {
	n := int(math.Ceil(biteM/stepM - 1e-6))
	if !teeth || !has(stock, Bite) || leaderM < float64(n)*stepM+leastEndM {
		return 0
	}
	return n
}

// level makes the parts of a leader under an indicator: level tippet, cut for a swivel so
// far above the fly, 0 for none (common practice).
func level(leaderM, swivelM, stepM float64, stock []Piece, teeth bool) []Part {
	if !(leaderM > 0 && leaderM < mostM && stepM > leastStepM) {
		return nil
	}
	total, spool := steps(leaderM, stepM), first(stock, Tippet)
	spool.Material = cmp.Or(spool.Material, "fluorocarbon")
	below, end := min(steps(swivelM, stepM), total-1), count{0, Tippet, spool}
	if end.n = below; bite(leaderM, stepM, stock, teeth) > 0 { // it hangs from the swivel
		end = count{max(below, bite(leaderM, stepM, stock, teeth)), Bite, first(stock, Bite)}
	}
	return parts(stepM, count{total - end.n, levelLine, spool}, end)
}

// levelLine is tippet in one piece from line to swivel or fly.
const levelLine PieceKind = "level tippet"

// count is how many steps are cut of a piece.
type count struct {
	n    int
	kind PieceKind
	Piece
}

// parts are the pieces of which something is cut.
func parts(stepM float64, list ...count) (out []Part) {
	for _, c := range list {
		if c.n <= 0 {
			continue
		}
		name := string(c.kind)
		if c.Name != "" {
			name += " (" + c.Name + ")"
		}
		part := Part{Name: name, LengthM: unit.RoundTo(float64(c.n)*stepM, 4), DiameterMM: unit.RoundTo(c.DiameterMM, 4), Material: c.Material}
		if c.kind == Tapered {
			part.ThickMM = thickMM
		}
		out = append(out, part)
	}
	return out
}

func steps(m, step float64) int { return int(math.Round(m / step)) }

func has(stock []Piece, kind PieceKind) bool { return first(stock, kind).Kind == kind }

func first(stock []Piece, kind PieceKind) Piece {
	for _, p := range stock {
		if p.Kind == kind {
			return p
		}
	}
	return Piece{}
}

// tapered picks the tapered leader: the longest for a long leader, else the
// shortest.
func tapered(stock []Piece, leaderM float64) (Piece, bool) {
	var best Piece
	found := false
	for _, p := range stock {
		if p.Kind != Tapered || p.LengthM <= 0 {
			continue
		}
		longer := p.LengthM > best.LengthM
		if !found || longer == (leaderM >= twelveFtAt) {
			best, found = p, true
		}
	}
	return best, found
}
