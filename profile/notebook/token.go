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
	spaced := true
	for rest := line; rest != ""; {
		if rest[0] == ' ' {
			rest, spaced = rest[1:], true
			continue
		}
		t := firstToken(rest, comma, !afterWord(out) || spaced)
		t.spaced = spaced
		if t.text == ")" || t.text == "]" {
			depthOfParen = max(0, depthOfParen-1)
		}
		t.inParen = depthOfParen > 0
		if t.text == "(" || t.text == "[" {
			depthOfParen++
		}
		out = append(out, t)
		rest, spaced = rest[len(t.text):], false
	}
	return join(out)
}

// signKinds are the signs of one character that mean something.
var signKinds = map[rune]kind{
	'-': dash, '@': atSign, '~': about, '?': about, '>': beyond, '<': beyond, '"': ditto,
	'/': mark, ',': mark, ';': mark, '|': mark, '=': mark, ':': mark, '→': mark, '\t': mark, '.': mark,
	'(': mark, ')': mark, '\'': mark, '°': mark, '%': mark, '[': mark, ']': mark, '*': mark, '+': mark,
}

// firstToken is the token at the start of s. pointBegins says that a point before a digit
// begins a number there.
func firstToken(s string, comma, pointBegins bool) token {
	r, size := utf8.DecodeRuneInString(s)
	switch {
	case strings.HasPrefix(s, "-do-"):
		return token{kind: ditto, text: s[:4]}
	case strings.HasPrefix(s, "--"):
		return token{kind: missing, text: s[:len(s)-len(strings.TrimLeft(s, "-"))]}
	case strings.HasPrefix(s, ".."):
		return token{kind: mark, text: s[:len(s)-len(strings.TrimLeft(s, "."))]}
	case strings.HasPrefix(s, "+-"):
		return token{kind: plusMinus, text: s[:2]}
	case isDigit(s[0]) || pointBegins && r == '.' && len(s) > 1 && isDigit(s[1]):
		n, after, ok := unit.ScanNumber(s, comma)
		if !ok { // digits without end
			return token{kind: otherWord, text: s}
		}
		return token{kind: number, value: n, text: s[:len(s)-len(after)]}
	case unicode.IsLetter(r):
		return wordToken(s[:wordLength(s)])
	}
	if k, ok := signKinds[r]; ok {
		return token{kind: k, text: s[:size]}
	}
	return token{kind: otherWord, text: s[:size]}
}

// wordToken is what a word is: of a reading's, a number, or another.
func wordToken(w string) token {
	if v, ok := numberWord(w); ok {
		return token{kind: number, value: unit.Number{Value: float64(v), Step: 1}, text: w}
	}
	if k, ok := words[w]; ok {
		return token{kind: k, text: w}
	}
	return token{kind: otherWord, text: w}
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
	for textAt(after, used) == "." && !after[used].spaced { // "18."
		used++
	}
	used += t.takeUnit(after[used:])
	for ; used < len(after); used++ {
		switch n := after[used]; {
		case n.text == "?":
			t.approx = true
		case n.text != "." || n.spaced:
			return used
		}
	}
	return used
}

// textAt is the text of the i-th token, empty beyond the last.
func textAt(ts []token, i int) string {
	if i >= len(ts) {
		return ""
	}
	return ts[i].text
}

// takeUnit gives a number the unit that stands right behind it, and returns how many
// tokens that is.
func (t *token) takeUnit(after []token) int {
	if len(after) == 0 {
		return 0
	}
	switch next := after[0]; next.text {
	case "'":
		t.role, t.depth = depthRole, unit.Foot
		return 1 + t.takeInches(after[1:], func(name string) bool { return name == `"` }) // 12'6"
	case `"`:
		if next.spaced || !hasNumber(after) { // without another number it is a ditto mark
			return 0
		}
		t.role, t.depth = depthRole, unit.Inch // 18" 66
		return 1
	case "°", "deg", "degs", "degrees":
		t.role = tempRole
		return 1 + t.takeScale(after[1:])
	case "%":
		t.role = percentRole
		return 1
	case "mg/l", "ppm", "mgl":
		t.role, t.stated = oxygenRole, true
		return 1
	default:
		if next.kind == otherWord {
			return t.takeNamed(after)
		}
	}
	return 0
}

// takeScale takes the letter behind a degree sign.
func (t *token) takeScale(after []token) (used int) {
	if textAt(after, 0) == "." {
		used = 1
	}
	if u, ok := unit.TemperatureNamed(textAt(after, used)); ok && after[used].kind == otherWord {
		t.temp = u
		used++
	}
	return used
}

// takeNamed takes a unit that is a word.
func (t *token) takeNamed(after []token) int {
	name := after[0].text
	if otherUnit[name] {
		t.role = otherRole
		return 1
	}
	if u, ok := unit.TemperatureNamed(name); ok {
		t.role, t.temp = tempRole, u
		return 1
	}
	u, ok := lengthWord(name)
	if !ok {
		return 0
	}
	t.role, t.depth = depthRole, u
	if u != unit.Foot {
		return 1
	}
	return 1 + t.takeInches(after[1:], func(name string) bool { // 12 ft 6 in
		in, _ := unit.LengthNamed(name)
		return in == unit.Inch
	})
}

// takeInches adds the inches behind feet.
func (t *token) takeInches(after []token, isInch func(name string) bool) int {
	if len(after) < 2 || after[0].kind != number || after[0].value.Value >= 12 || !isInch(after[1].text) {
		return 0
	}
	t.value.Value += after[0].value.Value / 12
	return 2
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
