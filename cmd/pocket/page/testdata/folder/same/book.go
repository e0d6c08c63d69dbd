package same

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

var feet = unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}

// Drop is one of some readings, the same for the same water and number.
func Drop(water string, readings int) profile.Drop {
	d := profile.Drop{Water: water, Date: "2026-07-18 14:20", Units: feet, Bottom: profile.Some(9.5), For: "rainbow", Notes: []string{"geese \U0001F9A2, \"calm\" <b>"}}
	for i := range readings {
		d.Readings = append(d.Readings, profile.Reading{Depth: float64(3 * i), DepthUnit: unit.Foot, Temp: 74 - 0.3*float64(i*i), TempUnit: unit.Fahrenheit, Step: 0.1})
	}
	d.Correct()
	return d
}

// asRead is how pages are read.
var asRead = notebook.Options{Unread: true}

// Book takes drops into a book, as the program does, and gives what is in the folder then.
func Book(dir string) (files map[string]string, err error) {
	b, err := book.Open(filepath.Join(dir, "book"), book.System{})
	if err != nil {
		return nil, err
	}
	unlock, err := b.Lock()
	if err != nil {
		return nil, err
	}
	defer unlock()
	for _, step := range []func(*book.Book) error{takeOne, goOn, changedByHand, addAndCatch} {
		if err := step(b); err != nil {
			return nil, err
		}
	}
	heads, err := b.Heads(asRead)
	if err != nil {
		return nil, err
	}
	files, err = Files(b.Dir)
	for _, e := range b.Read(heads, asRead) {
		files[fmt.Sprint("drop ", e.Number)] = fmt.Sprintln(filepath.Base(e.Path), e.Unended, reason(e.Err), notebook.Write(e.Drop))
	}
	return files, err
}

// takeOne takes a drop of eight readings and ends it.
func takeOne(b *book.Book) error {
	p, err := b.Begin(Drop("Alder Kettle", 1))
	for n := 2; n <= 8 && err == nil; n++ {
		err = p.Save(Drop("Alder Kettle", n), n == 8)
	}
	if err != nil {
		return err
	}
	data, err := os.ReadFile(p.Path)
	if want := notebook.Write(Drop("Alder Kettle", 8)); err == nil && string(data) != want {
		err = fmt.Errorf("it saved %q, not %q", data, want)
	}
	return err
}

// goOn goes on with a drop that was cut off, and leaves another that is cut off; a part of a
// page that was being saved then is taken away.
func goOn(b *book.Book) error {
	for _, water := range []string{"Sedge Mere", "Sedge Mere", "Marl Hole"} {
		if _, err := b.Begin(Drop(water, 3)); err != nil {
			return err
		}
	}
	part := filepath.Join(b.Dir, "2026-07-18-14-20-sedge-mere.txt.part")
	if err := os.WriteFile(part, []byte("2026"), 0o600); err != nil {
		return err
	}
	unlock, err := b.Lock()
	if !errors.Is(err, book.ErrInUse) { // where a folder is locked by its system
		if err != nil {
			return err
		}
		unlock()
		if _, err := os.Stat(part); !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("a part was left: %w", err)
		}
	}
	os.Remove(part)
	cut, err := b.Unended()
	if err != nil || len(cut) != 3 {
		return fmt.Errorf("%d cut off: %w", len(cut), err)
	}
	for _, u := range cut {
		if filepath.Base(u.Path) == "2026-07-18-14-20-sedge-mere-2.txt" {
			return u.Save(Drop(u.Drop.Water, 5), true)
		}
	}
	return errors.New("the drop that was cut off is not offered")
}

// changedByHand takes a drop while somebody changes and removes its page.
func changedByHand(b *book.Book) error {
	p, err := b.Begin(Drop("Rush Tarn", 2))
	if err != nil {
		return err
	}
	if err := os.WriteFile(p.Path, []byte("mine now\n"), 0o600); err != nil {
		return err
	}
	if err := p.Save(Drop("Rush Tarn", 3), false); err != nil {
		return err
	}
	if err := os.Remove(p.Path); err != nil {
		return err
	}
	return p.Save(Drop("Rush Tarn", 4), true)
}

// addAndCatch adds drops that have ended, with catches on one, and takes one of them away.
func addAndCatch(b *book.Book) error {
	path, err := b.Add(Drop("Alder Kettle", 6))
	if err != nil {
		return err
	}
	if _, err := b.Add(Drop("../../ \U0001F41F/\u00e9tc", 4)); err != nil {
		return err
	}
	for _, catch := range []string{"rainbow 16 ft", "perch 4 m", "3 rainbow 14 ft, lost one"} {
		e, err := entry(b, path)
		if err == nil {
			_, err = b.AddCatch(e, catch, asRead)
		}
		if err != nil {
			return err
		}
	}
	e, err := entry(b, path)
	if err == nil {
		_, err = b.TakeCatch(e, asRead)
	}
	return err
}

func entry(b *book.Book, path string) (book.Entry, error) {
	all, err := b.Entries(asRead)
	if err != nil {
		return book.Entry{}, err
	}
	for _, e := range all {
		if e.Path == path {
			return e, e.Err
		}
	}
	return book.Entry{}, fs.ErrNotExist
}

// Files are the files of a folder and what they hold.
func Files(dir string) (map[string]string, error) {
	entries, err := os.ReadDir(dir)
	out := map[string]string{}
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			return nil, err
		}
		info, err := e.Info()
		if err != nil {
			return nil, err
		}
		out[e.Name()] = info.Mode().String() + "\n" + string(data)
	}
	return out, err
}
