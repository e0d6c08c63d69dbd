package notebook

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"coldseam/profile"
)

// typed is what somebody might type as a value: words, and the signs that mean
// something on a page.
var typed = rapid.StringOfN(rapid.OneOf(
	rapid.SampledFrom([]rune("## \\\\  :;,./'\"-=~@+-()[]½″`\t0123456789")),
	rapid.RuneFrom([]rune("abc depth temp bottom same note água é\u00a0\u2028\u200b\ufeff\u202e：＃🐟")),
	rapid.Rune(),
), 0, 30, -1)

// TestValuesReadBack: whatever is noted under any key, in a name, a note or a number,
// and taken, is written so that it reads back as it was taken.
func TestValuesReadBack(t *testing.T) {
	numbers := rapid.SampledFrom([]string{"31 ft", "9,5 m", "12'6\"", "40", "8 mph", "20 deg", "gunwale 1.5 ft", "water", "reads 32.5 F in ice water",
		"0.5 F", "±1 C", "2 min", "mg/L", "%", "1/32 oz", "2 in/s", "2026-07-18 14:20", "7/18/2026", "ft F"})
	rapid.Check(t, func(t *rapid.T) {
		var flags []Header
		for range rapid.IntRange(1, 5).Draw(t, "n") {
			h := Header{Key: rapid.SampledFrom(Keys()).Draw(t, "key"), From: "--x"}
			h.Value = rapid.OneOf(typed, numbers).Draw(t, "value")
			if Check(h.Key, h.Value) == nil {
				flags = append(flags, h)
			}
		}
		sheets, err := Read([]byte("units: ft F\n0 74\n5 73\n"), Options{Name: "p", Flags: flags})
		if err != nil {
			t.Fatal(err)
		}
		readsBack(t, sheets[0].Drop)
	})
}

func readsBack(t interface{ Fatalf(string, ...any) }, d profile.Drop) {
	page := Write(d)
	back, err := Read([]byte(page), Options{Name: "written"})
	if err != nil || len(back) != 1 {
		t.Fatalf("%v, %d drops: written as\n%s", err, len(back), page)
	}
	if diff := cmp.Diff(d, back[0].Drop, cmpopts.IgnoreFields(profile.Reading{}, "Line", "Text")); diff != "" {
		t.Fatalf("(-want +got):\n%s\nwritten as\n%s", diff, page)
	}
}

// TestNumberSign: a # with blanks around it begins a comment, unless a number follows;
// one in a name does not.
func TestNumberSign(t *testing.T) {
	for _, tc := range []struct{ written, want string }{
		{"Pond #3", "Pond #3"}, {"Pond # 3", "Pond # 3"}, {"the reeds # not the point", "the reeds"}, {"the reeds #", "the reeds"},
		{`the reeds \# by the point`, "the reeds # by the point"}, {`a\\# b`, `a\# b`}, {"# by the dam", ""}, {"bay#", "bay#"},
	} {
		sheets, err := Read([]byte("spot: "+tc.written+"\nbottom: 31 ft # by the line\n0 ft 74 F\n"), Options{Name: "p"})
		if err != nil {
			t.Fatal(err)
		}
		if d := sheets[0].Drop; d.Spot != tc.want || d.Bottom != profile.Some(9.4488) {
			t.Errorf("%s: %q, %v", tc.written, d.Spot, d.Bottom)
		}
		readsBack(t, sheets[0].Drop)
	}
}

// TestLongValues: a value that is longer than its key may hold, and more notes than a
// page may hold, are refused in one short line.
func TestLongValues(t *testing.T) {
	most := map[string]int{"note": maxNote}
	for _, k := range []string{"water", "spot", "for", "weight", "sky", "colour", "anchor", "caught"} {
		most[k] = maxText
	}
	for _, k := range Keys() {
		n := most[k]
		if n == 0 {
			n = maxValue
		}
		err := Check(k, strings.Repeat("9", n+1))
		if err == nil || !strings.Contains(err.Error(), "shorten it") || len(err.Error()) > 150 {
			t.Errorf("%s: %v", k, err)
		}
		if err := Check(k, strings.Repeat("9", n)); err != nil && strings.Contains(err.Error(), "shorten it") {
			t.Errorf("%s: %v", k, err)
		}
	}
	page := strings.Repeat("note: windy\n", maxNotes) + "0 ft 74 F\n"
	if _, err := Read([]byte(page), Options{Name: "p"}); err != nil {
		t.Error(err)
	}
	if _, err := Read([]byte("note: one more\n"+page), Options{Name: "p"}); err == nil || !strings.Contains(err.Error(), "more than 200 notes") {
		t.Error(err)
	}
}
