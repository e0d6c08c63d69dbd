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

	depths    []token // one, or the two ends of a range of depths
	surface   bool
	surfaceAt int // its place in the piece
	temps     []token
	between   bool // temps are the two ends of a range
	oxygen    *token
	percent   *token
	free      []token // numbers whose meaning the page settles, in order
	spread    *token  // after +-

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

var errLong = fmt.Errorf("the line is longer than %d characters: write one or a few readings a line", MaxLine)

// parseLine reads one clean line of readings. points says that the page writes its
// decimals with points. A line with two meanings comes back as two readings of it,
// each whole.
func parseLine(line string, points bool) ([][]entry, error) {
	if len(line) > MaxLine {
		return nil, errLong
	}
	line, mended := mendDigits(line)
	meanings, err := meaningsOf(tokens(line, false))
	if commaBetweenDigits(line) {
		decimal, errDecimal := meaningsOf(tokens(line, true))
		separate := err == nil && whole(meanings[0])
		switch comma := commaOf(line, points); {
		case commaLength().MatchString(line): // "5,6 m": nobody parts two numbers so
			meanings, err = decimal, errDecimal
		case errDecimal != nil || !whole(decimal[0]):
		case !separate || comma == decimalComma:
			meanings, err = decimal, nil
			mended = mended || points
		case comma == openComma:
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

var commaLength = lazy(`\d,\d{1,2} ?(?:m|ft|feet|metres|meters)\b`)

// commaUse is what the commas between the digits of a line are.
type commaUse int

const (
	openComma commaUse = iota
	decimalComma
	betweenComma
)

// commaOf tells by the line's shape what its commas are, where they may be both: "2 21,2"
// and "1,5 23,4" write decimals, "0,23,8" on a page of decimal points parts numbers.
// "5,73 10,72" stays open.
func commaOf(line string, points bool) commaUse {
	numbers, commas, tenths := 0, 0, false
	fields := strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(" \t;/|", r) })
	for _, f := range fields {
		if !strings.ContainsAny(f, "0123456789") {
			continue
		}
		numbers++
		if commaBetweenDigits(f) {
			commas++
			after := f[strings.LastIndexByte(f, ',')+1:]
			tenths = tenths || len(after) == 1 || len(after) > 1 && !isDigit(after[1])
		}
	}
	switch {
	case numbers == 1 && len(fields) > 1 && strings.Count(line, ",") == 1: // "top 23,5"
		return decimalComma
	case numbers == 1 && points:
		return betweenComma
	case numbers > 1 && (commas < numbers || tenths):
		return decimalComma
	}
	return openComma
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
		if err := runTogether(ts, i); err != nil {
			return nil, err
		}
	}
	if pieces := dashPairs(ts); ranges && len(pieces) > 1 {
		if last := pieces[len(pieces)-1]; len(pieces) == 2 && math.Abs(last[2].value.Value-last[0].value.Value) <= 3 {
			return nil, errors.New("two ranges, or two readings? Write one reading a line, e.g. \"5: 71.2\"")
		}
		if entries, ok := several(pieces, false); ok {
			return entries, nil
		}
	}
	for _, pieces := range [][][]token{cut(ts, "/"), cut(ts, ";"), cut(ts, ","), cut(ts, "|"), cutAtDepths(ts)} {
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

// runTogether refuses two numbers that run into each other at token i.
func runTogether(ts []token, i int) error {
	before, t := ts[i-1], ts[i]
	switch {
	case t.spaced || before.kind != number:
		return nil
	case t.kind == number && before.role == unknown:
		return errors.New("two numbers run into each other: put a space between depth and temperature")
	case t.text == ".." && i+1 < len(ts) && ts[i+1].kind == number && !ts[i+1].spaced:
		a, b := before.text, ts[i+1].text
		return fmt.Errorf("two points in %s..%s: write %s.%s, or a depth and a temperature with a space between", a, b, a, b)
	case feetAndInches(ts, i):
		feet := exact(before.value.Value)
		return fmt.Errorf("%s'%s may be feet and inches: write %s'%s\" or put a space between", feet, t.text, feet, t.text)
	}
	return nil
}

// feetAndInches: "5'6 72", a small number run onto a foot mark with more to come.
func feetAndInches(ts []token, i int) bool {
	a, b := ts[i-1], ts[i]
	return a.depth == unit.Foot && b.kind == number && b.role == unknown && b.value.Value < 12 && hasNumber(ts[i+1:])
}

// dashPairs splits "10-68 15-66 20-58", a depth and its temperature each; nil when
// the line is anything else.
func dashPairs(ts []token) [][]token {
	if len(ts)%3 != 0 {
		return nil
	}
	var out [][]token
	for i := 0; i < len(ts); i += 3 {
		a, d, b := ts[i], ts[i+1], ts[i+2]
		if a.kind != number || d.kind != dash || b.kind != number || b.minus || a.role != unknown || b.role != unknown ||
			i > 0 && a.value.Value <= ts[i-3].value.Value {
			return nil
		}
		out = append(out, ts[i:i+3])
	}
	return out
}

func several(pieces [][]token, ranges bool) ([]entry, bool) {
	if len(pieces) < 2 {
		return nil, false
	}
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

// beginsRemark: the dashes of "15 ft 66 -- weeds here" part a reading from words about
// it; those of "15 ft -- lost it" stand for a reading that was not taken.
func beginsRemark(ts []token, i int) bool {
	if countNumbers(ts[:i]) < 2 || strings.Trim(ts[i].text, "-") != "" || i+1 == len(ts) {
		return false
	}
	var rest []string
	counts := true
	for n, t := range ts[i+1:] {
		rest = append(rest, t.text)
		counts = counts && (t.kind != number || t.counted || n > 0 && t.role == otherRole)
	}
	return counts || fishy().MatchString(strings.Join(rest, " "))
}

// parseEntry reads tokens as one reading.
func parseEntry(ts []token, ranges bool) (entry, error) {
	var e entry
	ts = e.cutRemark(slices.Clone(ts))
	giveRoles(ts)
	if ranges {
		if err := e.ranges(ts); err != nil {
			return e, err
		}
	}
	for i := range ts {
		if err := e.token(ts, i); err != nil {
			return e, err
		}
	}
	return e, e.resolve()
}

// cutRemark takes the words behind dashes, where they are a remark, off a reading.
func (e *entry) cutRemark(ts []token) []token {
	for i := range ts {
		ts[i].at = i
	}
	for i, t := range ts {
		if t.kind == missing && beginsRemark(ts, i) {
			for _, word := range ts[i+1:] {
				e.remarks = append(e.remarks, word.text)
			}
			return ts[:i]
		}
	}
	return ts
}

// token takes one token of a reading. Those that only say what a number beside them is
// have had their say.
func (e *entry) token(ts []token, i int) error {
	t, last := ts[i], i == len(ts)-1
	switch t.kind {
	case surface:
		e.surface, e.surfaceAt = true, i
	case bottom:
		e.bottom = true
	case ditto:
		e.same = true
	case missing:
		e.missing = true
	case reread:
		e.repeats = true
	case dash:
		e.missing = e.missing || last && countNumbers(ts) == 1
	case mark:
		e.same = e.same || last && t.text == "="
	case beyond:
		return errors.New("> or < leaves the depth or the temperature open: write the number that was read")
	case otherWord:
		return e.word(ts, i)
	case number:
		if e.isRemark(t) {
			e.remarks = append(e.remarks, t.text)
			return nil
		}
		return e.number(ts, i)
	}
	return nil
}

// word takes a word that is not understood: a remark behind the numbers or in brackets.
func (e *entry) word(ts []token, i int) error {
	numbers, behind := countNumbers(ts), countNumbers(ts[i:])
	switch t := ts[i]; {
	case t.text == "f" && i == 0 && numbers > 0:
		return errors.New(`"f" may be the surface, or Fahrenheit with the depth missing: write "surf 74" or "15 ft 74 F"`)
	case !t.inParen && (behind > 0 || numbers == 0 && !e.surface && !e.bottom):
		return fmt.Errorf("%q is not understood", t.text)
	default:
		e.remarks = append(e.remarks, t.text)
	}
	return nil
}

// isRemark reports whether a number belongs to a remark and not to the reading: "(2 fish)".
func (e *entry) isRemark(t token) bool {
	if t.role != unknown {
		return t.role == otherRole
	}
	before := len(e.depths) + len(e.temps) + len(e.free)
	return t.inParen && t.worded || t.counted && (before >= 2 || before == 1 && e.surface)
}

func countNumbers(ts []token) (n int) {
	for _, t := range ts {
		if t.kind == number {
			n++
		}
	}
	return n
}
