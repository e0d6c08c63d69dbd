package report

import (
	"coldseam/profile/book"
	"coldseam/profile/plain"
)

// Touched tells what became of a page in which somebody else had a hand while its drop was
// taken: what happened to the page at path, and the page or file that was written because of
// it, "" for none.
func Touched(what book.Touch, path, now string) string {
	path, now = plain.Line(path), plain.Line(now)
	switch {
	case what == book.Gone:
		return "The page was missing and has been written again: " + path
	case what == book.Kept:
		return "The page had been changed by hand; that version is kept in " + now
	case now == "":
		return "The page was changed by hand meanwhile and is left as it is: " + path
	}
	return "The page was changed by hand meanwhile and is left as it is: " + path + ". This drop goes on in " + now
}
