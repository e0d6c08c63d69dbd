package book

import (
	"strings"

	"coldseam/profile/notebook"
)

// Query is what is asked of drops: all that is given must hold; what is "" or nil is not
// asked.
type Query struct {
	Water, Spot string                 // parts of names, whatever their case
	Month       string                 // "2026-07", or of any year "07"
	Fish        func(name string) bool // is it a fish that is meant
	Words       []string               // that stand somewhere on the page, whatever their case
}

// asks reports whether a drop is asked for; text gives its page.
func (q Query) asks(is notebook.Glance, text func() string) bool {
	switch {
	case !holds(is.Water, q.Water), !holds(is.Spot, q.Spot):
		return false
	case q.Month != "" && (len(is.Date) < 7 || !strings.HasSuffix(is.Date[:7], q.Month)):
		return false
	case q.Fish != nil && !q.Fish(is.For):
		return false
	}
	for _, w := range q.Words {
		if !holds(text(), w) {
			return false
		}
	}
	return true
}

// holds reports whether a text holds a word.
func holds(text, word string) bool {
	return word == "" || strings.Contains(strings.ToLower(text), strings.ToLower(word))
}
