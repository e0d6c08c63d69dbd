package weight

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"coldseam/profile/unit"
)

// found is what was found in a text.
type found struct {
	metal     string
	diameterM float64
	bead      bool // it is a fly on a bead: "bead" or "hook" was written
	hook      int  // its size, 0 where it was not written
	isShot    bool
	shot      string
	number    string // after "#", "no.", "size", "hook" or "shot"
}

// words takes a text apart. What it does not know is an error.
func (f *found) words(text string) error {
	s, marker := strings.ToLower(text), false // marker: the word before may have a number
	for {
		if s = strings.TrimLeft(s, " ,"); s == "" {
			return f.numbered()
		}
		var err error
		if n := sizeAhead(s); n > 0 && marker {
			s, err = f.sized(s[:n], s[n:])
			marker = false
		} else if n, rest, ok := unit.ScanNumber(s, true); ok {
			s, err = f.measured(n.Value, s[:len(s)-len(rest)], rest)
			marker = false
		} else {
			s, marker, err = f.word(s)
		}
		if err != nil {
			return err
		}
	}
}

// sized notes the number of a hook or a shot and gives the text after it.
func (f *found) sized(number, rest string) (string, error) {
	if f.number != "" {
		return "", fmt.Errorf("%q is one number too many: %s", number, examples)
	}
	f.number = number
	return rest, nil
}

// measured notes a bead's diameter, whose unit begins rest, and gives the text after
// the unit.
func (f *found) measured(value float64, written, rest string) (string, error) {
	name, after := cutWord(strings.TrimLeft(rest, " -"))
	u, ok := unit.LengthNamed(name)
	if !ok || (u != unit.Millimetre && u != unit.Inch) {
		return "", fmt.Errorf("%q has no unit that is known: %s", written, examples)
	}
	if f.diameterM != 0 {
		return "", fmt.Errorf("two diameters: name one bead, %s", examples)
	}
	if f.diameterM = u.Metres(value); f.diameterM == 0 {
		return "", errDiameter
	}
	return strings.TrimPrefix(after, "."), nil
}

// word notes the word that a text begins with and gives the text after it, and
// whether a number after it is a size.
func (f *found) word(s string) (rest string, marker bool, err error) {
	name, rest := cutWord(s)
	if next, size := utf8.DecodeRuneInString(rest); next == '-' && len(rest) > size { // bead-head
		rest = rest[size:]
	}
	if _, ok := MetalDensity(name); ok {
		if f.metal != "" && f.metal != name {
			return "", false, fmt.Errorf("two metals, %s and %s: name one bead, %s", f.metal, name, examples)
		}
		f.metal = name
		return rest, false, nil
	}
	switch name {
	case "ssg", "aaa", "bb":
		if f.shot != "" {
			return "", false, twoShots(f.shot, name)
		}
		f.shot, f.isShot = name, true
	case "shot", "shots":
		f.isShot, marker = true, true
	case "hook":
		f.bead, marker = true, true
	case "bead", "beads", "beadhead":
		f.bead = true
	case "#", "size":
		marker = true
	case "no":
		rest = strings.TrimLeft(rest, ". ")
		marker = leadingDigits(rest) > 0
		if !marker { // "no bead" is no bead
			err = fmt.Errorf("%q is not understood: %s", name, examples)
		}
	case "split", "head", "on", "a", "with":
	default:
		err = fmt.Errorf("%q is not understood: %s", name, examples)
	}
	return rest, marker, err
}

// numbered settles what the number is the number of.
func (f *found) numbered() error {
	switch {
	case f.number == "":
	case f.isShot && !f.bead:
		if f.shot != "" {
			return twoShots(f.shot, f.number)
		}
		f.shot = f.number
	default:
		size, err := strconv.Atoi(f.number)
		if err != nil || size < largestHook || size > smallestHook {
			return hookError(f.number)
		}
		f.hook = size
	}
	return nil
}

func twoShots(a, b string) error {
	return fmt.Errorf("two shots, %s and %s: name one", strings.ToUpper(a), strings.ToUpper(b))
}

var errDiameter = errors.New("a bead measures 1 to 10 mm across, e.g. 3.3 mm or 1/8 in")

// sizeAhead is how many digits of a size a text begins with, 0 where it begins with
// the diameter of "size 3.3 mm" or with no number.
func sizeAhead(s string) int {
	n := leadingDigits(s)
	rest := s[n:]
	if strings.HasPrefix(rest, ".") || strings.HasPrefix(rest, "/") || strings.HasPrefix(rest, ",") && leadingDigits(rest[1:]) > 0 {
		return 0
	}
	name, _ := cutWord(strings.TrimLeft(rest, " -"))
	if u, ok := unit.LengthNamed(name); ok && (u == unit.Millimetre || u == unit.Inch) {
		return 0
	}
	return n
}

// leadingDigits is how many digits a text begins with.
func leadingDigits(s string) int {
	return len(s) - len(strings.TrimLeft(s, "0123456789"))
}

// cutWord takes one word of letters, or one sign, off the start of a text.
func cutWord(s string) (word, rest string) {
	n := len(s) - len(strings.TrimLeftFunc(s, unicode.IsLetter))
	if n == 0 {
		_, n = utf8.DecodeRuneInString(s)
	}
	return s[:n], s[n:]
}
