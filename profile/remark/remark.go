// Package remark reads what anglers note in a few words of the sky, of the mud on the
// anchor and of the water's colour: "no thunder this morning, thunder now". It knows
// words, a no before them, and clauses; no grammar. What it does not know says nothing,
// with one exception: a word of danger counts unless a no stands right before it.
//
// English is read, and the commonest words of French.
package remark

import (
	"regexp"
	"strings"
	"sync"
	"unicode"
)

// Facts are what a text speaks of, one bit each.
type Facts uint16

// The facts.
const (
	Low        Facts = 1 << iota // the sun is low or down
	Bright                       // the sun shines
	Cloud                        // the sun is hidden
	Mixed                        // some of both
	Chop                         // waves break up the light
	Calm                         // a smooth surface
	Whitecaps                    // waves that break: too much for a small boat
	Thunder                      // thunder, lightning or a storm
	BlackMud                     // mud on the anchor is black or smells
	ClearWater                   // the water is clear
	GreenWater                   // it is green with algae

	none   Facts = 0
	danger       = Whitecaps | Thunder | BlackMud
)

// Has reports whether any of some facts is among them.
func (f Facts) Has(any Facts) bool { return f&any != 0 }

// word is the beginning of a word, or of a pair of words, what it speaks of, and what
// it speaks of after "no".
type word struct {
	begins  string
	is, not Facts
}

// modifier changes the next word of its clause.
type modifier uint8

const (
	plain modifier = iota
	no             // turns it round
	part           // makes sun or cloud some of both
	again          // as the word before it: no wind or cloud
	of             // belongs to the no before it: no sign of thunder
)

var modifiers = map[string]modifier{
	"no": no, "not": no, "without": no, "zero": no, "pas": no, "sans": no, "aucun": no, "ni": again, "or": again, "nor": again,
	"sign": of, "signs": of, "of": of, "any": of, "de": of, "d": of,
	"partly": part, "part": part, "partial": part, "partially": part, "ptly": part, "some": part, "quelques": part,
	"few": part, "half": part, "scattered": part, "broken": part, "patchy": part, "occasional": part,
	"variable": part, "intermittent": part, "chance": part, "thin": part,
}

// under is what the word speaks of after a modifier; near says that nothing unknown
// stands between the two.
func (w word) under(m modifier, near bool) Facts {
	switch {
	case m == no && near:
		return w.not
	case m == no:
		return w.not | w.is&danger
	case m == part && w.is.Has(Bright|Cloud):
		return w.is&^(Bright|Cloud) | Mixed
	}
	return w.is
}

// cover is a share of the sky: 40 %, 4/8.
var cover = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`([0-9]+) ?(?:%|/ ?([0-9]+))`) })

// share puts a word in place of a share of the sky.
func share(s string) string {
	m := cover().FindStringSubmatch(s)
	switch of := m[2]; {
	case strings.Trim(m[1], "0") == "":
		return " no "
	case m[1] == of || of == "" && m[1] == "100":
		return " "
	}
	return " part "
}

// clipped are the ways to write a clipped not.
var clipped = strings.NewReplacer("n't", " not", "n’t", " not")

// read gathers what a text speaks of, by the words of a vocabulary.
func read(text string, words []word) Facts {
	var all Facts
	text = cover().ReplaceAllStringFunc(clipped.Replace(strings.ToLower(text)), share)
	clauses := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",;.", r) })
	for _, clause := range clauses {
		tokens := strings.FieldsFunc(clause, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		var now, last modifier
		near := true
		for len(tokens) > 0 {
			w, n := find(tokens, words)
			switch m := modifiers[tokens[0]]; {
			case n > 0:
				all |= w.under(now, near)
				now, last = plain, now
			case m == again:
				now, near = last, true
			case m == of:
			case m != plain:
				now, near = m, true
			default:
				near = false
			}
			tokens = tokens[max(n, 1):]
		}
	}
	return all
}

// find looks up the first one or two tokens, and says how many of them the word takes:
// 0 where it is not known.
func find(tokens []string, words []word) (found word, n int) {
	text := strings.Join(tokens[:min(2, len(tokens))], " ")
	for _, w := range words {
		if len(w.begins) > len(found.begins) && strings.HasPrefix(text, w.begins) {
			found, n = w, 1+strings.Count(w.begins, " ")
		}
	}
	return found, n
}
