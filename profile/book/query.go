package book

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// Query is what is asked of drops: all that is given must hold; what is "" or nil is not
// asked.
type Query struct {
	Water, Spot string                 // parts of names, whatever their case
	Month       string                 // "2026-07", or of any year "-07"
	Fish        func(name string) bool // whether a fish that was fished for or caught is the one
	Caught      bool                   // with a catch, or several
	Words       []string               // that stand somewhere on the page, whatever their case
}

// onPage is what is asked for only when the head is not enough.
type onPage struct {
	text    func() string
	catches func() []profile.Catch
}

// asks reports whether a drop is asked for.
func (q Query) asks(is notebook.Glance, page onPage) bool {
	switch {
	case !holds(is.Water, q.Water), !holds(is.Spot, q.Spot):
		return false
	case q.Month != "" && (len(is.Date) < len("2026-07") || !strings.HasSuffix(is.Date[:len("2026-07")], q.Month)):
		return false
	case q.Fish != nil && !q.Fish(is.For) && !q.caught(page.catches()):
		return false
	case q.Caught && len(page.catches()) == 0:
		return false
	}
	for _, w := range q.Words {
		if !holds(page.text(), w) {
			return false
		}
	}
	return true
}

func (q Query) caught(catches []profile.Catch) bool {
	for _, c := range catches {
		if q.Fish(c.Fish) {
			return true
		}
	}
	return false
}

// holds reports whether a text holds a word.
func holds(text, word string) bool {
	return word == "" || strings.Contains(strings.ToLower(text), strings.ToLower(word))
}

// Month reads a month for a Query: "2026-07", or of any year "7" or "july".
func Month(s string) (string, error) {
	s = strings.ToLower(strings.TrimSpace(s))
	if t, err := time.Parse("2006-1", s); err == nil {
		return t.Format("2006-01"), nil
	}
	n, err := strconv.Atoi(s)
	for m := time.January; m <= time.December && err != nil; m++ {
		if len(s) >= 3 && strings.HasPrefix(strings.ToLower(m.String()), s) {
			n, err = int(m), nil
		}
	}
	if err != nil || n < 1 || n > 12 {
		return "", fmt.Errorf("%q is not a month: write e.g. july, 7 or 2026-07", s)
	}
	return fmt.Sprintf("-%02d", n), nil
}
