// Package basin says what a lake's table of depth and area tells of its water: how much
// of the bottom lies between two depths, and how much work it would take to mix the water
// from top to bottom.
//
// Between two rows of the table the lake is taken as the slice of a cone, so that the
// root of the area falls evenly with depth: a basin of straight walls and a cone come out
// exactly. The last row is the floor: what area is left there lies flat at that depth.
// Areas are those of the water at each depth, as a contour map gives them, and slopes do
// not make the bottom larger.
package basin

import (
	"errors"
	"fmt"
	"math"
	"sort"
)

// Row is one line of the table: the area of the lake's water at a depth, or the area that
// a map shows inside the contour of that depth.
type Row struct{ DepthM, AreaM2 float64 }

// Basin is a table that holds: at least two rows, the first at the surface, depths rising
// and areas falling, or staying as they are.
type Basin struct{ rows []Row }

// RowError is what is wrong with a row of a table, counted from 0.
type RowError struct {
	Row int
	Err error
}

func (e *RowError) Error() string { return fmt.Sprintf("row %d: %v", e.Row+1, e.Err) }

// Unwrap gives what is wrong.
func (e *RowError) Unwrap() error { return e.Err }

// Limits of a table: no lake is deeper or larger.
const (
	deepestM  = 2000
	largestM2 = 1e12
)

// New makes a Basin of rows in rising order of depth. A *RowError says which row is wrong.
func New(rows []Row) (Basin, error) {
	for i, r := range rows {
		err := check(r)
		switch {
		case err != nil:
		case i == 0 && r.DepthM != 0:
			err = errors.New("the first row is the surface: begin at a depth of 0")
		case i == 0 && r.AreaM2 <= 0:
			err = errors.New("the surface has no area")
		case i > 0 && r.DepthM <= rows[i-1].DepthM:
			err = errors.New("is not deeper than the row before it")
		case i > 0 && r.AreaM2 > rows[i-1].AreaM2:
			err = errors.New("has more area than the row above it: area falls with depth")
		}
		if err != nil {
			return Basin{}, &RowError{i, err}
		}
	}
	if len(rows) < 2 {
		return Basin{}, &RowError{max(len(rows)-1, 0), errors.New("a table has at least two rows, the surface and a depth")}
	}
	return Basin{append([]Row(nil), rows...)}, nil
}

func check(r Row) error {
	switch {
	case !(r.DepthM >= 0 && r.DepthM <= deepestM):
		return errors.New("is no depth of a lake")
	case !(r.AreaM2 >= 0 && r.AreaM2 <= largestM2):
		return errors.New("is no area of a lake")
	}
	return nil
}

// FloorM is the depth of the last row.
func (b Basin) FloorM() float64 { return b.rows[len(b.rows)-1].DepthM }

// AreaM2 is the area of the lake's water at a depth, 0 below the floor.
func (b Basin) AreaM2(depthM float64) float64 {
	i := sort.Search(len(b.rows), func(i int) bool { return b.rows[i].DepthM >= depthM })
	switch {
	case i == len(b.rows):
		return 0
	case i == 0 || b.rows[i].DepthM == depthM:
		return b.rows[i].AreaM2
	}
	above, below := b.rows[i-1], b.rows[i]
	share := (depthM - above.DepthM) / (below.DepthM - above.DepthM)
	root := math.Sqrt(above.AreaM2) + share*(math.Sqrt(below.AreaM2)-math.Sqrt(above.AreaM2))
	return math.Min(root*root, above.AreaM2) // that a root rounded up makes no more of it
}

// BottomShare is how much of the lake's bottom lies between two depths, of the whole, 0 to
// 1; a flat floor lies at its own depth.
func (b Basin) BottomShare(topM, bottomM float64) float64 {
	if !(topM < bottomM) {
		return 0
	}
	left := b.AreaM2(bottomM)
	if bottomM >= b.FloorM() {
		left = 0
	}
	return (b.AreaM2(topM) - left) / b.rows[0].AreaM2
}
