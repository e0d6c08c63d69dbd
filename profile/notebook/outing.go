package notebook

import (
	"strings"
	"time"

	"coldseam/profile/fish"
)

// nightH is how long after a drop of yesterday a fish is still of that outing, hours.
const nightH = 12

// OfNow reports whether a drop's date is of today, or of last night, so that what is caught
// now is of its outing.
func OfNow(date string, now time.Time) bool {
	if strings.HasPrefix(date, now.Format(time.DateOnly)) {
		return true
	}
	at, err := time.ParseInLocation("2006-01-02 15:04", date, now.Location())
	return err == nil && now.After(at) && now.Sub(at) < nightH*time.Hour
}

// CatchNow puts the time of day before what was caught just now, where none was given.
func CatchNow(text string, now time.Time, own ...fish.Fish) string {
	if is, err := ReadCatch(text, own...); err == nil && is.Time != "" {
		return text
	}
	return now.Format("15:04") + " " + text
}
