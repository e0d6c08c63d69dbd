package report

import (
	"fmt"

	"coldseam/profile/book"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// Found says what is wrong with a file of the book, where, and what to do.
func Found(f book.Finding) string {
	where := plain.Line(f.File)
	if f.Line > 0 {
		where = fmt.Sprintf("%s, line %d", where, f.Line)
	}
	return where + ": " + found(f)
}

// found is what Found says behind the file's name.
func found(f book.Finding) string {
	switch f.Trouble {
	case book.Unreadable:
		return "cannot be read: " + plain.Line(f.Err.Error())
	case book.SeveralDrops:
		return fmt.Sprintf("holds %d drops; each counts. To part them, move the page out of the folder and coldseam book add it.", f.Drops)
	case book.NoReadings:
		return "has no readings: write them on it, or move it out of the folder."
	case book.NoDate:
		return "has no date, which season and forecast need: write date: 2026-07-18 on it."
	case book.DateToCome:
		return f.Date + " is still to come: mend the date."
	case book.OddReading:
		r := f.Reading
		r.Line = 0
		return Flagged(r)
	case book.NotEnded:
		return "is not ended: coldseam drop goes on with it."
	case book.Twice:
		return "holds the same drop as " + plain.Line(f.Other) + ": take one of them out of the folder."
	case book.LeftPart:
		return "was left by a save that was cut off; the page before it is whole: remove it."
	case book.LeftEdited:
		return "keeps a page as it was after somebody changed it by hand: compare it with the page, then remove it."
	case book.LoneLog:
		return "is what a probe said, and its page is gone: coldseam probe replay reads it; or remove it."
	}
	return string(f.Trouble)
}

// CheckedBook is the sum of a check.
func CheckedBook(c book.Checked) string {
	t := unit.Count(c.Drops, "drop") + " on " + unit.Count(c.Pages, "page")
	switch {
	case c.Damaged > 0:
		return t + "; " + unit.Count(c.Damaged, "page") + " cannot be read, and the drops there are left out until that is mended."
	case len(c.Findings) > 0:
		return t + "; every page can be read."
	}
	return t + "; nothing is amiss."
}

// FindingJSON is a finding for scripts.
type FindingJSON struct {
	File string       `json:"file"`
	Line int          `json:"line,omitempty"`
	Code book.Trouble `json:"code"`
	Text string       `json:"text"`
}

// CheckJSON is a check for scripts.
type CheckJSON struct {
	Drops    int           `json:"drops"`
	Pages    int           `json:"pages"`
	Damaged  int           `json:"damaged_pages"`
	Findings []FindingJSON `json:"findings"`
}

// CheckAsJSON makes the stable form of a check.
func CheckAsJSON(c book.Checked) CheckJSON {
	out := CheckJSON{c.Drops, c.Pages, c.Damaged, []FindingJSON{}}
	for _, f := range c.Findings {
		out.Findings = append(out.Findings, FindingJSON{f.File, f.Line, f.Trouble, found(f)})
	}
	return out
}
