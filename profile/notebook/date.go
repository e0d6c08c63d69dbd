package notebook

import (
	"fmt"
	"slices"
	"strconv"
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
	slashDate = lazy(`^(\d{1,2})([/.-])(\d{1,2})([/.-])(\d{4}|\d{2})(\D.*)?$`)
	yearFirst = lazy(`^(\d{4})[/.](\d{1,2})[/.](\d{1,2})(\D.*)?$`)
	weekday   = lazy(`(?i)^(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|monday|tuesday|wednesday|thursday|friday|saturday|sunday)[.,]?\s+`)
	ordinal   = lazy(`(?i)\b(\d{1,2})(?:st|nd|rd|th|er)\b`)
	blanks    = lazy(`\s+`)
)

// months are the names of the months that are read, in English and French.
var months = [12]string{
	"jan january janv janvier", "feb february fév fev févr fevr février fevrier", "mar march mars", "apr april avr avril", "may mai", "jun june juin",
	"jul july juil juillet", "aug august août aout", "sep sept september septembre", "oct october octobre", "nov november novembre", "dec december déc décembre decembre",
}

// monthName matches any of them.
var monthName = `(?:` + strings.ReplaceAll(strings.Join(months[:], "|"), " ", "|") + `)\.?`

// wordDate is a date whose month is a name: 18 July 2026, Jul 18 26.
var wordDate = lazy(`(?i)^(?:(\d{1,2})[ .-]*(` + monthName + `)|(` + monthName + `)[ .-]*(\d{1,2}))[ ,.-]+'?(\d{4}|\d{2})(\D.*)?$`)

// monthNamed is the number of a month, 1 to 12, 0 where it is none.
func monthNamed(name string) int {
	return 1 + slices.IndexFunc(months[:], func(names string) bool {
		return slices.Contains(strings.Fields(names), strings.ToLower(name))
	})
}

// parseDate reads a date, with a time of day or without, into "2026-07-18 14:20". Two
// digits of a year are of this century. 7/8/2026 is refused with a twoDates, since half
// the world reads it the other way round.
func parseDate(s string) (string, error) {
	s = blanks().ReplaceAllString(strings.TrimSpace(s), " ")
	days, after := writtenDays(ordinal().ReplaceAllString(weekday().ReplaceAllString(s, ""), "$1"))
	var out []string
	for _, d := range days {
		if t, err := parseTime(d, after); err == nil {
			out = append(out, t)
		} else if len(days) == 1 { // of two, a 0th month is none
			return "", notDate(strings.TrimSpace(d + after))
		}
	}
	switch len(out) {
	case 1:
		return out[0], nil
	case 2:
		return "", twoDates{s, [2]string{out[0], out[1]}}
	}
	return "", notDate(s)
}

func notDate(text string) error {
	return fmt.Errorf("%q is not a date: write e.g. 2026-07-18 14:20", text)
}

// writtenDays are the days, one or two, that a date may be, as 2026-07-18, and what stands
// behind it.
func writtenDays(text string) (days []string, after string) {
	if iso := len(text) >= 10 && text[4] == '-' && text[7] == '-'; !iso {
		if m := slashDate().FindStringSubmatch(text); m != nil && m[2] == m[4] {
			return slashDays(m[1], m[3], m[5]), m[6]
		}
		if m := yearFirst().FindStringSubmatch(text); m != nil {
			return []string{day(m[1], m[2], m[3])}, m[4]
		}
		if m := wordDate().FindStringSubmatch(text); m != nil {
			month := monthNamed(strings.TrimSuffix(m[2]+m[3], "."))
			return []string{day(m[5], strconv.Itoa(month), m[1]+m[4])}, m[6]
		}
	}
	if len(text) < 10 {
		return nil, ""
	}
	return []string{text[:10]}, text[10:]
}

// slashDays are the days that 7/18/2026 may be: the month first, then the day first.
func slashDays(first, second, year string) []string {
	a, _ := strconv.Atoi(first)
	b, _ := strconv.Atoi(second)
	monthFirst, dayFirst := day(year, first, second), day(year, second, first)
	switch {
	case a > 12 && b <= 12:
		return []string{dayFirst}
	case b > 12 && a <= 12 || a == b:
		return []string{monthFirst}
	}
	return []string{monthFirst, dayFirst}
}

func day(year, month, day string) string {
	return fmt.Sprintf("%s-%02s-%02s", century(year), month, day)
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
