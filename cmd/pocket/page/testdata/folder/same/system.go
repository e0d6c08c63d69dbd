// Package same does the same work with files wherever it is compiled for, so that what a
// browser does with it can be compared with what a disk does.
package same

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"time"
)

// System calls what package os has for files, and tells what came of it, a line a call.
func System(dir string) (lines []string) {
	at := func(name string) string { return dir + "/" + name }
	say := func(what string, err error, more ...any) {
		lines = append(lines, strings.TrimSpace(fmt.Sprint(what, ": ", reason(err), " ", fmt.Sprint(more...))))
	}
	read := func(name string) {
		data, err := os.ReadFile(at(name))
		say("read "+name, err, fmt.Sprintf("%q", data))
	}
	look := func(name string) {
		info, err := os.Lstat(at(name))
		if err != nil {
			say("look "+name, err)
			return
		}
		size := info.Size()
		if info.IsDir() {
			size = 0 // is the system's affair
		}
		say("look "+name, err, info.Name(), " ", size, " ", info.Mode(), " ", time.Since(info.ModTime()).Abs() < time.Hour)
	}
	list := func(name string) {
		entries, err := os.ReadDir(at(name))
		say("list "+name, err, entries)
	}
	create := func(name string, flags int, mode fs.FileMode, parts ...string) {
		f, err := os.OpenFile(at(name), flags, mode)
		say("open "+name, err)
		if err != nil {
			return
		}
		for _, part := range parts {
			_, err := f.WriteString(part)
			say("write "+name, err)
		}
		say("sync "+name, f.Sync())
		say("close "+name, f.Close())
		say("close again", f.Close())
	}
	const fresh = os.O_WRONLY | os.O_CREATE | os.O_EXCL

	// folders
	say("folder", os.Mkdir(at("a"), 0o700))
	say("folder", os.Mkdir(at("a"), 0o700))
	say("folder in none", os.Mkdir(at("none/b"), 0o700))
	say("folders", os.MkdirAll(at("a/b/c"), 0o755))
	list("a")
	list("none")
	look("a")

	// files, made once
	create("a/one.txt", fresh, 0o600, "first", " and second")
	create("a/one.txt", fresh, 0o600, "again")
	create("none/one.txt", fresh, 0o600)
	create("a/one.txt/two", fresh, 0o600)
	create("a", os.O_WRONLY, 0)
	create("a/\u00e4\u00f6 \U0001F41F #%'\"<&.txt", fresh, 0o640, "fish")
	list("a")
	read("a/one.txt")
	read("a/none.txt")
	read("a/one.txt/two")
	read("a/b")
	look("a/one.txt")
	look("a/./b/../one.txt")
	read("a//one.txt")

	// written over, at the end, in the middle
	say("write", os.WriteFile(at("a/one.txt"), []byte("short"), 0o644))
	read("a/one.txt")
	look("a/one.txt")
	create("a/one.txt", os.O_WRONLY|os.O_APPEND, 0, ", longer")
	create("a/two.txt", os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o600, "x", "y")
	create("a/two.txt", os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o600, "z")
	read("a/one.txt")
	read("a/two.txt")
	say("middle", middle(at("a/two.txt")))
	read("a/two.txt")
	say("cut", os.Truncate(at("a/two.txt"), 3))
	read("a/two.txt")
	say("write to one that is read", readOnly(at("a/two.txt")))

	// other names
	say("rename", os.Rename(at("a/two.txt"), at("a/three.txt")))
	look("a/two.txt")
	read("a/three.txt")
	say("rename over", os.Rename(at("a/three.txt"), at("a/one.txt")))
	read("a/one.txt")
	say("rename none", os.Rename(at("a/three.txt"), at("a/one.txt")))
	say("rename into none", os.Rename(at("a/one.txt"), at("none/one.txt")))
	say("rename over a folder", os.Rename(at("a/one.txt"), at("a/b")))
	say("rename to itself", os.Rename(at("a/one.txt"), at("a/one.txt")))
	say("link", os.Link(at("a/one.txt"), at("a/linked.txt")))
	say("link", os.Link(at("a/one.txt"), at("a/linked.txt")))
	say("link none", os.Link(at("a/none.txt"), at("a/linked2.txt")))
	same, err := sameFile(at("a/one.txt"), at("a/linked.txt"))
	say("linked", err, same)
	read("a/linked.txt")

	// an open file holds what it held
	say("held", held(at("a/one.txt"), at("a/beside.txt")))
	say("renamed while written", renamed(at("a/moving.txt"), at("a/moved.txt")))
	read("a/moved.txt")

	// modes and times
	say("mode", os.Chmod(at("a/one.txt"), 0o400))
	look("a/one.txt")
	then := time.Date(2026, 7, 18, 14, 20, 0, 0, time.UTC)
	say("time", os.Chtimes(at("a/one.txt"), then, then))
	info, err := os.Stat(at("a/one.txt"))
	say("time", err, info.ModTime().UTC())

	// gone
	say("remove", os.Remove(at("a/one.txt")))
	say("remove", os.Remove(at("a/one.txt")))
	read("a/one.txt")
	read("a/linked.txt")
	say("remove a full folder", os.Remove(at("a/b")))
	say("remove a folder", os.Remove(at("a/b/c")))
	say("sync a folder", syncFolder(at("a")))
	say("sync none", syncFolder(at("none")))
	list("a")
	say("remove all", os.RemoveAll(at("a")))
	list("")

	// many, and a large one
	for i := range 40 {
		if err := os.WriteFile(at(fmt.Sprintf("%d.txt", i*7%40)), []byte{byte(i)}, 0o600); err != nil {
			say("many", err)
		}
	}
	list("")
	big := strings.Repeat("0123456789", 300_000)
	say("large", os.WriteFile(at("large"), []byte(big), 0o600))
	back, err := os.ReadFile(at("large"))
	say("large", err, string(back) == big)
	found, err := filepath.Glob(at("1*.txt"))
	say("glob", err, len(found))
	temporary, err := os.CreateTemp(dir, "x-*.part")
	say("temporary", err, temporary != nil && strings.HasPrefix(temporary.Name(), dir))
	say("synced, not closed", synced(at("synced")))
	say("removed while it was written", removed(at("removed")))
	read("removed")
	return lines
}

func middle(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	defer f.Close()
	if _, err := f.WriteAt([]byte("-"), 1); err != nil {
		return err
	}
	if _, err := f.Seek(0, io.SeekEnd); err != nil {
		return err
	}
	if _, err := f.WriteString("end"); err != nil {
		return err
	}
	b := make([]byte, 3)
	if _, err := f.ReadAt(b, 1); err != nil || string(b) != "-ze" {
		return fmt.Errorf("%q, %w", b, err)
	}
	return nil
}

func readOnly(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	_, err = f.WriteString("x")
	return err
}

func sameFile(a, b string) (bool, error) {
	x, err := os.Stat(a)
	if err != nil {
		return false, err
	}
	y, err := os.Stat(b)
	return err == nil && os.SameFile(x, y), err
}

// held reads a file that another takes the place of after it was opened.
func held(path, beside string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	was, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if err := os.WriteFile(beside, []byte("another, and longer than it was"), 0o600); err != nil {
		return err
	}
	if err := os.Rename(beside, path); err != nil {
		return err
	}
	now, err := io.ReadAll(f)
	if err == nil && string(now) != string(was) {
		return fmt.Errorf("it held %q, now %q", was, now)
	}
	return err
}

// renamed renames a file between writing and syncing it.
func renamed(from, to string) error {
	f, err := os.Create(from)
	if err != nil {
		return err
	}
	defer f.Close()
	if _, err := f.WriteString("before"); err != nil {
		return err
	}
	if err := os.Rename(from, to); err != nil {
		return err
	}
	if _, err := f.WriteString(", after"); err != nil {
		return err
	}
	return f.Sync()
}

// synced reads what another wrote and synced, before it is closed.
func synced(path string) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	defer f.Close()
	if _, err := f.WriteString("one"); err != nil {
		return err
	}
	if err := f.Sync(); err != nil {
		return err
	}
	if data, err := os.ReadFile(path); err != nil || string(data) != "one" {
		return fmt.Errorf("%q, %w", data, err)
	}
	return nil
}

// removed writes to a file in whose place another stands; whether that is told is the
// system's affair.
func removed(path string) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	defer f.Close()
	if err := errors.Join(os.Remove(path), os.WriteFile(path, []byte("another"), 0o600)); err != nil {
		return err
	}
	_, err = f.WriteString("late")
	f.Sync()
	return err
}

func syncFolder(path string) error {
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}

// reason is an error in the same words everywhere.
func reason(err error) string {
	if err == nil {
		return "ok"
	}
	var no syscall.Errno
	if !errors.As(err, &no) {
		for _, e := range []error{fs.ErrClosed, fs.ErrInvalid} {
			if errors.Is(err, e) {
				return e.Error()
			}
		}
		return err.Error()
	}
	for name, e := range map[string]syscall.Errno{
		"ENOENT": syscall.ENOENT, "EEXIST": syscall.EEXIST, "ENOTDIR": syscall.ENOTDIR, "EISDIR": syscall.EISDIR, "ENOSPC": syscall.ENOSPC,
		"ENOTEMPTY": syscall.ENOTEMPTY, "EBADF": syscall.EBADF, "EINVAL": syscall.EINVAL, "EIO": syscall.EIO, "EPERM": syscall.EPERM, "EACCES": syscall.EACCES,
	} {
		if no == e {
			return name
		}
	}
	return no.Error()
}
