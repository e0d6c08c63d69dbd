package report

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/unit"
)

// TestFound: every kind of trouble says where it is and what to do.
func TestFound(t *testing.T) {
	odd := profile.Reading{Depth: 10, DepthUnit: unit.Foot, Temp: 2, TempUnit: unit.Fahrenheit, Flag: profile.SlippedDigit, Guess: "72 F", Line: 5}
	all := book.Checked{Drops: 3, Pages: 2, Damaged: 1}
	for _, c := range []struct {
		f    book.Finding
		want string
	}{
		{book.Finding{Trouble: book.Unreadable, Line: 3, Err: errors.New("units: x: write \"ft F\"")}, "line 3: cannot be read: units: x: write \"ft F\""},
		{book.Finding{Trouble: book.SeveralDrops, Drops: 2}, "holds 2 drops; each counts. To part them, move the page out of the folder and coldseam book add it."},
		{book.Finding{Trouble: book.NoReadings}, "has no readings: write them on it, or move it out of the folder."},
		{book.Finding{Trouble: book.NoDate}, "has no date, which season and forecast need: write date: 2026-07-18 on it."},
		{book.Finding{Trouble: book.DateToCome, Date: "2099-01-01"}, "2099-01-01 is still to come: mend the date."},
		{book.Finding{Trouble: book.OddReading, Line: 5, Reading: odd}, "line 5: 2 F at 10 ft looks like a slipped digit (72 F?); not used."},
		{book.Finding{Trouble: book.NotEnded}, "is not ended: coldseam drop goes on with it."},
		{book.Finding{Trouble: book.Twice, Other: "b\x1b.txt"}, "holds the same drop as b\ufffd.txt: take one of them out of the folder."},
		{book.Finding{Trouble: book.LeftPart}, "was left by a save that was cut off; the page before it is whole: remove it."},
		{book.Finding{Trouble: book.LeftEdited}, "keeps a page as it was after somebody changed it by hand: compare it with the page, then remove it."},
		{book.Finding{Trouble: book.LoneLog}, "is what a probe said, and its page is gone: coldseam probe replay reads it; or remove it."},
	} {
		c.f.File = "a\n.txt"
		got := Found(c.f)
		if want := strings.Replace("a\ufffd.txt: "+c.want, ": line", ", line", 1); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		all.Findings = append(all.Findings, c.f)
	}
	for _, c := range []struct {
		c    book.Checked
		want string
	}{
		{all, "3 drops on 2 pages; 1 page cannot be read, and the drops there are left out until that is mended."},
		{book.Checked{Drops: 1, Pages: 1, Findings: all.Findings[:1]}, "1 drop on 1 page; every page can be read."},
		{book.Checked{Drops: 2, Pages: 2}, "2 drops on 2 pages; nothing is amiss."},
	} {
		if got := CheckedBook(c.c); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	data, err := json.Marshal(CheckAsJSON(book.Checked{Drops: 1, Pages: 1}))
	if err != nil || string(data) != `{"drops":1,"pages":1,"damaged_pages":0,"findings":[]}` {
		t.Errorf("%s, %v", data, err)
	}
	if got := CheckAsJSON(all).Findings[5]; got.Line != 5 || got.Code != book.OddReading || got.Text != "2 F at 10 ft looks like a slipped digit (72 F?); not used." {
		t.Errorf("%+v", got)
	}
}
