package notebook

import (
	"errors"
	"fmt"
	"strings"
)

var (
	titleLine = lazy(`^(\d{1,2})[/.](\d{1,2})(?:[/.](\d{2,4}))?[ ,].*[a-z]{3}`)
	slashPair = lazy(`^\d+(?:[.,]\d+)?\s?/\s?\d`)
	shortDate = lazy(`^(\d{1,2})/(\d{1,2})/(\d{2})$`)
)

// bareDate reads a line that is a date and nothing else. 7/18/26 holds more oxygen than
// water does, so it is a date; 7/18/20 may be a reading too, and is asked about where it
// is the only such line.
func (r *reader) bareDate(line int, c, raw string) (day string, is bool, err error) {
	day, err = parseDate(strings.TrimSpace(withoutComment(raw)))
	if err != nil && !errors.As(err, new(twoDates)) {
		if m := slashDate().FindStringSubmatch(c); m != nil && len(m[5]) == 4 && m[6] == "" {
			return "", false, err
		}
		return "", false, nil
	}
	if m := shortDate().FindStringSubmatch(c); m != nil {
		var oxygen float64
		fmt.Sscan(m[3], &oxygen)
		if !dayAndMonth(m) || r.countShortDates() > 1 && !(oxygen > maxLikelyMgL && r.others) {
			return "", false, nil // a page of depth/temperature/oxygen
		}
		if oxygen <= maxLikelyMgL {
			n, err := r.ask(Question{Line: line, Text: raw, What: "how the line is meant", Choices: []string{"a date", "a depth, a temperature and the oxygen"},
				Instead: "write the date as 2026-07-18, the reading as \"7: 18  DO 6\""})
			if err != nil || n == 1 {
				return "", false, err
			}
		}
	}
	if err != nil {
		day, err = r.whichDay(line, raw, err)
	}
	return day, err == nil, err
}

// countShortDates counts the lines that look like 7/18/26, and sees whether there are
// other lines with numbers.
func (r *reader) countShortDates() int {
	if r.shortDates == 0 { // counted once: the page may be long
		for _, l := range r.raw {
			if c := clean(l); shortDate().MatchString(c) {
				r.shortDates++
			} else if strings.ContainsAny(c, "0123456789") && !keyLine().MatchString(c) {
				r.others = true
			}
		}
	}
	return r.shortDates
}

// slashed counts the lines that begin with two numbers and a slash between them: readings
// so written stand on several lines.
func (r *reader) slashed() (n int) {
	for _, l := range r.raw {
		if slashPair().MatchString(clean(l)) {
			n++
		}
	}
	return n
}

// dayAndMonth reports whether the two numbers of a match may be a day and a month.
func dayAndMonth(m []string) bool {
	var a, b int
	fmt.Sscan(m[1], &a)
	fmt.Sscan(m[2], &b)
	return a > 0 && b > 0 && min(a, b) <= 12 && max(a, b) <= 31
}

// errReading says that the angler called a line a reading.
var errReading = errors.New("a reading")

// titleOrReading asks about a line such as "7/19 sunny", which may be a title that begins
// with a date or a reading and a remark.
func (r *reader) titleOrReading(line int, c, raw string) error {
	m := titleLine().FindStringSubmatch(c)
	if m == nil || !dayAndMonth(m) || !strings.HasPrefix(c, m[1]+"/") {
		return nil
	}
	if !r.seen && r.slashed() == 1 { // "7/18 Alder Kettle" at the top
		p := &prose{text: strings.TrimPrefix(oneSpelling(raw), m[1]+"/"+m[2]), titled: true}
		named := len(strings.Fields(p.text)) > 1
		if left := p.names(true, r.o); named && len(left) == 0 && (p.has("water") || p.has("spot")) {
			return nil
		}
	}
	var third float64
	if fmt.Sscan(m[3], &third); third > maxLikelyMgL { // a year: 7/18/26 holds more oxygen than water does
		return nil
	}
	meanings, err := parseLine(c, r.points)
	if err != nil || !whole(meanings[0]) {
		return nil
	}
	n, err := r.ask(Question{Line: line, Text: raw, What: "how the line is meant",
		Choices: []string{"a title that begins with a date", "a reading"}, Instead: "write the date as 2026-07-18, a reading as \"7: 19\""})
	if err == nil && n == 1 {
		return errReading
	}
	return err
}
