package report

import (
	"testing"

	"coldseam/profile/book"
)

func TestTouched(t *testing.T) {
	for _, c := range []struct {
		what      book.Touch
		path, now string
		want      string
	}{
		{book.Gone, "a.txt", "a.txt", "The page was missing and has been written again: a.txt"},
		{book.Kept, "a.txt", "a.edited", "The page had been changed by hand; that version is kept in a.edited"},
		{book.Changed, "a.txt", "", "The page was changed by hand meanwhile and is left as it is: a.txt"},
		{book.Changed, "a\x1b.txt", "a-2.txt", "The page was changed by hand meanwhile and is left as it is: a\ufffd.txt. This drop goes on in a-2.txt"},
	} {
		if got := Touched(c.what, c.path, c.now); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
