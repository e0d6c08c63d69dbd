package notebook

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
)

var (
	titleLine = regexp.MustCompile(`^(\d{1,2})[/.](\d{1,2})(?:[/.](\d{2,4}))?[ ,].*[a-z]{3}`)
	shortDate = regexp.MustCompile(`^(\d{1,2})/(\d{1,2})/\d{2}$`)
	titleDisk = regexp.MustCompile(`\b(?:sd|secchi)\s*:?\s*([0-9][0-9 ./]*)\s*(ft|feet|m|')?`)
)

// bareDate refuses a line that is a date and nothing else, but may be read two
// ways: 7/8/2026, or 7/18/26 where no other line of the page looks like it.
func (r *reader) bareDate(c, raw string) error {
	if slashDate.MatchString(c) && !titleLine.MatchString(c) {
		_, err := parseDate(strings.TrimSpace(raw))
		return err
	}
	if m := shortDate.FindStringSubmatch(c); m == nil || !dayAndMonth(m) {
		return nil
	}
	if r.shortDates == 0 { // counted once: the page may be long
		for _, l := range r.raw {
			if shortDate.MatchString(clean(l)) {
				r.shortDates++
			}
		}
	}
	if r.shortDates > 1 {
		return nil // a page of depth/temperature/oxygen
	}
	return errors.New("a date, or a depth, a temperature and the oxygen? Write the date as 2026-07-18, the reading as \"7: 18  DO 6\"")
}

// dayAndMonth reports whether the two numbers of a match may be a day and a month.
func dayAndMonth(m []string) bool {
	var a, b int
	fmt.Sscan(m[1], &a)
	fmt.Sscan(m[2], &b)
	return a > 0 && b > 0 && min(a, b) <= 12 && max(a, b) <= 31
}

// isTitle reports whether a line that begins like a date is a title. "10.5 72 windy"
// is a reading; "7/19 sunny" may be both, and is asked about.
func (r *reader) isTitle(line int, c, raw string) (bool, error) {
	m := titleLine.FindStringSubmatch(c)
	if m == nil || !dayAndMonth(m) {
		return false, nil
	}
	meanings, err := parseLine(c, r.points)
	if err != nil || !whole(meanings[0]) {
		return true, nil
	}
	if !strings.HasPrefix(c, m[1]+"/") {
		return false, nil
	}
	n, err := r.ask(Question{Line: line, Text: raw, What: "how the line is meant",
		Choices: []string{"a title that begins with a date", "a reading"}, Instead: "write the date as 2026-07-18, a reading as \"7: 19\""})
	return n == 0, err
}

// title reads a line such as "7/19 6:40a Long L., SW 5-10, SD 11½": the Secchi
// depth is taken from it, the rest is kept as a note, since a date without a year
// and a name among other words cannot be told for sure.
func (r *reader) title(line int, c, raw string) item {
	it := item{line: line, kind: header, header: Header{Key: "note", Value: strings.TrimSpace(raw), Line: line}}
	r.note(line, "kept as a note; write water:, date: and wind: on lines of their own to have them read")
	if m := titleDisk.FindStringSubmatch(c); m != nil {
		u := m[2]
		r.items = append(r.items, item{line: line, kind: header, header: Header{Key: "secchi", Value: strings.TrimSpace(m[1] + " " + u), Line: line}})
		r.note(line, "Secchi depth read from it: %s", strings.TrimSpace(m[1]+" "+u))
	}
	return it
}
