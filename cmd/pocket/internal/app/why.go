package app

import (
	"errors"
	"io/fs"
	"strconv"
	"strings"
	"syscall"

	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

// why says why something could not be done, and what to do about it: without names of files
// and words of the system, which nobody knows on a phone. It has no stop at its end.
func why(err error) string {
	page, set := new(notebook.Error), new(settings.Error)
	switch {
	case errors.As(err, &page):
		return plain.Line(page.Msg)
	case errors.Is(err, book.ErrInUse):
		return "a drop is being taken in another window or tab. End it there, or close that one, then try again"
	case errors.Is(err, fs.ErrNotExist):
		return "it is not in the book any more. It may have been taken out in another window"
	case errors.Is(err, syscall.ENOSPC):
		return "the phone has no room left. Free some on it, then try again"
	case errors.As(err, new(syscall.Errno)):
		return "the phone's storage does not answer. Try again; if it stays so, close this page and open it again"
	case errors.As(err, &set):
		return plain.Line("line " + strconv.Itoa(set.Line) + ": " + set.What())
	}
	return plain.Line(book.Cause(err))
}

// sentence is a clause with a capital and a stop, which a question has.
func sentence(text string) string {
	text = capital(text)
	if strings.HasSuffix(text, "?") || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// cannotRead says why the book cannot be read.
func cannotRead(err error) string { return "The saved drops cannot be read: " + why(err) + "." }

// unread says why a page cannot be read.
func unread(name string, err error) string {
	if !errors.As(err, new(*notebook.Error)) {
		err = errors.New(why(err))
	}
	return report.Found(book.Unread(name, err)) + "."
}

// lineOfPage is an error of a page that was typed, with the line it is in.
func lineOfPage(err error) string {
	var is *notebook.Error
	switch {
	case !errors.As(err, &is):
		return why(err)
	case is.Line > 0:
		return "line " + strconv.Itoa(is.Line) + ": " + plain.Line(is.Msg)
	}
	return "this page " + plain.Line(is.Msg)
}
