package notebook

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"coldseam/profile/unit"
)

// entry is what one piece of a line says by itself, before the page settles units,
// the order of the columns and what a third number means.
type entry struct {
	line int
	text string // the line as it stood on the page

	depths  []token // one, or the two ends of a range of depths
	surface bool
	temps   []token
	between bool // temps are the two ends of a range
	oxygen  *token
	percent *token
	free    []token // numbers whose meaning the page settles, in order
	spread  *token  // after +-

	bottom     bool // the reading touched the bottom
	same       bool // as the reading above
	missing    bool // no reading was taken
	same0      bool // the same temperature from the surface, or the reading above, down to this depth
	repeats    bool // further numbers are the same reading taken again
	rangeDoubt bool // "10-68 67" may be a range of depths or a reading and its repeat
	unsure     bool // a dash before a small number: a minus or a separator
	odd        bool // took more than plain reading: worth a note
	remarks    []string
}

// parseLine reads one clean line of readings. points says that the page writes its
// decimals with points. A line with two meanings comes back as two readings of it,
// each whole.
func parseLine(line string, points bool) ([][]entry, error) {
	if len(line) > MaxLine {
		return nil, fmt.Errorf("the line is longer than %d characters: write one or a few readings a line", MaxLine)
	}
	line, mended := mendDigits(line)
	meanings, err := meaningsOf(tokens(line, false))
	if commaBetweenDigits(line) {
		decimal, errDecimal := meaningsOf(tokens(line, true))
		separate := err == nil && whole(meanings[0])
		switch {
		case errDecimal != nil || !whole(decimal[0]), separate && points:
		case !separate || strings.Count(line, ",") < 3:
			meanings, err = decimal, nil
		default:
			meanings = append(decimal, meanings...)
		}
	}
	if err != nil {
		return nil, err
	}
	for _, m := range meanings {
		for i := range m {
			m[i].odd = m[i].odd || mended
		}
	}
	return meanings, nil
}

// meaningsOf reads the tokens of a line, and reads them again without the range
// where "10-68 67" may be one or not.
func meaningsOf(ts []token) ([][]entry, error) {
	entries, err := parseTokens(ts, true)
	if err != nil {
		return nil, err
	}
	if len(entries) == 1 && entries[0].rangeDoubt {
		if again, err := parseTokens(ts, false); err == nil {
			return [][]entry{entries, again}, nil
		}
	}
	return [][]entry{entries}, nil
}

func whole(entries []entry) bool {
	for i := range entries {
		if !entries[i].whole() {
			return false
		}
	}
	return true
}

func commaBetweenDigits(s string) bool {
	for i := 1; i+1 < len(s); i++ {
		if s[i] == ',' && isDigit(s[i-1]) && isDigit(s[i+1]) {
			return true
		}
	}
	return false
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// parseTokens reads the tokens of a line as several readings where every piece
// between separators is one by itself, else as one.
func parseTokens(ts []token, ranges bool) ([]entry, error) {
	for i := 1; i < len(ts); i++ {
		if ts[i].kind == number && ts[i-1].kind == number && !ts[i].spaced && ts[i-1].role == unknown {
			return nil, errors.New("two numbers run into each other: put a blank between depth and temperature")
		}
	}
	for _, sep := range []string{"/", ";", ",", "|"} {
		if pieces := cut(ts, sep); len(pieces) > 1 {
			if entries, ok := several(pieces, ranges); ok {
				return entries, nil
			}
		}
	}
	if pieces := cutAtDepths(ts); len(pieces) > 1 {
		if entries, ok := several(pieces, ranges); ok {
			return entries, nil
		}
	}
	e, err := parseEntry(ts, ranges)
	if err != nil {
		return nil, err
	}
	return []entry{e}, nil
}

func several(pieces [][]token, ranges bool) ([]entry, bool) {
	var entries []entry
	for _, p := range pieces {
		if len(p) == 0 {
			continue // a separator at the line's end
		}
		e, err := parseEntry(p, ranges)
		if err != nil || !e.whole() {
			return nil, false
		}
		entries = append(entries, e)
	}
	return entries, len(entries) > 1
}

// cut splits tokens at a separator outside brackets.
func cut(ts []token, sep string) [][]token {
	var out [][]token
	start := 0
	for i, t := range ts {
		if t.kind == mark && t.text == sep && !t.inParen {
			out = append(out, ts[start:i])
			start = i + 1
		}
	}
	return append(out, ts[start:])
}

// cutAtDepths splits "5ft 73 10ft 72" before each depth that carries its unit.
func cutAtDepths(ts []token) [][]token {
	var at []int
	for i, t := range ts {
		if t.kind == number && t.role == depthRole && !t.inParen {
			at = append(at, i)
		}
	}
	if len(at) < 2 || at[0] != 0 {
		return nil
	}
	var out [][]token
	for i, start := range at {
		end := len(ts)
		if i+1 < len(at) {
			end = at[i+1]
		}
		out = append(out, ts[start:end])
	}
	return out
}

// whole reports whether an entry is a reading by itself: a depth and something at
// it.
func (e *entry) whole() bool {
	hasDepth := e.surface || len(e.depths) > 0
	hasTemp := len(e.temps) > 0
	value := hasTemp || e.same || e.missing
	switch {
	case hasDepth:
		return value || len(e.free) > 0
	case hasTemp:
		return len(e.free) == 1 || e.bottom
	}
	return len(e.free) >= 2 || len(e.free) == 1 && (value || e.bottom)
}

// parseEntry reads tokens as one reading.
func parseEntry(ts []token, ranges bool) (entry, error) {
	var e entry
	ts = slices.Clone(ts)
	for i := range ts {
		ts[i].at = i
	}
	giveRoles(ts)
	if ranges {
		if err := e.ranges(ts); err != nil {
			return e, err
		}
	}
	numbers, last := 0, 0
	for i, t := range ts {
		if t.kind == number {
			numbers, last = numbers+1, i
		}
	}
	for i, t := range ts {
		switch t.kind {
		case surface:
			e.surface = true
		case bottom:
			e.bottom = true
		case ditto:
			e.same = true
		case missing:
			e.missing = true
		case reread:
			e.repeats = true
		case about, filler, tempWord, depthWord, oxygenWord, atSign, span:
		case plusMinus:
		case beyond:
			return e, errors.New("> or < leaves the depth or the temperature open: write the number that was read")
		case dash:
			if i == len(ts)-1 && numbers == 1 {
				e.missing = true
			}
		case mark:
			if t.text == "=" && i == len(ts)-1 {
				e.same = true
			}
		case remark:
			if t.text == "f" && i == 0 && numbers > 0 {
				return e, errors.New(`"f" may be the surface, or Fahrenheit with the depth missing: write "surf 74" or "15 ft 74 F"`)
			}
			if !t.inParen && (i < last || numbers == 0 && !e.surface && !e.bottom) {
				return e, fmt.Errorf("%q is not understood", t.text)
			}
			e.remarks = append(e.remarks, t.text)
		case number:
			if err := e.number(ts, i); err != nil {
				return e, err
			}
		}
	}
	return e, e.settle()
}

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
		case a.role == tempRole || b.role == tempRole || k > 0 && a.role == unknown && b.role == unknown:
			e.between = true
			a.role, b.role = tempRole, tempRole
			if a.temp == unit.NoTemperature {
				a.temp = b.temp
			}
		default:
			if third := ts[at[2]]; len(at) == 3 && k == 0 && a.role == unknown && b.role == unknown && third.role == unknown {
				e.rangeDoubt = math.Abs(third.value.Value-b.value.Value) <= 3
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
		after := i >= 2 && ts[i-2].kind == mark && ts[i-2].text != "." // "5: -0.5": a dash after a separator is a minus
		first := i == 1
		switch {
		case after && t.value.Value <= 5, t.temp == unit.Celsius && t.value.Value <= 5:
			t.value.Value = -t.value.Value
		case first && t.role != tempRole:
			return errors.New("a depth cannot be negative")
		case t.value.Value <= 3:
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
	if len(e.depths) > 0 && len(e.temps) > 0 && e.depths[0].at > e.temps[0].at {
		e.odd = true
	}
	if len(e.remarks) > 0 || e.bottom || e.same || e.missing || e.spread != nil || len(e.temps) > 1 {
		e.odd = true
	}
	return nil
}
