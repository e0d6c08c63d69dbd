package notebook

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var rewrite = flag.Bool("rewrite", false, "write what is read into testdata/anglers.txt, to be read by a person")

// TestAnglersPages: whole pages as anglers write them, with titles, dates, bays, catches
// and remarks among the readings (invented; how they are written is common practice). What
// must come of each stands under it: every fact taken or kept as a note, nothing made up.
func TestAnglersPages(t *testing.T) {
	const file = "testdata/anglers.txt"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	parts := strings.Split(string(data), "=== ")
	out.WriteString(parts[0])
	if len(parts) < 41 {
		t.Errorf("%d pages", len(parts)-1)
	}
	for _, part := range parts[1:] {
		name, rest, _ := strings.Cut(part, "\n")
		text, want, _ := strings.Cut(rest, "--- read as\n")
		text = strings.TrimRight(text, "\n") + "\n"
		settings := ""
		if _, units, ok := strings.Cut(name, "units "); ok {
			settings = units
		}
		t.Run(name, func(t *testing.T) {
			got := everything(Read([]byte(text), page{settings: settings}.options()))
			fmt.Fprintf(&out, "=== %s\n%s--- read as\n%s\n", name, text, got)
			if diff := cmp.Diff(strings.TrimSpace(want), strings.TrimSpace(got)); diff != "" && !*rewrite {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
	if *rewrite {
		if err := os.WriteFile(file, []byte(out.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// everything lists all that came of a page: readings, header, notes, and what is told.
func everything(sheets []Sheet, err error) string {
	if err != nil {
		return "refused: " + err.Error() + "\n"
	}
	var b strings.Builder
	for i, s := range sheets {
		if i > 0 {
			b.WriteString("and\n")
		}
		d := s.Drop
		var readings []string
		for _, r := range d.Readings {
			readings = append(readings, writeReading(r))
		}
		fmt.Fprintf(&b, "%s\n", strings.Join(readings, ", "))
		d.Readings = nil
		for _, line := range strings.Split(strings.TrimSpace(Write(d)), "\n") {
			fmt.Fprintf(&b, "%s\n", line)
		}
		for _, n := range s.Notes {
			fmt.Fprintf(&b, "%d> %s\n", n.Line, n.Text)
		}
	}
	return b.String()
}
