package fish

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"
)

// Unknown is the error of Find.
type Unknown struct{ said string }

func (u Unknown) Error() string { return u.said }

// longestName is more letters than any name of the table has; what is longer is a
// pasted line, not a misspelt fish, and is not compared letter by letter.
const longestName = 40

// Find returns the fish of the table of that key, name, scientific name or alias,
// whatever the case, spaces and hyphens, one or many ("Lake-Trout", "walleyes"). The
// error for an unknown name suggests the fish whose names hold the word, or else those
// nearest in spelling.
func Find(name string) (Fish, error) { return FindIn(nil, name) }

// FindIn is Find among an angler's own fishes and then the table: an own fish of that
// name wins.
func FindIn(own []Fish, name string) (Fish, error) {
	word := fold(name)
	if word == "" {
		return Fish{}, Unknown{"no fish named"}
	}
	if f, ok := Known(own, name); ok {
		return f, nil
	}
	if near := suggest(All(own...), strings.TrimSuffix(word, "s")); len(near) > 0 {
		return Fish{}, Unknown{fmt.Sprintf("no fish %q here, did you mean %s?", short(name), either(near))}
	}
	return Fish{}, Unknown{fmt.Sprintf("no fish %q here", short(name))}
}

// Known is FindIn without a suggestion: for the words of a whole page, few of which name
// a fish.
func Known(own []Fish, name string) (f Fish, ok bool) {
	word := fold(name)
	if word == "" {
		return f, false
	}
	for _, w := range []string{word, strings.TrimSuffix(word, "s")} {
		for _, f := range own {
			if slices.Contains(names(f), w) {
				return f, true
			}
		}
		f, ok := byName()[w]
		if ok && !slices.ContainsFunc(own, func(o Fish) bool { return o.Key == f.Key }) { // which replaces it
			return f, true
		}
	}
	return Fish{}, false
}

// byName are the fish of the table by all their names, folded: a name that two have is the
// first one's.
var byName = sync.OnceValue(func() map[string]Fish {
	m := map[string]Fish{}
	for _, f := range All() {
		for _, n := range names(f) {
			if _, taken := m[n]; !taken {
				m[n] = f
			}
		}
	}
	return m
})

// fold leaves only what tells names apart: lower-case letters and digits.
func fold(s string) string {
	return strings.Map(func(r rune) rune {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, s)
}

// names are all the names of f, folded.
func names(f Fish) []string {
	var ns []string
	for _, n := range append([]string{f.Key, f.Name, f.Scientific}, f.Aliases...) {
		if n = fold(n); n != "" {
			ns = append(ns, n)
		}
	}
	return ns
}

// Shares gives the first name or alias of f that means g too; "" where none does.
func (f Fish) Shares(g Fish) string {
	of := names(g)
	for _, n := range append([]string{f.Name, f.Key, f.Scientific}, f.Aliases...) {
		if slices.Contains(of, fold(n)) {
			return n
		}
	}
	return ""
}

// suggest returns the keys of the fish that a folded word may have meant: those
// with the word inside a name ("trout", "bass"), in the table's order, or else
// those nearest in spelling, if about two letters in three are right.
func suggest(all []Fish, word string) []string {
	letters := []rune(word)
	if len(letters) > longestName {
		return nil
	}
	var holding, nearest []string
	best := max(1, len(letters)/3)
	for _, f := range all {
		holds, d := false, best+1
		for _, n := range names(f) {
			holds = holds || len(letters) >= 3 && strings.Contains(n, word)
			d = min(d, Distance(letters, []rune(n)))
		}
		if holds {
			holding = append(holding, f.Key)
		}
		if d < best {
			best, nearest = d, nil
		}
		if d == best {
			nearest = append(nearest, f.Key)
		}
	}
	if len(holding) > 0 {
		return holding
	}
	return nearest
}

// Distance counts the letters to put in, take out, change or swap with the next
// one to turn a into b.
func Distance(a, b []rune) int {
	// Three rows of the table of prefixes are enough: a swap looks two back.
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := last[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(change, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}

// short cuts a pasted line to what an error can show.
func short(s string) string {
	if r := []rune(s); len(r) > longestName {
		return string(r[:longestName]) + "..."
	}
	return s
}

// either joins words as a choice, "a, b or c".
func either(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " or " + words[last]
}
