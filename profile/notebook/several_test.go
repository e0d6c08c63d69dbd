package notebook

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestPagesInOneText: pages that were put into one text are read as each by itself, whatever
// stands on them, and none takes anything over from another.
func TestPagesInOneText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var names, texts []string
		var want []Sheet
		for range rapid.IntRange(1, 4).Draw(t, "pages") {
			text := Write(drawDrop(t))
			sheets, err := Read([]byte(text), Options{Name: "p"})
			if err != nil {
				t.Fatal(err)
			}
			names, texts, want = append(names, "2026-07-18-x.txt"), append(texts, text), append(want, sheets...)
		}
		got, err := Read([]byte(Pages(names, texts)), Options{Name: "p"})
		if err != nil {
			t.Fatal(err)
		}
		for i := range got { // lines are those of the text
			for n := range got[i].Drop.Readings {
				got[i].Drop.Readings[n].Line = want[i].Drop.Readings[n].Line
			}
			for n := range got[i].Notes {
				got[i].Notes[n].Line = want[i].Notes[n].Line
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatalf("(-want +got):\n%s\n%s", diff, Pages(names, texts))
		}
	})
}

// TestSeveralPages: where a page begins and ends, and what lines are called.
func TestSeveralPages(t *testing.T) {
	const one, two = "water: Alder Kettle\nmarks at: gunwale 1.5 ft\nbottom: 31 ft\n0 ft: 74 F\n5 ft: 73 F\n", "10 ft: 60 F\n20 ft: 50 F"
	text := Pages([]string{"a.txt", "b\n.txt"}, []string{one, two})
	if want := "# page: a.txt\n" + one + "\n# page: b .txt\n" + two + "\n"; text != want {
		t.Fatalf("%q, want %q", text, want)
	}
	if got := Pages([]string{"a.txt"}, []string{two}); got != two {
		t.Errorf("a page alone: %q", got)
	}
	lines := func(sheets []Sheet) (out []int) {
		for _, s := range sheets {
			for _, r := range s.Drop.Readings {
				out = append(out, r.Line)
			}
		}
		return out
	}
	for _, c := range []struct {
		name, text string
		drops      int
		lines      []int
	}{
		{"two", text, 2, []int{5, 6, 9, 10}},
		{"from another system", strings.ReplaceAll(text, "\n", "\r\n"), 2, []int{5, 6, 9, 10}},
		{"a remark above", "# sent on Sunday\n\n" + text, 2, []int{7, 8, 11, 12}},
		{"a page above", "0 ft: 70 F\n5 ft: 69 F\n" + text, 3, []int{1, 2, 7, 8, 11, 12}},
		{"two drops on a page", Pages([]string{"a", "b"}, []string{one + "\nwater: Sedge Mere\n0 ft: 70 F\n5 ft: 69 F\n", two}), 3, []int{5, 6, 9, 10, 13, 14}},
		{"one page with a mark", "# page: a.txt\n" + one, 1, []int{5, 6}},
		{"a mark in a remark", "0 ft: 70 F # page: 7\n5 ft: 69 F\n", 1, []int{1, 2}},
	} {
		sheets, err := Read([]byte(c.text), Options{Name: "p"})
		if err != nil || len(sheets) != c.drops {
			t.Errorf("%s: %d drops, %v", c.name, len(sheets), err)
			continue
		}
		if diff := cmp.Diff(c.lines, lines(sheets)); diff != "" {
			t.Errorf("%s: lines %s", c.name, diff)
		}
		if last := sheets[len(sheets)-1].Drop; c.drops > 1 && (last.Water != "" || len(Headers(last, "", "marks at")) > 0 || last.Bottom.Known) {
			t.Errorf("%s: the last page took over %+v", c.name, last)
		}
	}
}

// TestSeveralPagesRefused: an error names the line of the text, one about a whole page its mark.
func TestSeveralPagesRefused(t *testing.T) {
	const good = "0 ft: 74 F\n5 ft: 73 F\n"
	for _, c := range []struct {
		page string
		want string
	}{
		{"0 ft: 74 F\n5 ft: 73 F\n-7 ft: 1234 F\n-8 ft: 4567 F\n", "p:8: "},
		{"water: Sedge Mere\n", "p:5: has no readings"},
		{"0 74\n5 73\n", "p:6: "},
	} {
		_, err := Read([]byte(Pages([]string{"a", "b"}, []string{good, c.page})), Options{Name: "p"})
		var e *Error
		if !errors.As(err, &e) || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%q: %v, want %s", c.page, err, c.want)
		}
	}
	_, err := Read([]byte(Pages([]string{"a", "b"}, []string{good, "0 ft: 74 F\n5 ft: 73 F\n-7 ft: 1234 F\n-8 ft: 4567 F\n"})), Options{Name: "p"})
	if !strings.Contains(err.Error(), "also line 9") {
		t.Errorf("the other bad line: %v", err)
	}
	asked := 0
	sheets, err := Read([]byte(Pages([]string{"a", "b"}, []string{good, "0 74\n5 73\n"})), Options{Name: "p", Ask: func(q Question) (int, error) {
		asked = q.Line
		return 0, nil
	}})
	if err != nil || asked != 6 {
		t.Errorf("asked of line %d, %v", asked, err)
	}
	found := false
	for _, n := range sheets[1].Notes {
		found = found || n.Line == 6
	}
	if !found {
		t.Errorf("notes %+v", sheets[1].Notes)
	}
}

// TestGlanceAtSeveral: a text of several pages is not taken for one of one drop.
func TestGlanceAtSeveral(t *testing.T) {
	text := Pages([]string{"a", "b"}, []string{"0 ft: 74 F\n5 ft: 73 F\n", "10 ft: 60 F\n20 ft: 50 F\n"})
	text = strings.ReplaceAll(text, "\n\n", "\n")
	if is, ok := NewGlancer(Options{}).Look([]byte(text)); ok {
		t.Errorf("%+v", is)
	}
}
