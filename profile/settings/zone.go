package settings

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
	_ "time/tzdata" // a boat's machine may have none of its own
)

var offset = regexp.MustCompile(`^([+-])(\d{1,2}):?(\d{2})$`)

// ParseZone reads a time zone: its name, "America/Chicago", or how far it is from UTC,
// "-05:00".
func ParseZone(text string) (*time.Location, error) {
	text = strings.TrimSpace(text)
	if m := offset.FindStringSubmatch(text); m != nil {
		hours, _ := strconv.Atoi(m[2])
		minutes, _ := strconv.Atoi(m[3])
		seconds := (hours*60 + minutes) * 60
		if hours <= 14 && minutes < 60 {
			if m[1] == "-" {
				seconds = -seconds
			}
			return time.FixedZone(fmt.Sprintf("%s%02d:%02d", m[1], hours, minutes), seconds), nil
		}
	}
	zone, err := time.LoadLocation(text)
	if err != nil || text == "" || strings.EqualFold(text, "local") {
		return nil, fmt.Errorf("%q is not a time zone: write e.g. America/Chicago or -05:00", text)
	}
	return zone, nil
}

// zone takes the time zone of the angler's clock.
func (p *parser) zone(text string) {
	if text == "" {
		return
	}
	zone, err := ParseZone(text)
	if err != nil {
		p.fail("time_zone", err)
	}
	p.s.Zone = zone
}
