package report

import (
	"testing"

	"coldseam/profile"
)

// TestAddedWords: what is said of drops that come into the book.
func TestAddedWords(t *testing.T) {
	d := profile.Drop{Water: "Alder\x1b Kettle", Date: "2026-07-18", Readings: make([]profile.Reading, 3)}
	for got, want := range map[string]string{
		Added(d, "2026.txt"):                    "Added: Alder\ufffd Kettle, 2026-07-18, 3 readings: 2026.txt",
		WouldAdd(profile.Drop{}):                "Would be added: a drop without a name, 0 readings",
		AlreadyIn(d, 7):                         "Not added, already drop 7 of the book: Alder\ufffd Kettle, 2026-07-18, 3 readings",
		AlreadyIn(d, 0):                         "Not added, the same as one before it: Alder\ufffd Kettle, 2026-07-18, 3 readings",
		AddedInAll(1, 1, "", false):             "1 drop added to the book, 1 there already.",
		AddedInAll(1, 0, "book", false):         "1 drop added to book.",
		AddedInAll(2, 3, "book", true):          "2 drops would be added to book, 3 there already.",
		Undated(0, false):                       "",
		Undated(1, false):                       "1 drop has no date, which season and forecast need: write date: 2026-07-18 on the new page.",
		Undated(2, true):                        "2 drops have no date, which season and forecast need: write date: 2026-07-18 on the page first, or give --date.",
		ReadSo("a.txt", 3, "\"x\" read as y\n"): "a.txt, line 3: \"x\" read as y\ufffd",
		ReadSo("a.txt", 0, "depths in ft"):      "a.txt: depths in ft",
		MoreNotes(0):                            "",
		MoreNotes(1):                            "And 1 more note on how lines were read: coldseam plan --full shows those of a page.",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
