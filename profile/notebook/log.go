package notebook

import (
	"slices"
	"strings"
)

// logLine is a line of a probe's log: a day and a time of day, or the time alone with its
// seconds, and behind them two numbers or more and no words.
var logLine = lazy(`^(\d{4}-\d{2}-\d{2}|\d{1,2}/\d{1,2}/\d{4})?[t ,;\t]*(\d{1,2}:\d{2}(:\d{2}(?:\.\d+)?)?)z?[ ,;\t]+(-?\d+(?:[.,]\d+)?[ ,;\t]+-?\d[-\d., ;\t]*)$`)

// logged reads a line of a log without its time; under a row of column names the time may
// have a column. The day of the first such line is kept for the drop.
func (r *reader) logged(line int, c string, t *table) (rest string, ok bool) {
	m := logLine().FindStringSubmatch(c)
	if m == nil || m[1] == "" && m[3] == "" {
		return c, false
	}
	if r.logDay == "" && m[1] != "" {
		r.logDay, _ = parseDate(m[1] + " " + m[2]) // a day that may be two is left out
		r.logFrom = line
	}
	if t != nil && t.named("time", "date") {
		return c, true
	}
	return m[4], true
}

// named reports whether the name of a column that is not read holds one of some words.
func (t *table) named(words ...string) bool {
	return slices.ContainsFunc(t.columns, func(c column) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(c.name, w) })
	})
}

// logDate is the day and time of the first line of a log, for a page without a date.
func (r *reader) logDate() []item {
	if r.logDay == "" || r.base.Date != "" || slices.ContainsFunc(r.items, func(it item) bool { return it.header.Key == "date" }) {
		return nil
	}
	r.note(r.logFrom, "date %s taken from the first line", r.logDay)
	return []item{{line: r.logFrom, kind: header, header: Header{Key: "date", Value: r.logDay, Line: r.logFrom, soft: true}}}
}

// cutOff is the last line of a log that was cut off within it, as one is that was copied
// while it was written; -1 where there is none. The other lines, three at least, must all
// be made alike, with as many fields and as many decimals of the last: then a last line
// with fewer of either is no reading, though its numbers could be read as one.
func (r *reader) cutOff() int {
	last := len(r.raw) - 1
	for last >= 0 && clean(r.raw[last]) == "" {
		last--
	}
	if last < 3 || !logSigns().MatchString(clean(r.raw[last])) {
		return -1
	}
	var like fields
	n := 0
	for _, l := range r.raw[:last] {
		c := clean(l)
		if m := logLine().FindStringSubmatch(c); m == nil || m[1] == "" && m[3] == "" {
			continue
		}
		if is := fieldsOf(c); n == 0 {
			like = is
		} else if is != like {
			return -1
		}
		n++
	}
	is := fieldsOf(clean(r.raw[last]))
	begins := is.first == like.first || is.number == 1 && strings.HasPrefix(like.first, is.first)
	if n >= 3 && begins && (is.number < like.number || is.number == like.number && is.decimals < like.decimals) {
		return last
	}
	return -1
}

// logSigns are those of a log's line, whole or cut off.
var logSigns = lazy(`^\d[-\d/:., ;\ttz]*$`)

// fields is how a line is made: its first field with each digit a 9, how many fields it
// has, and how many decimals the last one has.
type fields struct {
	first            string
	number, decimals int
}

func fieldsOf(line string) fields {
	parts := strings.FieldsFunc(line, func(c rune) bool { return strings.ContainsRune(" ,;\tt", c) })
	if len(parts) == 0 {
		return fields{}
	}
	first := strings.Map(func(c rune) rune {
		if c >= '0' && c <= '9' {
			return '9'
		}
		return c
	}, parts[0])
	_, decimals, _ := strings.Cut(parts[len(parts)-1], ".")
	return fields{first, len(parts), len(decimals)}
}
