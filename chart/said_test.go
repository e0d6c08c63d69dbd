package chart

import (
	"testing"

	"coldseam/profile/demo"
	"coldseam/profile/report"
)

// What stands beside a picture is what the answer at a glance says.
func TestSaid(t *testing.T) {
	p := demo.Plan(t, demo.Page(t, "alder-kettle-july"))
	d, u := Of(p), p.Drop.Units.Shown()
	rows := map[string]report.Row{}
	for _, r := range d.Brief.Rows {
		rows[r.Label] = r
	}
	said := map[string]string{}
	for _, z := range d.Zones {
		said[z.Name] = z.Said(u)
	}
	for _, m := range d.Marks {
		said[m.Name] = m.Said(u)
	}
	for name, want := range map[string]string{
		"band": rows["Fish"].Value, "thermocline": rows["Thermocline"].Value, "cast over": rows["Cast over"].Value,
		"mixed layer": "0 to 9 ft", "metalimnion": "13 to 27 ft", "oxygen unknown": "below 20 ft", "bottom": "31 ft",
	} {
		if said[name] != want || want == "" {
			t.Errorf("%s %q, want %q, of %v", name, said[name], want, said)
		}
	}
	if want := rows["Fly"].Value; said["fly"]+" down" != want {
		t.Errorf("fly %q, want %q", said["fly"], want)
	}
	winter := Of(demo.Plan(t, demo.Page(t, "alder-kettle-january")))
	if m, ok := winter.Mark(Water); !ok || m.Name != "hole over" { // nobody casts over ice
		t.Errorf("under ice: %+v", m)
	}
}
