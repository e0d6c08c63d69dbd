package format

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// Parse reads a layout from the text of the settings or of a flag: parts divided by
// commas, each "[name:] what [unit]". Without a name the parts are the line's values in
// their order ("skip, depth ft, temp F"); with names they may come in any order and on
// several lines ("D: depth m, T: temp C"). A unit divided by a whole number is of
// numbers sent without their point ("temp C/100"). "nmea" is a Layout without parts. There
// must be one temperature (temp, word or ohms) and at most one depth, pressure or gauge.
// The error is one line that says what to write.
func Parse(text string) (Layout, error) {
	if strings.EqualFold(strings.TrimSpace(text), nmeaWord) {
		return Layout{}, nil
	}
	var l Layout
	for i, t := range strings.Split(text, ",") {
		if i == maxParts {
			return Layout{}, fmt.Errorf("a layout has at most %d parts", maxParts)
		}
		p, err := parsePart(t)
		if err != nil {
			return Layout{}, err
		}
		l.Parts = append(l.Parts, p)
	}
	if err := l.check(); err != nil {
		return Layout{}, err
	}
	return l, nil
}

func parsePart(t string) (Part, error) {
	var p Part
	name, rest, named := strings.Cut(t, ":")
	if !named {
		name, rest = "", t
	}
	if p.Name = strings.TrimSpace(name); named && p.Name == "" {
		return p, fmt.Errorf("no name before the colon in %s", plain.Quote(t, maxName))
	}
	words := strings.Fields(rest)
	if len(words) == 0 {
		return p, fmt.Errorf("an empty part in the layout: write skip for a value that is not needed")
	}
	found := false
	for i, w := range quantities {
		if strings.EqualFold(words[0], w.word) || strings.EqualFold(words[0], w.also) {
			p.Quantity, found = Quantity(i), true
		}
	}
	if !found {
		return p, fmt.Errorf("%s is not a part of a layout: write depth, temp, pressure, gauge, ohms, word, time or skip", plain.Quote(words[0], maxName))
	}
	p.Unit = strings.Join(words[1:], "")
	if u, div, ok := unitText(p.Unit); ok {
		p.Unit = unitString(u, div)
	}
	if p.Quantity == Ohms && p.Unit == unit.Ohm.String() {
		p.Unit = ""
	}
	return p, nil
}

// unitText reads "C", "C/100" or nothing.
func unitText(s string) (u unit.Unit, div float64, ok bool) {
	if s == "" {
		return unit.None, 1, true
	}
	name, over, divided := strings.Cut(s, "/")
	div = 1
	if divided {
		n, err := strconv.Atoi(over)
		if err != nil || n < 2 || n > maxDivisor || over[0] == '+' {
			return unit.None, 0, false
		}
		div = float64(n)
	}
	u = unitNamed([]byte(name))
	return u, div, u != unit.None && u != unit.Other
}

func unitString(u unit.Unit, div float64) string {
	if u == unit.None {
		return ""
	}
	if div == 1 {
		return u.String()
	}
	return u.String() + "/" + strconv.Itoa(int(div))
}

// check reports the first thing that is wrong with a layout of at least one part.
func (l Layout) check() error {
	if len(l.Parts) > maxParts {
		return fmt.Errorf("a layout has at most %d parts", maxParts)
	}
	given := map[Quantity]int{}
	names := map[string]bool{}
	for _, p := range l.Parts {
		if int(p.Quantity) >= len(quantities) {
			return fmt.Errorf("a part of the layout that is not known")
		}
		if !validName(p.Name) {
			return fmt.Errorf("%s cannot be a name: no comma, no colon, at most %d bytes", plain.Quote(p.Name, maxName), maxName)
		}
		if key := strings.ToLower(p.Name); p.Name != "" {
			if names[key] {
				return fmt.Errorf("the name %s stands twice in the layout", plain.Quote(p.Name, maxName))
			}
			names[key] = true
		}
		if err := p.checkUnit(); err != nil {
			return err
		}
		given[quantities[p.Quantity].gives]++
	}
	switch {
	case given[Temp] == 0:
		return fmt.Errorf("no temperature in the layout: add temp with its unit, word or ohms")
	case given[Temp] > 1:
		return fmt.Errorf("two temperatures in the layout: leave one of temp, word and ohms, and write skip for the other")
	case given[Depth] > 1:
		return fmt.Errorf("two depths in the layout: leave one of depth, pressure and gauge, and write skip for the other")
	case given[Time] > 1:
		return fmt.Errorf("two times in the layout: write skip for one")
	}
	return nil
}

func (p Part) checkUnit() error {
	need := quantities[p.Quantity].needsUnit
	u, div, ok := unitText(p.Unit)
	switch {
	case ok && p.Unit != unitString(u, div), !ok && need == "":
		return fmt.Errorf("%s is not a unit of %v", plain.Quote(p.Unit, maxName), p.Quantity)
	case !ok:
		return fmt.Errorf("%s is not a unit of %v: write %s", plain.Quote(p.Unit, maxName), p.Quantity, need)
	case u == unit.None && need != "":
		return fmt.Errorf("%v needs its unit: write %s", p.Quantity, need)
	case u == unit.None:
		return nil
	}
	if p.Quantity == Skip || !p.Quantity.isIn(u) {
		if need == "" {
			need = "none"
		}
		return fmt.Errorf("%s is not a unit of %v: write %s", plain.Quote(p.Unit, maxName), p.Quantity, need)
	}
	return nil
}

// validName: a name can be written in a layout and printed.
func validName(s string) bool {
	if len(s) > maxName || strings.TrimSpace(s) != s || !utf8.ValidString(s) {
		return false
	}
	for _, c := range s {
		if c == ',' || c == ':' || !plain.Graphic(c) {
			return false
		}
	}
	return true
}
