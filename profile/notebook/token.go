package notebook

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"coldseam/profile/unit"
)

// kind is what a token is.
type kind int

const (
	number     kind = iota
	mark            // a separator: / , ; | = : → tab .. ( )
	dash            // - between or before numbers
	atSign          // @ or the word at
	surface         // surf, top, skin
	bottom          // bottom, mud
	ditto           // -do-, ", same
	missing         // x, n/r, missed
	about           // ~, abt, ?
	reread          // reread, again
	span            // to, down to
	plusMinus       // +-
	tempWord        // temp, t
	depthWord       // depth, d
	oxygenWord      // do, o2
	filler          // all, is, deg
	beyond          // > or <
	otherWord       // any other word
)

// role is what a number is known to be by its unit or by a word beside it.
type role int

const (
	unknown role = iota
	depthRole
	tempRole
	oxygenRole
	percentRole
	otherRole // an hour, a wind, a mass: no number of a reading
)

// token is one number, word or sign of a line.
type token struct {
	kind    kind
	text    string
	value   unit.Number
	role    role
	depth   unit.Length
	temp    unit.Temperature
	approx  bool
	stated  bool // oxygen: the unit mg/L stands beside the number itself or above its column
	worded  bool // a word that is not understood follows: "73 windy"
	counted bool // and it is one of things that are counted: "2 fish"
	minus   bool // a dash stood before the number, with a blank before that and none between
	inParen bool
	spaced  bool // a blank stood before it
	at      int  // its place in the piece
}

var words = map[string]kind{
	"surf": surface, "surface": surface, "sfc": surface, "srf": surface, "sur": surface, "s": surface, "top": surface, "skin": surface,
	"bottom": bottom, "btm": bottom, "bot": bottom, "b": bottom, "mud": bottom, "silt": bottom, "bttm": bottom, "fond": bottom,
	"ditto": ditto, "same": ditto, "idem": ditto,
	"x": missing, "xx": missing, "nr": missing, "na": missing, "n/r": missing, "n/a": missing, "missed": missing, "missing": missing, "skipped": missing, "none": missing,
	"abt": about, "about": about, "approx": about, "approximately": about, "ca": about, "circa": about, "around": about, "roughly": about, "maybe": about,
	"reread": reread, "again": reread, "recheck": reread, "repeat": reread, "repeated": reread, "rechecked": reread, "re-read": reread,
	"to": span, "thru": span, "through": span, "until": span, "till": span,
	"at":   atSign,
	"temp": tempWord, "temperature": tempWord, "t": tempWord, "temp.": tempWord,
	"depth": depthWord, "d": depthWord, "deep": filler,
	"do": oxygenWord, "o2": oxygenWord, "oxygen": oxygenWord, "d.o": oxygenWord, "dissolved": filler,
	"all": filler, "is": filler, "was": filler, "reads": filler, "water": filler, "down": filler, "from": filler, "and": filler,
}

// tokens cuts a clean line into tokens. comma says whether a comma between two
// digits is a decimal mark. Every character ends up in some token, so nothing is
// lost.
func tokens(line string, comma bool) []token {
	var out []token
	depthOfParen := 0
	add := func(t token) {
		t.inParen = depthOfParen > 0
		out = append(out, t)
	}
	spaced := true
	for rest := line; rest != ""; {
		r, size := utf8.DecodeRuneInString(rest)
		if r == ' ' {
			rest, spaced = rest[1:], true
			continue
		}
		t, length := token{kind: mark, text: rest[:size]}, size
		switch {
		case strings.HasPrefix(rest, "-do-"):
			t.kind, length = ditto, 4
		case strings.HasPrefix(rest, "--"):
			t.kind, length = missing, len(rest)-len(strings.TrimLeft(rest, "-"))
		case strings.HasPrefix(rest, ".."):
			length = len(rest) - len(strings.TrimLeft(rest, "."))
		case strings.HasPrefix(rest, "+-"):
			t.kind, length = plusMinus, 2
		case r >= '0' && r <= '9' || r == '.' && len(rest) > 1 && isDigit(rest[1]) && !(afterWord(out) && !spaced):
			n, after, ok := unit.ScanNumber(rest, comma)
			if !ok { // digits without end
				t.kind, length = otherWord, len(rest)
				break
			}
			t.kind, t.value, length = number, n, len(rest)-len(after)
		case unicode.IsLetter(r):
			length = wordLength(rest)
			var known bool
			if t.kind, known = words[rest[:length]]; !known {
				t.kind = otherWord
			}
			if v, ok := numberWord(rest[:length]); ok {
				t.kind, t.value = number, unit.Number{Value: float64(v), Step: 1}
			}
		case r == '-':
			t.kind = dash
		case r == '@':
			t.kind = atSign
		case r == '~' || r == '?':
			t.kind = about
		case r == '>' || r == '<':
			t.kind = beyond
		case r == '"':
			t.kind = ditto
		case strings.ContainsRune("/,;|=:→\t.()'°%[]*+", r):
		default:
			t.kind = otherWord
		}
		t.text, t.spaced = rest[:length], spaced
		if r == ')' || r == ']' {
			depthOfParen = max(0, depthOfParen-1)
		}
		add(t)
		if r == '(' || r == '[' {
			depthOfParen++
		}
		rest, spaced = rest[length:], false
	}
	return join(out)
}

// wordLength is the length of the word at the start of s: letters, with the few
// signs that stand inside a word (n/r, mg/l, o2).
func wordLength(s string) int {
	for _, w := range []string{"n/r", "n/a", "mg/l", "o2", "d.o", "re-read"} {
		if strings.HasPrefix(s, w) && (len(s) == len(w) || !unicode.IsLetter(rune(s[len(w)]))) {
			return len(w)
		}
	}
	for i, r := range s {
		if !unicode.IsLetter(r) {
			return i
		}
	}
	return len(s)
}

// join gives numbers the units, signs and words that stand beside them, and drops
// what then has no meaning of its own.
func join(in []token) []token {
	var out []token
	for i := 0; i < len(in); i++ {
		t := in[i]
		if t.kind != number {
			out = append(out, t)
			continue
		}
		if n := len(out); n > 0 {
			switch prev := out[n-1]; {
			case prev.kind == about:
				t.approx, t.spaced, out = true, t.spaced || prev.spaced, out[:n-1]
			case prev.kind == dash && prev.spaced && !t.spaced:
				t.minus = true
			case prev.kind == number && t.text != "" && isTens(prev) && isUnits(t): // seventy four
				out[n-1].value.Value += t.value.Value
				continue
			}
		}
		i += attach(&t, in[i+1:])
		t.worded = i+1 < len(in) && in[i+1].kind == otherWord
		t.counted = t.worded && countWord().MatchString(in[i+1].text)
		out = append(out, t)
	}
	return out
}

// afterWord reports whether a word was the last token: the point in "5ft.72" ends
// the word and does not begin a number.
func afterWord(out []token) bool {
	if len(out) == 0 {
		return false
	}
	r, _ := utf8.DecodeLastRuneInString(out[len(out)-1].text)
	return unicode.IsLetter(r)
}

func isTens(t token) bool {
	v, ok := numberWord(t.text)
	return ok && v >= 20 && t.role == unknown
}

func isUnits(t token) bool {
	v, ok := numberWord(t.text)
	return ok && v > 0 && v < 10
}

// attach gives a number the unit that follows it, and returns how many tokens that
// took.
func attach(t *token, after []token) int {
	used := 0
	at := func(i int) token {
		if i < len(after) {
			return after[i]
		}
		return token{kind: mark}
	}
	for ; at(used).text == "." && !at(used).spaced; used++ { // "18."
	}
	next := at(used)
	switch {
	case next.text == "'":
		t.role, t.depth = depthRole, unit.Foot
		used++
		if n := at(used); n.kind == number && at(used+1).text == `"` && n.value.Value < 12 { // 12'6"
			t.value.Value += n.value.Value / 12
			used += 2
		}
	case next.text == `"` && !next.spaced && hasNumber(after[used:]): // 18" 66; without another number it is a ditto mark
		t.role, t.depth = depthRole, unit.Inch
		used++
	case next.text == "°" || next.text == "deg" || next.text == "degs" || next.text == "degrees":
		t.role = tempRole
		used++
		if at(used).text == "." {
			used++
		}
		if u, ok := unit.TemperatureNamed(at(used).text); ok && at(used).kind == otherWord {
			t.temp = u
			used++
		}
	case next.text == "%":
		t.role = percentRole
		used++
	case next.text == "mg/l" || next.text == "ppm" || next.text == "mgl":
		t.role, t.stated = oxygenRole, true
		used++
	case next.kind == otherWord && otherUnit[next.text]:
		t.role = otherRole
		used++
	case next.kind == otherWord || next.text == "c" || next.text == "f":
		if u, ok := unit.TemperatureNamed(next.text); ok {
			t.role, t.temp = tempRole, u
			used++
		} else if u, ok := lengthWord(next.text); ok {
			t.role, t.depth = depthRole, u
			used++
			if n := at(used); u == unit.Foot && n.kind == number && n.value.Value < 12 { // 12 ft 6 in
				if in, ok := unit.LengthNamed(at(used + 1).text); ok && in == unit.Inch {
					t.value.Value += n.value.Value / 12
					used += 2
				}
			}
		}
	}
	for {
		switch n := at(used); {
		case n.text == "?":
			t.approx = true
		case n.text == "." && !n.spaced:
		default:
			return used
		}
		used++
	}
}

// otherUnit are the units of numbers that belong to no reading.
var otherUnit = wordSet("mph kts kt knots knot kn kph kmh am pm hr hrs h hour hours min mins minute minutes sec secs lb lbs pound pounds oz kg g gr wt st nd rd th days day hp mb hpa")

// countWord matches words of things that are counted: most are plurals.
var countWord = lazy(`^(?:fish|trout|bass|perch|walleye|pike|grayling|char|bluegill|crappie|salmon|more|nice|good|small|big|people|on|casts?|takes?|\pL{2,}[^s\W]s)$`)

// lengthWord knows the units of length and the arm-lengths that a line is paid out
// by; of those only the angler knows the size.
func lengthWord(s string) (unit.Length, bool) {
	switch s {
	case "arm", "arms", "pull", "pulls", "armlengths", "lengths":
		return Pull, true
	}
	return unit.LengthNamed(s)
}

// Pull is the arm's length by which an unmarked line is paid out; its size is given
// by the header key "pull".
const Pull unit.Length = 100

func hasNumber(ts []token) bool {
	for _, t := range ts {
		if t.kind == number {
			return true
		}
	}
	return false
}
