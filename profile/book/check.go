package book

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/check"
	"coldseam/profile/notebook"
)

// Trouble is a kind of Finding.
type Trouble string

// The kinds. Of a page that cannot be read the drops are missing from all that the book is
// asked; all others count as they stand.
const (
	Unreadable   Trouble = "cannot be read"
	SeveralDrops Trouble = "several drops"
	NoReadings   Trouble = "no readings"
	NoDate       Trouble = "no date"
	DateToCome   Trouble = "date to come"
	OddReading   Trouble = "odd reading"
	NotEnded     Trouble = "not ended"
	Twice        Trouble = "same drop twice"
	LeftPart     Trouble = "left by a save" // that was cut off
	LeftEdited   Trouble = "changed by hand"
	LoneLog      Trouble = "record without a page"
)

// Finding is something about a file of the book that somebody should look at.
type Finding struct {
	Trouble Trouble
	File    string // its name in the folder
	Line    int    // 0 where it is about the whole file
	Err     error  // of Unreadable
	Drops   int    // of SeveralDrops
	Date    string
	Reading profile.Reading // of OddReading
	Other   string          // of Twice, the page that is the same
}

// Checked is the book looked through.
type Checked struct {
	Drops, Pages, Damaged int
	Findings              []Finding
}

// Check reads every page of the book in full and looks at the other files of its folder.
// What it finds comes in the order of the files' names.
func (b *Book) Check(now time.Time, o notebook.Options) (Checked, error) {
	heads, err := b.Heads(o)
	if err != nil {
		return Checked{}, err
	}
	c := Checked{}
	byFile := map[string][]Entry{}
	for _, e := range b.Read(heads, o) {
		name := filepath.Base(e.Path)
		byFile[name] = append(byFile[name], e)
	}
	var names []string
	files, err := os.ReadDir(b.Dir) // sorted
	if err != nil && len(heads) > 0 {
		return Checked{}, err
	}
	for _, f := range files {
		names = append(names, f.Name())
	}
	seen := map[identity][]Entry{}
	for _, name := range names {
		c.file(name, names, byFile[name], now, seen)
	}
	return c, nil
}

// file looks at one file and the drops on it.
func (c *Checked) file(name string, names []string, entries []Entry, now time.Time, seen map[identity][]Entry) {
	found := func(f Finding) {
		f.File = name
		c.Findings = append(c.Findings, f)
	}
	if len(entries) == 0 {
		if f, is := beside(name, names); is {
			found(f)
		}
		return
	}
	c.Pages++
	if err := entries[0].Err; err != nil {
		c.Damaged++
		found(Unread(name, err))
		return
	}
	c.Drops += len(entries)
	if len(entries) > 1 {
		found(Finding{Trouble: SeveralDrops, Drops: len(entries)})
	}
	if entries[0].Unended {
		found(Finding{Trouble: NotEnded})
	}
	slices.SortFunc(entries, func(x, y Entry) int { return x.Nth - y.Nth })
	for _, e := range entries {
		c.drop(e, now, found)
		id := identityOf(notebook.GlanceOf(e.Drop))
		for _, o := range seen[id] {
			if len(e.Drop.Readings) > 0 && sameReadings(o.Drop, e.Drop) {
				found(Finding{Trouble: Twice, Date: e.Drop.Date, Other: filepath.Base(o.Path)})
				break
			}
		}
		seen[id] = append(seen[id], e)
	}
}

// Unread is a page that cannot be read, and why, as the error of its Head says.
func Unread(file string, err error) Finding {
	f := Finding{Trouble: Unreadable, File: file, Err: err}
	var refused *notebook.Error
	if errors.As(err, &refused) {
		f.Line, f.Err = refused.Line, errors.New(refused.Msg)
	}
	return f
}

// drop looks at one drop.
func (c *Checked) drop(e Entry, now time.Time, found func(Finding)) {
	d := e.Drop
	switch {
	case len(d.Readings) == 0:
		found(Finding{Trouble: NoReadings})
	case d.Date == "":
		found(Finding{Trouble: NoDate})
	case d.Date[:len(time.DateOnly)] > now.Format(time.DateOnly):
		found(Finding{Trouble: DateToCome, Date: d.Date})
	}
	for _, r := range check.Of(d).Drop().Readings {
		if r.Flag.LeavesOut() {
			found(Finding{Trouble: OddReading, Line: r.Line, Reading: r, Date: d.Date})
		}
	}
}

// beside looks at a file that is no page.
func beside(name string, names []string) (f Finding, is bool) {
	switch {
	case strings.HasSuffix(name, partEnding):
		return Finding{Trouble: LeftPart}, true
	case strings.HasSuffix(name, keptEnding):
		return Finding{Trouble: LeftEdited}, true
	case strings.HasSuffix(name, LogEnding):
		return Finding{Trouble: LoneLog}, !slices.Contains(names, strings.TrimSuffix(name, LogEnding)+".txt")
	}
	return Finding{}, false
}
