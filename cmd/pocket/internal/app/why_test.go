package app

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"syscall"
	"testing"

	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/settings"
)

// What goes wrong is said without the names of files and the words of a system.
func TestWhy(t *testing.T) {
	_, badSettings := settings.Parse("settings", []byte("for = \"perch\"\nfly_weight = \"heavy\"\n"))
	_, badPage := notebook.Read([]byte("5 71\n10 6x8y\n"), notebook.Options{Name: "/book/p.txt"})
	for _, c := range []struct {
		err  error
		want string
	}{
		{&fs.PathError{Op: "write", Path: "/book/2026-07-18.txt.part", Err: syscall.ENOSPC}, "the phone has no room left. Free some"},
		{fmt.Errorf("saving: %w", syscall.EIO), "the phone's storage does not answer. Try again"},
		{&fs.PathError{Op: "open", Path: "/book", Err: syscall.ENOTDIR}, "the phone's storage does not answer. Try again"},
		{&fs.PathError{Op: "lstat", Path: "/book/p.txt", Err: syscall.ENOENT}, "it is not in the book any more"},
		{&fs.PathError{Op: "name", Path: "/book/p.txt", Err: errors.New("a thousand files of this name")}, "a thousand files of this name"},
		{book.ErrInUse, "a drop is being taken in another window or tab. End it there"},
		{badSettings, "line 2: fly_weight: "},
		{badPage, `"10 6x8y": `},
	} {
		got := why(c.err)
		if !strings.HasPrefix(got, c.want) || strings.Contains(got, "/") || strings.HasSuffix(got, ".") {
			t.Errorf("%v: %q, want %q", c.err, got, c.want)
		}
	}
}

// A page that leaves its units open is told without a flag, in the book and where it is pasted.
func TestNoFlags(t *testing.T) {
	p := newPhone(t)
	p.write("bare.txt", "0 20\n5 19\n10 12\n")
	p.do("book", "")
	p.has("the depths' unit is not stated: either feet, or metres: add the line \"units: ft F\" or \"units: m C\".")
	p.do("page", "0")
	p.has("add the line")
	p.do("page-save", "", "page", "0 20\n5 19\n10 12\n")
	p.has("Not saved: line 1: ")
}
