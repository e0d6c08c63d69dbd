package notebook

import (
	"errors"
	"math"
	"slices"

	"coldseam/profile/unit"
)

// giveRoles lets the words and signs beside a number say what it is.
func giveRoles(ts []token) {
	for i, t := range ts {
		switch t.kind {
		case tempWord:
			giveRole(ts, nextNumber(ts, i), tempRole)
		case depthWord:
			giveRole(ts, nextNumber(ts, i), depthRole)
		case oxygenWord:
			n := nextNumber(ts, i)
			if n < 0 && i > 0 && ts[i-1].kind == number {
				n = i - 1
			}
			giveRole(ts, n, oxygenRole)
		case atSign: // "72 @ 5"
			before := hasNumber(ts[:i])
			for j := range i {
				giveRole(ts, j, tempRole)
			}
			if before || t.text == "@" {
				giveRole(ts, nextNumber(ts, i), depthRole)
			}
		}
	}
}

// giveRole gives a number that has none its role; there is none at -1.
func giveRole(ts []token, i int, r role) {
	if i >= 0 && ts[i].kind == number && ts[i].role == unknown {
		ts[i].role = r
	}
}

// nextNumber is the number that follows token i with only signs and fillers between, or -1.
func nextNumber(ts []token, i int) int {
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

// ranges finds two numbers with a dash or "to" between them: a range of depths that
// share a temperature ("5-15 all 73"), a range of temperatures ("66-67 @ 14"), a
// temperature that holds down to a depth ("74 down to 12"), or, when there are just
// the two, a depth and its temperature ("10-68").
func (e *entry) ranges(ts []token) error {
	var numbers []*token
	for i := range ts {
		if t := &ts[i]; t.kind == number && t.role != oxygenRole && t.role != percentRole {
			numbers = append(numbers, t)
		}
	}
	for k := 1; k < len(numbers); k++ {
		a, b := numbers[k-1], numbers[k]
		joined, word := joint(ts[a.at+1 : b.at])
		switch {
		case !joined || b.minus:
			continue
		case word && len(numbers) == 2:
			return e.downTo(a, b)
		case len(numbers) == 2 && !hasSurface(ts) || a.value.Value >= b.value.Value:
			continue
		}
		e.odd = true
		e.rangeOf(numbers, k)
		return nil
	}
	return nil
}

// joint reports whether a dash or "to" joins the numbers on both sides, and whether it is
// the word.
func joint(between []token) (joined, word bool) {
	for _, t := range between {
		switch t.kind {
		case dash:
			joined = true
		case span:
			joined, word = true, true
		case filler:
		default:
			joined = false
		}
	}
	return joined, word
}

// downTo: "74 down to 12".
func (e *entry) downTo(temp, depth *token) error {
	if temp.role == depthRole || depth.role == tempRole || temp.value.Value <= depth.value.Value && temp.role == unknown {
		return errors.New("a range of depths with no temperature beside it")
	}
	temp.role, depth.role = tempRole, depthRole
	e.same0, e.odd = true, true
	return nil
}

// rangeOf makes a range of temperatures or of depths of numbers k-1 and k.
func (e *entry) rangeOf(numbers []*token, k int) {
	a, b := numbers[k-1], numbers[k]
	bare := a.role == unknown && b.role == unknown
	if len(numbers) == 2 || a.role == tempRole || b.role == tempRole || k > 1 && bare {
		e.between = true
		a.role, b.role = tempRole, tempRole
		if a.temp == unit.NoTemperature {
			a.temp = b.temp
		}
		return
	}
	if len(numbers) == 3 && k == 1 && bare && numbers[2].role == unknown {
		e.rangeDoubt = math.Abs(numbers[2].value.Value-b.value.Value) <= 3
	}
	a.role, b.role = depthRole, depthRole
	if a.depth == unit.NoLength {
		a.depth = b.depth
	}
}

// hasSurface: "66-67 @ surf" has a depth by a word, not by a number.
func hasSurface(ts []token) bool {
	return slices.ContainsFunc(ts, func(t token) bool { return t.kind == surface })
}

// number puts one number where it belongs.
func (e *entry) number(ts []token, i int) error {
	t := ts[i]
	if t.minus {
		if err := e.minus(ts, i, &t); err != nil {
			return err
		}
	}
	switch {
	case i > 0 && ts[i-1].kind == plusMinus:
		e.spread = &t
	case t.role == depthRole:
		e.depths = append(e.depths, t)
	case t.role == tempRole:
		e.temps = append(e.temps, t)
	case t.role == oxygenRole:
		e.oxygen = &t
	case t.role == percentRole:
		e.percent = &t
	default:
		e.free = append(e.free, t)
	}
	return nil
}

// minus decides whether the dash before a number is its minus.
func (e *entry) minus(ts []token, i int, t *token) error {
	behindMark := i >= 2 && ts[i-2].kind == mark && ts[i-2].text[0] != '.' // "5: -0.5"
	switch v := t.value.Value; {
	case behindMark, t.temp == unit.Celsius && v <= 5:
		t.value.Value = -v
	case i == 1 && t.role != tempRole:
		return errors.New("a depth cannot be negative")
	case v <= 3 && (t.role == unknown || t.role == tempRole):
		e.unsure = true
	}
	return nil
}

// resolve fills in what follows from what is known.
func (e *entry) resolve() error {
	if err := e.contradiction(); err != nil {
		return err
	}
	e.assignFree()
	if (e.same || e.missing) && len(e.free) > 0 && len(e.depths) > 0 {
		return errors.New("one number too many beside the mark for \"same\" or for no reading")
	}
	e.odd = e.odd || e.more()
	return nil
}

// contradiction is the error of a reading that says two things.
func (e *entry) contradiction() error {
	switch {
	case e.surface && len(e.depths) > 0:
		return errors.New("both the surface and a depth: write one reading a line, or put a comma between")
	case len(e.depths) > 1 && (len(e.depths) > 2 || !e.odd): // two may be a range
		return errors.New("two depths in one reading")
	case e.missing && (len(e.temps) > 0 || e.same):
		return errors.New("a temperature and a mark for no reading on one line")
	}
	return nil
}

// more reports whether a reading says more than a depth and its temperature, in this order.
func (e *entry) more() bool {
	tempFirst := len(e.depths) > 0 && len(e.temps) > 0 && e.depths[0].at > e.temps[0].at
	marked := e.bottom || e.same || e.missing || len(e.remarks) > 0
	return tempFirst || marked || e.spread != nil || len(e.temps) > 1 || e.approximate()
}

// assignFree makes a bare number the temperature of a known depth, or the depth of a known
// temperature.
func (e *entry) assignFree() {
	marked := e.same || e.missing
	deep, warm := len(e.depths) > 0, len(e.temps) > 0
	switch {
	case len(e.free) == 0:
	case !warm && (e.surface || deep && !marked):
		e.temps, e.free = e.free[:1], e.free[1:]
	case !deep && !e.surface && (warm || marked):
		e.depths, e.free = e.free[:1], e.free[1:]
	}
}

// approximate reports whether any number of the entry was called about right.
func (e *entry) approximate() bool {
	return slices.ContainsFunc(slices.Concat(e.depths, e.temps, e.free), func(t token) bool { return t.approx })
}
