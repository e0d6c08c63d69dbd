package book

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// Why a catch is not noted on a page, or not taken away.
var (
	ErrMeanwhile = errors.New("the page was changed meanwhile: try again")
	ErrNotRead   = errors.New("with that line the page would be read otherwise: write the line into the page yourself, or say less")
	ErrLetters   = errors.New("the page is in an old encoding that lacks a letter of it: save the page as UTF-8 first")
	ErrNoCatch   = errors.New("no catch is noted in this drop")
	errLarger    = errors.New("the page would be larger than 1 MiB")
)

// AddCatch adds a line for a catch to the page of a drop, durably, and changes nothing else
// on it: the line stands at the drop's end, in the page's own line ends and encoding. o is
// how the drop was read. The book is to be locked.
func (b *Book) AddCatch(e Entry, text string, o notebook.Options) (profile.Catch, error) {
	c, err := notebook.ReadCatch(text, o.Fish...)
	if err != nil {
		return c, err
	}
	p, err := b.editing(e, o)
	if err != nil {
		return c, err
	}
	line, ok := p.encode(notebook.CatchLine(c))
	if !ok {
		return c, ErrLetters
	}
	want := append(slices.Clip(p.drop().Catches), c)
	for _, at := range p.ends() {
		if text := p.insert(at, line); p.reads(text, want) {
			return c, p.save(text)
		}
	}
	return c, ErrNotRead
}

// TakeCatch takes the last catch of a drop off its page again, durably, and gives it. The
// book is to be locked.
func (b *Book) TakeCatch(e Entry, o notebook.Options) (profile.Catch, error) {
	p, err := b.editing(e, o)
	if err != nil {
		return profile.Catch{}, err
	}
	n := len(p.drop().Catches)
	if n == 0 {
		return profile.Catch{}, ErrNoCatch
	}
	c, want := p.drop().Catches[n-1], slices.Clip(p.drop().Catches[:n-1])
	if n == 1 {
		want = nil
	}
	for i := range slices.Backward(p.lines) {
		if text := strings.Join(slices.Delete(slices.Clone(p.lines), i, i+1), ""); p.reads(text, want) {
			return c, p.save(text)
		}
	}
	return c, ErrNotRead
}

// editing is a page in which one line is put in or taken away.
type editing struct {
	book   *Book
	path   string
	text   string
	mode   fs.FileMode
	lines  []string // with their ends
	end    string   // that of its lines
	o      notebook.Options
	sheets []notebook.Sheet
	at     int // which of them
}

// editing reads the page of a drop as it is now, and finds the drop in it.
func (b *Book) editing(e Entry, o notebook.Options) (*editing, error) {
	info, err := os.Lstat(e.Path)
	switch {
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, errNoFile
	}
	data, err := b.disk.ReadFile(e.Path)
	if err != nil {
		return nil, err
	}
	o.Name = e.Path
	p := &editing{book: b, path: e.Path, text: string(data), mode: info.Mode().Perm(), o: o}
	if p.sheets, err = notebook.Read(data, o); err != nil {
		return nil, ErrMeanwhile
	}
	p.at = slices.IndexFunc(p.sheets, func(s notebook.Sheet) bool { return reflect.DeepEqual(s.Drop, e.Drop) })
	if p.at < 0 {
		return nil, ErrMeanwhile
	}
	p.end = "\n"
	switch {
	case strings.Contains(p.text, "\r\n"):
		p.end = "\r\n"
	case strings.Contains(p.text, "\r") && !strings.Contains(p.text, "\n"):
		p.end = "\r"
	}
	p.lines = slices.DeleteFunc(strings.SplitAfter(p.text, p.end[len(p.end)-1:]), func(l string) bool { return l == "" })
	return p, nil
}

func (p *editing) drop() profile.Drop { return p.sheets[p.at].Drop }

// encode writes a line as the page is written: in UTF-8, or in the one-byte encoding in
// which notebook reads what is none.
func (p *editing) encode(line string) (string, bool) {
	if utf8.ValidString(p.text) {
		return line, true
	}
	var out []byte
	for _, r := range line {
		if r >= 0x80 && r < 0xa0 || r > 0xff {
			return "", false
		}
		out = append(out, byte(r))
	}
	return string(out), true
}

// ends are the places, as numbers of lines, where a line of the drop may stand: at the
// page's end, before the comment that its drop goes on, or behind its last reading and the
// catches there.
func (p *editing) ends() (at []int) {
	if p.at == len(p.sheets)-1 {
		last := len(p.lines)
		for last > 0 && (strings.TrimSpace(p.lines[last-1]) == "" || goesOn().MatchString(p.lines[last-1])) {
			last--
		}
		at = append(at, last)
	}
	last := 0
	for _, r := range p.drop().Readings {
		last = max(last, r.Line)
	}
	for n := len(p.drop().Catches); n >= 0; n-- {
		at = append(at, min(last+n, len(p.lines)))
	}
	return at
}

// insert gives the text with a line put in.
func (p *editing) insert(at int, line string) string {
	before := strings.Join(p.lines[:at], "")
	if before != "" && !strings.HasSuffix(before, p.end[len(p.end)-1:]) {
		before += p.end
	}
	return before + line + p.end + strings.Join(p.lines[at:], "")
}

// reads reports whether a text is read as the page is, but for the catches of the drop.
func (p *editing) reads(text string, catches []profile.Catch) bool {
	sheets, err := notebook.Read([]byte(text), p.o)
	if err != nil || len(sheets) != len(p.sheets) {
		return false
	}
	for i, s := range sheets {
		was := unplaced(p.sheets[i].Drop)
		if i == p.at {
			was.Catches = catches
		}
		if !reflect.DeepEqual(unplaced(s.Drop), was) {
			return false
		}
	}
	return true
}

// unplaced is a drop without the lines on which its readings stand.
func unplaced(d profile.Drop) profile.Drop {
	d.Readings = slices.Clone(d.Readings)
	for i := range d.Readings {
		d.Readings[i].Line = 0
	}
	return d
}

// save puts the text in the page's place, durably, unless somebody changed it meanwhile.
func (p *editing) save(text string) error {
	return p.book.swap(p.path, p.text, text, pageName(p.drop()), p.mode)
}

// swap puts a text in the place of a page, durably, unless somebody changed it meanwhile;
// name is that of the part while it is written.
func (b *Book) swap(path, was, text, name string, mode fs.FileMode) error {
	if len(text) > notebook.MaxPage {
		return errLarger
	}
	part, err := b.write(b.path(name), partEnding, text, mode)
	if err != nil {
		return err
	}
	now, err := b.disk.ReadFile(path)
	if err == nil && !bytes.Equal(now, []byte(was)) {
		err = ErrMeanwhile
	}
	if err == nil {
		err = b.disk.Rename(part, path)
	}
	if err != nil {
		b.disk.Remove(part)
		return err
	}
	return b.disk.SyncFolder(b.Dir)
}

// Rewrite puts a text in the place of a page that its angler corrected, durably, where the
// page is still as it was, and the text can be read and has readings. The book is to be locked.
func (b *Book) Rewrite(path, was, text string, o notebook.Options) ([]notebook.Sheet, error) {
	info, err := os.Lstat(path)
	switch {
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, errNoFile
	}
	o.Name, o.Unread = path, false
	sheets, err := notebook.Read([]byte(text), o)
	if err != nil {
		return nil, err
	}
	return sheets, b.swap(path, was, text, pageName(sheets[0].Drop), info.Mode().Perm())
}

// Bounds of Caught: a plan waits for it.
const (
	mostLooked = 4000 // pages
	mostCaught = 400  // drops
)

// Caught gives the drops on which something was caught, from the newest pages back by
// their names, some hundreds at most. What cannot be read is passed over: whoever asks has
// an answer without it.
func (b *Book) Caught(o notebook.Options) (drops []profile.Drop) {
	names, err := b.pages()
	if err != nil {
		return nil
	}
	for i, name := range slices.Backward(names) {
		if len(names)-i > mostLooked || len(drops) >= mostCaught {
			break
		}
		data, err := text(b.path(name))
		if err != nil || !mayBeCaught().Match(data) {
			continue
		}
		sheets, _ := notebook.Read(data, o)
		for _, s := range sheets {
			if len(s.Drop.Catches) > 0 {
				drops = append(drops, s.Drop)
			}
		}
	}
	return drops
}

// mayBeCaught matches a page that may have a line on a catch.
var mayBeCaught = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?i)caught|catch|landed`) })
