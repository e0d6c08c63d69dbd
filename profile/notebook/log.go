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
