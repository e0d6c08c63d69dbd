package light

import (
	"regexp"
	"strings"
	"unicode"
)

// kind is what a word of the sky text speaks of; several may be set.
type kind uint8

const (
	low    kind = 1 << iota // the sun is low or down
	bright                  // the sun shines
	cloud                   // the sun is hidden
	mixed                   // some of both
	chop                    // waves break up the light
	calm                    // a smooth surface

	nothing kind = 0
)

// word is the beginning of a word, or of a pair of words, what it speaks of, and what
// it speaks of after "no".
type word struct {
	begins  string
	is, not kind
}

// words are those that are understood. The longest that fits is taken, so that a longer
// one may also take words out: a rainbow is no rain.
var words = []word{
	{"dusk", low, nothing}, {"dawn", low, nothing}, {"twili", low, nothing}, {"daybreak", low, nothing},
	{"sunris", low, nothing}, {"sunset", low, nothing}, {"sundown", low, nothing}, {"sunup", low, nothing},
	{"sun low", low, nothing}, {"low sun", low, nothing}, {"sun down", low, nothing},
	{"first light", low, nothing}, {"last light", low, nothing}, {"evening", low, nothing},
	{"night", low, nothing}, {"nite", low, nothing}, {"midnight", low, nothing}, {"last night", nothing, nothing},
	{"moonli", low, nothing}, {"dark", low, nothing}, {"dark cloud", cloud, nothing}, {"dark gr", cloud, nothing},

	{"sun", bright, cloud}, {"sunday", nothing, nothing},
	{"sunless", cloud, nothing}, {"sunshower", mixed, nothing},
	{"clear", bright, mixed}, {"cleer", bright, mixed}, {"clr", bright, mixed}, {"clearing", mixed, nothing},
	{"bright", bright, mixed}, {"brite", bright, mixed}, {"blue sk", bright, mixed}, {"bluebird", bright, mixed},

	{"overc", cloud, mixed}, {"over cast", cloud, mixed}, {"ovrc", cloud, mixed}, {"ovc", cloud, mixed},
	{"cloud", cloud, bright}, {"clowd", cloud, bright}, {"cldy", cloud, bright}, {"cloudless", bright, mixed},
	{"high cloud", mixed, nothing}, {"light cloud", mixed, nothing},
	{"gray", cloud, mixed}, {"grey", cloud, mixed},
	{"dull", cloud, nothing}, {"gloom", cloud, nothing}, {"fog", cloud, nothing}, {"haz", mixed, nothing}, {"smok", mixed, nothing},
	{"rain", cloud, nothing}, {"rainbow", nothing, nothing}, {"drizz", cloud, nothing}, {"shower", cloud, nothing},
	{"snow", cloud, nothing}, {"sleet", cloud, nothing}, {"hail", cloud, nothing}, {"storm", cloud, nothing}, {"thunder", cloud, nothing},

	{"chop", chop, calm}, {"whitec", chop, nothing}, {"white cap", chop, nothing}, {"wave", chop, calm}, {"wavy", chop, nothing},
	{"rough", chop, nothing}, {"ripple", chop, calm}, {"riffle", chop, calm}, {"windy", chop, nothing}, {"wind", nothing, calm},
	{"calm", calm, nothing}, {"glass", calm, nothing}, {"mirror", calm, nothing}, {"windless", calm, nothing},
}

// modifier changes the next word of its clause.
type modifier uint8

const (
	plain modifier = iota
	no             // turns it round
	part           // makes sun or cloud some of both
	again          // as the word before it: no wind or cloud
)

var modifiers = map[string]modifier{
	"no": no, "not": no, "without": no, "zero": no, "or": again, "nor": again,
	"partly": part, "part": part, "partial": part, "partially": part, "ptly": part, "some": part,
	"few": part, "half": part, "scattered": part, "broken": part, "patchy": part, "occasional": part,
	"variable": part, "intermittent": part, "chance": part, "thin": part,
}

// under is what the word speaks of after a modifier.
func (w word) under(m modifier) kind {
	switch {
	case m == no:
		return w.not
	case m == part && w.is&(bright|cloud) != 0:
		return mixed
	}
	return w.is
}

// cover is a share of the sky: 40 %, 4/8.
var cover = regexp.MustCompile(`([0-9]+) ?(?:%|/ ?([0-9]+))`)

// share puts a word in place of a share of the sky.
func share(s string) string {
	m := cover.FindStringSubmatch(s)
	switch of := m[2]; {
	case strings.Trim(m[1], "0") == "":
		return " no "
	case m[1] == of || of == "" && m[1] == "100":
		return " "
	}
	return " part "
}

// read gathers what a sky text speaks of. Words that are not known say nothing.
func read(sky string) kind {
	var all kind
	sky = cover.ReplaceAllStringFunc(strings.ToLower(sky), share)
	clauses := strings.FieldsFunc(sky, func(r rune) bool { return strings.ContainsRune(",;.", r) })
	for _, clause := range clauses {
		tokens := strings.FieldsFunc(clause, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		var now, last modifier
		for len(tokens) > 0 {
			w, n := find(tokens)
			switch m := modifiers[tokens[0]]; {
			case n > 0:
				all |= w.under(now)
				now, last = plain, now
			case m == again:
				now = last
			case m != plain:
				now = m
			}
			tokens = tokens[max(n, 1):]
		}
	}
	return all
}

// find looks up the first one or two tokens, and says how many of them the word takes:
// 0 where it is not known.
func find(tokens []string) (found word, n int) {
	text := strings.Join(tokens[:min(2, len(tokens))], " ")
	for _, w := range words {
		if len(w.begins) > len(found.begins) && strings.HasPrefix(text, w.begins) {
			found, n = w, 1+strings.Count(w.begins, " ")
		}
	}
	return found, n
}
