package rig

import (
	"math"

	"coldseam/profile/unit"
)

// Lengths of the parts (common practice).
const (
	buttM      = 0.6096 // 2 ft of butt
	buttFromM  = 3.9624 // a leader under 13 ft has none
	leastEndM  = 0.6096 // at least 2 ft of it is tippet
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
	var parts []Part
	add := func(n int, kind PieceKind, p Piece) {
		if n > 0 {
			name := string(kind)
			if p.Name != "" {
				name += " (" + p.Name + ")"
			}
			part := Part{Name: name, LengthM: unit.RoundTo(float64(n)*stepM, 4), DiameterMM: unit.RoundTo(p.DiameterMM, 4), Material: p.Material}
			if kind == Tapered {
				part.ThickMM = thickMM
			}
			parts = append(parts, part)
		}
	}
	add(butt, Butt, first(stock, Butt))
	add(taper, Tapered, piece)
	add(total-butt-taper, Tippet, first(stock, Tippet))
	return parts
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
