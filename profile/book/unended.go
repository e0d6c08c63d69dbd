package book

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"time"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// notEnded is the comment by which a page tells that its drop goes on.
const notEnded = "# not ended: coldseam drop goes on with it"

// goesOn matches it wherever it stands, as an editor may have left it.
var goesOn = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?m)^[ \t]*# not ended\b`) })

// Unended is a page whose drop has not ended, as far as can be told.
type Unended struct {
	*Page
	Drop profile.Drop
	Err  error // why it cannot be gone on with; nil where it can
}

// Unended gives the pages whose drop has not ended, the one saved last first. A page
// that cannot be read is among them, with its reason, as nobody can tell.
func (b *Book) Unended() ([]Unended, error) {
	entries, err := os.ReadDir(b.Dir) // sorted by name
	if err != nil {
		return nil, err
	}
	slices.Reverse(entries)
	var out []Unended
	saved := map[string]time.Time{}
	for _, e := range entries {
		path := b.path(e.Name())
		info, err := os.Stat(path) // of a link, what it leads to
		if filepath.Ext(path) != ".txt" || err == nil && !info.Mode().IsRegular() {
			continue
		}
		u := Unended{Page: &Page{Path: path, book: b}}
		if err == nil {
			saved[path] = info.ModTime()
		}
		if u.read(info, err, e.Type()&fs.ModeSymlink != 0) {
			out = append(out, u)
		}
	}
	slices.SortStableFunc(out, func(x, y Unended) int { return saved[y.Path].Compare(saved[x.Path]) })
	return out, nil
}

// read reads the page; false where its drop has ended.
func (u *Unended) read(info fs.FileInfo, err error, link bool) bool {
	var data []byte
	switch {
	case err != nil:
	case info.Size() > notebook.MaxPage:
		err = errors.New("it is larger than 1 MiB, and no page is")
	default:
		data, err = u.book.disk.ReadFile(u.Path)
	}
	if err != nil {
		u.Err = fmt.Errorf("whether its drop has ended cannot be told: %w", err)
		return true
	}
	if !goesOn().Match(bytes.ReplaceAll(data, []byte{0}, nil)) { // UTF-16 has zeros between
		return false
	}
	if link {
		u.Err = errors.New("it is a link: go on where the page itself is, with --book")
		return true
	}
	sheets, err := notebook.Read(data, notebook.Options{Unread: true})
	var refused *notebook.Error
	switch {
	case errors.As(err, &refused) && refused.Line > 0:
		u.Err = fmt.Errorf("line %d: %s", refused.Line, refused.Msg)
	case errors.As(err, &refused):
		u.Err = errors.New("it " + refused.Msg)
	case err != nil:
		u.Err = err
	case len(sheets) != 1:
		u.Err = fmt.Errorf("it holds %d drops: leave one", len(sheets))
	default:
		u.Drop, u.text = sheets[0].Drop, string(data)
		u.hand = plain(u.text) != plain(pageText(u.Drop, false))
	}
	return true
}

// plain is a page's text without what an editor or another system adds by itself.
func plain(text string) string {
	text = strings.ReplaceAll(strings.TrimPrefix(text, "\ufeff"), "\r\n", "\n")
	return strings.TrimRight(text, "\n")
}
