package notebook

import (
	"fmt"
	"regexp"
	"strings"
	"time"
)

// twoDates is the error of a date that half the world reads the other way round.
type twoDates struct {
	text string
	days [2]string // month first, day first
}

func (e twoDates) Error() string {
	return fmt.Sprintf("%q may be %s or %s: write one of these", e.text, e.days[0], e.days[1])
}

var (
	slashDate = regexp.MustCompile(`^(\d{1,2})([/.-])(\d{1,2})([/.-])(\d{4}|\d{2})(\D.*)?$`)
	yearFirst = regexp.MustCompile(`^(\d{4})[/.](\d{1,2})[/.](\d{1,2})(\D.*)?$`)
	weekday   = regexp.MustCompile(`(?i)^(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|monday|tuesday|wednesday|thursday|friday|saturday|sunday)[.,]?\s+`)
	ordinal   = regexp.MustCompile(`(?i)\b(\d{1,2})(?:st|nd|rd|th|er)\b`)
	blanks    = regexp.MustCompile(`\s+`)
)

// months are the names of the months that are read, by the first letters of each;
// English and French.
var months = []struct{ name, begins string }{
	{"January", "jan(?:uary|v|vier)?"}, {"February", "feb(?:ruary)?|f[ée]v(?:r|rier)?"}, {"March", "mar(?:ch|s)?"}, {"April", "apr(?:il)?|avr(?:il)?"},
	{"May", "may|mai"}, {"June", "june?|juin"}, {"July", "july?|juil(?:let)?"}, {"August", "aug(?:ust)?|ao[uû]t"},
	{"September", "sept?(?:ember|embre)?"}, {"October", "oct(?:ober|obre)?"}, {"November", "nov(?:ember|embre)?"}, {"December", "dec(?:ember)?|d[ée]c(?:embre)?"},
}

// monthName matches any of them; monthNames one each.
var (
	monthName  string
	monthNames []*regexp.Regexp
)

func init() {
	var all []string
	for _, m := range months {
		all = append(all, m.begins)
		monthNames = append(monthNames, regexp.MustCompile(`(?i)^(?:`+m.begins+`)$`))
	}
	monthName = `(?:` + strings.Join(all, "|") + `)\.?`
	wordDate = regexp.MustCompile(`(?i)^(?:(\d{1,2})[ .-]*(` + monthName + `)|(` + monthName + `)[ .-]*(\d{1,2}))[ ,.-]+'?(\d{4}|\d{2})(\D.*)?$`)
}

// wordDate is a date whose month is a name: 18 July 2026, Jul 18 26.
var wordDate *regexp.Regexp

// parseDate reads a date, with a time of day or without, into "2026-07-18 14:20". Two
// digits of a year are of this century. 7/8/2026 is refused with a twoDates, since half
// the world reads it the other way round.
func parseDate(s string) (string, error) {
	s = blanks.ReplaceAllString(strings.TrimSpace(s), " ")
	wrong := fmt.Errorf("%q is not a date: write e.g. 2026-07-18 14:20", s)
	text := ordinal.ReplaceAllString(weekday.ReplaceAllString(s, ""), "$1")
	day := func(year, month, day string) string { return fmt.Sprintf("%s-%02s-%02s", century(year), month, day) }
	var days []string
	after := ""
	if m := slashDate.FindStringSubmatch(text); m != nil && m[2] == m[4] {
		var a, b int
		fmt.Sscan(m[1], &a)
		fmt.Sscan(m[3], &b)
		after = m[6]
		monthFirst, dayFirst := day(m[5], m[1], m[3]), day(m[5], m[3], m[1])
		switch {
		case a > 12 && b <= 12:
			days = []string{dayFirst}
		case b > 12 && a <= 12 || a == b:
			days = []string{monthFirst}
		default:
			days = []string{monthFirst, dayFirst}
		}
	} else if m := yearFirst.FindStringSubmatch(text); m != nil {
		days, after = []string{day(m[1], m[2], m[3])}, m[4]
	} else if m := wordDate.FindStringSubmatch(text); m != nil {
		d, name := m[1]+m[4], strings.TrimSuffix(m[2]+m[3], ".")
		for i, r := range monthNames {
			if r.MatchString(name) {
				days, after = []string{day(m[5], fmt.Sprint(i+1), d)}, m[6]
			}
		}
	} else if len(text) >= 10 {
		days, after = []string{text[:10]}, text[10:]
	}
	var out []string
	for _, d := range days {
		t, err := parseTime(d, after)
		if err != nil {
			if len(days) == 2 { // a 0th month is none
				continue
			}
			if d != s {
				return "", fmt.Errorf("%q is not a date: write e.g. 2026-07-18 14:20", strings.TrimSpace(d+after))
			}
			return "", wrong
		}
		out = append(out, t)
	}
	switch len(out) {
	case 1:
		return out[0], nil
	case 2:
		return "", twoDates{s, [2]string{out[0], out[1]}}
	}
	return "", wrong
}

// century puts the century before two digits of a year.
func century(year string) string {
	if len(year) == 2 {
		return "20" + year
	}
	return year
}

// parseTime joins a day and what stands behind it, a time of day or nothing.
func parseTime(day, after string) (string, error) {
	after = strings.ToLower(strings.Trim(strings.ReplaceAll(after, " ", ""), ",;"))
	after = strings.TrimPrefix(strings.TrimPrefix(after, "t"), "at")
	if after == "" {
		t, err := time.Parse("2006-01-02", day)
		return t.Format("2006-01-02"), err
	}
	var err error
	for _, hour := range []string{"15:04", "15:04:05", "3:04pm", "3pm", "15h04", "15.04", "15h", "15:04h"} {
		var t time.Time
		if t, err = time.Parse("2006-01-02 "+hour, day+" "+lengthened(after)); err == nil {
			return t.Format("2006-01-02 15:04"), nil
		}
	}
	return "", err
}

// lengthened writes the short "6:40a" out.
func lengthened(s string) string {
	if strings.HasSuffix(s, "a") || strings.HasSuffix(s, "p") {
		return s + "m"
	}
	return strings.NewReplacer("a.m.", "am", "p.m.", "pm", "hrs", "h", "hr", "h").Replace(s)
}
