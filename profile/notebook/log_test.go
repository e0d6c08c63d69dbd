package notebook

import (
	"strings"
	"testing"
)

// A log that was cut off anywhere within its last line gives the readings of the lines
// before, and says so; only where the cut leaves the whole line is it read.
func TestLogCutOff(t *testing.T) {
	const before = "2026-07-18 13:00:11,0.50,23.44\n2026-07-18 13:00:41,2.00,23.10\n2026-07-18 13:01:11,4.25,20.02\n2026-07-18 13:01:41,5.00,17.50\n"
	const last = "2026-07-18 13:02:41,7.50,12.31"
	for _, head := range []string{"units: m C\n", "time,depth_m,temp_c\n"} {
		for n := 1; n <= len(last); n++ {
			sheets, err := Read([]byte(head+before+last[:n]), Options{Name: "p"})
			if err != nil || len(sheets) != 1 {
				t.Errorf("%q: %d drops, %v", last[:n], len(sheets), err)
				continue
			}
			whole := n == len(last)
			want := 4
			if whole {
				want = 5
			}
			if d := sheets[0].Drop; len(d.Readings) != want {
				t.Errorf("%q: %d readings, want %d", last[:n], len(d.Readings), want)
			}
			if said := strings.Contains(everything(sheets, nil), "left out: the log was cut off within it"); said == whole {
				t.Errorf("%q: said %v\n%s", last[:n], said, everything(sheets, nil))
			}
		}
	}
	for _, line := range []string{"8 11.25", "bottom: 9 m", "2026-07-18 13:02:41,7.50,12.310", "9.00 m 11.2 C"} { // written by hand, or longer
		sheets, err := Read([]byte("units: m C\n"+before+line+"\n"), Options{Name: "p"})
		if err != nil || strings.Contains(everything(sheets, nil), "cut off") {
			t.Errorf("%q: %s", line, everything(sheets, err))
		}
	}
	uneven := strings.Replace(before, "23.10", "23.1", 1) // decimals that are not always written tell nothing
	if sheets, err := Read([]byte("units: m C\n"+uneven+last[:len(last)-1]), Options{Name: "p"}); err != nil || len(sheets[0].Drop.Readings) != 5 {
		t.Errorf("uneven decimals: %v", err)
	}
}
