package report

import (
	"encoding/json"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/demo"
	"coldseam/profile/plan"
)

// What the table of depth and area adds, in each form.
func TestBasin(t *testing.T) {
	share := func(v float64) *float64 { return &v }
	for _, c := range []struct {
		name string
		b    *plan.Basin
		want []string
	}{
		{"no table", nil, nil},
		{"all known", &plan.Basin{Band: &profile.Estimate{Best: 0.12, Low: 0.09, High: 0.148}, Cast: share(0.061), Stability: profile.Estimate{Best: 201.5, Low: 187, High: 214}}, []string{
			"9 to 15 % of the lake's bottom lies in the band, 6 % under the water to cast over.",
			"Schmidt stability 200 (190 to 210) J/m2: the work per square metre of surface that it would take to mix the lake from top to bottom.",
		}},
		{"no band, shallower readings", &plan.Basin{Stability: profile.Exactly(34.8), AtLeast: true}, []string{
			"Schmidt stability at least 35 J/m2: the work per square metre of surface that it would take to mix the lake from top to bottom; nothing was read below 29 ft.",
		}},
		{"hardly anything", &plan.Basin{Band: &profile.Estimate{Best: 0.004, Low: 0.004, High: 0.0045}, Cast: share(0), Stability: profile.Exactly(-1e-12)}, []string{
			"Under 1 % of the lake's bottom lies in the band, 0 % under the water to cast over.",
			"Schmidt stability 0 J/m2: the work per square metre of surface that it would take to mix the lake from top to bottom.",
		}},
		{"a table too short", &plan.Basin{FloorM: 7.62, TooShallow: true}, []string{"The table of depth and area ends at 25 ft, and 29 ft was read: correct it in the settings."}},
	} {
		p := demo.Plan(t, demo.Page(t, "alder-kettle-july"))
		p.Basin = c.b
		if got := strings.Join(Basin(p), "\n"); got != strings.Join(c.want, "\n") {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, strings.Join(c.want, "\n"))
		}
		data, err := json.Marshal(JSON(p, nil).Basin)
		if err != nil {
			t.Fatal(err)
		}
		if known := c.b != nil && !c.b.TooShallow; known != strings.Contains(string(data), `"schmidt_stability_jm2"`) || known != strings.Contains(string(data), `"stability_is_least"`) {
			t.Errorf("%s: %s", c.name, data)
		}
	}
}
