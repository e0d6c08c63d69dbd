package report

import (
	"fmt"

	"coldseam/profile"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// dropNamed names a drop for a list of what was added.
func dropNamed(d profile.Drop) string {
	name := WhereWhen(d)
	if name == "" {
		name = "a drop without a name"
	}
	return fmt.Sprintf("%s, %s", name, unit.Count(len(d.Readings), "reading"))
}

// Added says that a drop is in the book now, on the page of that name; "" leaves the name
// out.
func Added(d profile.Drop, page string) string {
	t := "Added: " + dropNamed(d)
	if page != "" {
		t += ": " + plain.Line(page)
	}
	return t
}

// WouldAdd says that a drop is not in the book yet.
func WouldAdd(d profile.Drop) string { return "Would be added: " + dropNamed(d) }

// AlreadyIn says that a drop is in the book; number 0 is one that came just before.
func AlreadyIn(d profile.Drop, number int) string {
	if number == 0 {
		return fmt.Sprintf("Not added, the same as one before it: %s", dropNamed(d))
	}
	return fmt.Sprintf("Not added, already drop %d of the book: %s", number, dropNamed(d))
}

// AddedInAll is the sum under the list: drops that were added to the book in a folder, "" is
// the only one there is, or would be, and drops that were there.
func AddedInAll(added, there int, folder string, dry bool) string {
	if folder == "" {
		folder = "the book"
	}
	t := unit.Count(added, "drop") + " added to " + plain.Line(folder)
	if dry {
		t = unit.Count(added, "drop") + " would be added to " + plain.Line(folder)
	}
	if there > 0 {
		t += fmt.Sprintf(", %d there already", there)
	}
	return t + "."
}

// Undated says that drops were added without a date; "" for none.
func Undated(n int, dry bool) string {
	have := "have"
	if n == 1 {
		have = "has"
	}
	switch {
	case n == 0:
		return ""
	case dry:
		return fmt.Sprintf("%s %s no date, which season and forecast need: write date: 2026-07-18 on the page first, or give --date.", unit.Count(n, "drop"), have)
	}
	return fmt.Sprintf("%s %s no date, which season and forecast need: write date: 2026-07-18 on the new page.", unit.Count(n, "drop"), have)
}

// ReadSo is a note on how a file was read, for a list of them.
func ReadSo(file string, line int, text string) string {
	if line == 0 {
		return fmt.Sprintf("%s: %s", plain.Line(file), plain.Line(text))
	}
	return fmt.Sprintf("%s, line %d: %s", plain.Line(file), line, plain.Line(text))
}

// MoreNotes says how many notes are not shown; "" for none.
func MoreNotes(n int) string {
	if n == 0 {
		return ""
	}
	return "And " + unit.Count(n, "more note") + " on how lines were read: coldseam plan --full shows those of a page."
}
