package settings

import (
	"testing"
	"time"
)

// Central time is 5 hours behind UTC in July and 6 in January (US Energy Policy Act of
// 2005: the second Sunday of March to the first of November).
func TestParseZone(t *testing.T) {
	for text, want := range map[string][2]string{
		"America/Chicago": {"CST -06:00", "CDT -05:00"},
		" -05:00 ":        {"-05:00 -05:00", "-05:00 -05:00"},
		"+0530":           {"+05:30 +05:30", "+05:30 +05:30"},
		"UTC":             {"UTC +00:00", "UTC +00:00"},
	} {
		zone, err := ParseZone(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		for i, month := range []time.Month{time.January, time.July} {
			if got := time.Date(2026, month, 18, 14, 20, 0, 0, zone).Format("MST -07:00"); got != want[i] {
				t.Errorf("%q in %s: %s, want %s", text, month, got, want[i])
			}
		}
	}
	for _, text := range []string{"", "Local", "local", "Chicago", "-15:00", "-05:60", "5", "../etc/passwd", "America/Chicago\x00"} {
		if zone, err := ParseZone(text); err == nil {
			t.Errorf("%q: %v", text, zone)
		}
	}
}
