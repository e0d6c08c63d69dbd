package notebook

import (
	"errors"
	"math"
	"slices"

	"coldseam/profile/unit"
)

// giveRoles lets the words and signs beside a number say what it is.
func giveRoles(ts []token) {
	next := func(i int) int { // the number that follows token i, only signs and fillers between
		for j := i + 1; j < len(ts); j++ {
			switch ts[j].kind {
			case number:
				return j
			case mark, filler, about:
			default:
				return -1
			}
		}
		return -1
	}
	set := func(i int, r role) {
		if i >= 0 && ts[i].role == unknown {
			ts[i].role = r
		}
	}
	for i, t := range ts {
		switch t.kind {
		case tempWord:
			set(next(i), tempRole)
		case depthWord:
			set(next(i), depthRole)
		case oxygenWord:
			if n := next(i); n >= 0 {
				set(n, oxygenRole)
			} else if i > 0 && ts[i-1].kind == number {
				set(i-1, oxygenRole)
			}
		case atSign:
			before := false
			for j := range ts[:i] {
				if ts[j].kind == number {
					before = true
					if ts[j].role == unknown {
						ts[j].role = tempRole
					}
				}
			}
			if before || t.text == "@" {
				set(next(i), depthRole)
			}
		}
	}
}

// ranges finds two numbers with a dash or "to" between them: a range of depths that
// share a temperature ("5-15 all 73"), a range of temperatures ("66-67 @ 14"), a
// temperature that holds down to a depth ("74 down to 12"), or, when there are just
// the two, a depth and its temperature ("10-68").
func (e *entry) ranges(ts []token) error {
	var at []int
	for i, t := range ts {
		if t.kind == number && t.role != oxygenRole && t.role != percentRole {
			at = append(at, i)
		}
	}
	for k := 0; k+1 < len(at); k++ {
		i, j := at[k], at[k+1]
		a, b := &ts[i], &ts[j]
		joined, word := false, false
		for _, t := range ts[i+1 : j] {
			switch {
			case t.kind == dash:
				joined = true
			case t.kind == span:
				joined, word = true, true
			case t.kind == filler:
			default:
				joined = false
			}
		}
		if !joined || b.minus {
			continue
		}
		if word && len(at) == 2 {
			if a.role == depthRole || b.role == tempRole || a.value.Value <= b.value.Value && a.role == unknown {
				return errors.New("a range of depths with no temperature beside it")
			}
			a.role, b.role = tempRole, depthRole
			e.same0, e.odd = true, true
			return nil
		}
		if len(at) < 3 && !e.hasTempElsewhere(ts) || a.value.Value >= b.value.Value {
			continue
		}
		switch {
		case len(at) == 2, a.role == tempRole || b.role == tempRole || k > 0 && a.role == unknown && b.role == unknown:
			e.between = true
			a.role, b.role = tempRole, tempRole
			if a.temp == unit.NoTemperature {
				a.temp = b.temp
			}
		default:
			if len(at) == 3 && k == 0 && a.role == unknown && b.role == unknown && ts[at[2]].role == unknown {
				e.rangeDoubt = math.Abs(ts[at[2]].value.Value-b.value.Value) <= 3
			}
			a.role, b.role = depthRole, depthRole
			if a.depth == unit.NoLength {
				a.depth = b.depth
			}
		}
		e.odd = true
		return nil
	}
	return nil
}

// hasTempElsewhere: "66-67 @ surf" has a depth by a word, not by a number.
func (e *entry) hasTempElsewhere(ts []token) bool {
	for _, t := range ts {
		if t.kind == surface {
			return true
		}
	}
	return false
}

// number puts one number where it belongs.
func (e *entry) number(ts []token, i int) error {
	t := ts[i]
	if t.minus {
		after := i >= 2 && ts[i-2].kind == mark && ts[i-2].text[0] != '.' // "5: -0.5": a dash after a separator is a minus
		first := i == 1
		switch {
		case after, t.temp == unit.Celsius && t.value.Value <= 5:
			t.value.Value = -t.value.Value
		case first && t.role != tempRole:
			return errors.New("a depth cannot be negative")
		case t.value.Value <= 3 && (t.role == unknown || t.role == tempRole):
			e.unsure = true
		}
	}
	if i > 0 && ts[i-1].kind == plusMinus {
		e.spread = &t
		return nil
	}
	switch t.role {
	case depthRole:
		e.depths = append(e.depths, t)
	case tempRole:
		e.temps = append(e.temps, t)
	case oxygenRole:
		e.oxygen = &t
	case percentRole:
		e.percent = &t
	default:
		e.free = append(e.free, t)
	}
	return nil
}

// settle fills in what follows from what is known.
func (e *entry) settle() error {
	ranged := len(e.depths) == 2 && e.odd
	switch {
	case e.surface && len(e.depths) > 0:
		return errors.New("both the surface and a depth: write one reading a line, or put a comma between")
	case len(e.depths) > 1 && !ranged:
		return errors.New("two depths in one reading")
	case e.missing && (len(e.temps) > 0 || e.same):
		return errors.New("a temperature and a mark for no reading on one line")
	case e.surface && len(e.temps) == 0 && len(e.free) > 0:
		e.temps, e.free = e.free[:1], e.free[1:]
	case len(e.depths) > 0 && len(e.temps) == 0 && len(e.free) > 0 && !(e.same || e.missing):
		e.temps, e.free = e.free[:1], e.free[1:]
	case len(e.depths) == 0 && !e.surface && len(e.free) > 0 && (len(e.temps) > 0 || e.same || e.missing):
		e.depths, e.free = e.free[:1], e.free[1:]
	}
	if (e.same || e.missing) && len(e.free) > 0 && len(e.depths) > 0 {
		return errors.New("a number is left over beside the mark for \"same\" or for no reading")
	}
	if len(e.depths) > 0 && len(e.temps) > 0 && e.depths[0].at > e.temps[0].at {
		e.odd = true
	}
	if len(e.remarks) > 0 || e.bottom || e.same || e.missing || e.spread != nil || len(e.temps) > 1 || e.approximate() {
		e.odd = true
	}
	return nil
}

// approximate reports whether any number of the entry was called about right.
func (e *entry) approximate() bool {
	for _, t := range slices.Concat(e.depths, e.temps, e.free) {
		if t.approx {
			return true
		}
	}
	return false
}
