package exchange

import (
	"crypto/sha256"
	"encoding/base32"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"sync"

	"coldseam/profile"
	"coldseam/profile/check"
	"coldseam/profile/plain"
)

// Source is a drop and where it stands.
type Source struct {
	Page string // the file of its page; "" where it has none
	Nth  int    // which drop of the page, from 1
	Drop profile.Drop
	ID   string // that it had in a table, "" where it had none
}

// Item is a drop as it is carried out, with its readings corrected and flagged.
type Item struct {
	ID   string // the same whenever it is exported: at most 24 letters, digits, hyphens and points
	Drop profile.Drop
	Page string
}

// Items makes items of drops. A drop has its name from the file of its page, so that it
// keeps it whatever is put right on the page; where it has none, from its date and water.
// Two drops that would have one name are refused.
func Items(sources []Source) ([]Item, error) {
	items := make([]Item, len(sources))
	seen := make(map[string]string, len(sources))
	for i, s := range sources {
		id := s.ID
		if !isName().MatchString(id) {
			id = s.name()
		}
		items[i] = Item{ID: id, Drop: check.Of(s.Drop).Drop(), Page: s.Page}
		if other, again := seen[items[i].ID]; again {
			return nil, fmt.Errorf("%s: its identifier would be that of %s: give one of the files another name", where(s.Page), where(other))
		}
		seen[items[i].ID] = s.Page
	}
	return items, nil
}

func where(page string) string {
	if page == "" {
		return "the page"
	}
	return plain.Line(page)
}

// Lengths of a name: what an agency takes for an activity, 35 characters, less a depth.
const (
	longestName = 24
	nameHead    = 13
)

// isName is an identifier as name makes them.
var isName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[a-z0-9][a-z0-9.-]{0,23}$`) })

var stamp = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(\d{4})-(\d\d)-(\d\d)(?:-(\d\d)-(\d\d))?(-|$)`) })

// name is the drop's identifier: its page's name, with a number behind it from the second
// drop of a page on, where that is short, else its beginning and a sum of all of it.
func (s Source) name() string {
	page := filepath.Base(s.Page)
	whole := strings.TrimSuffix(page, filepath.Ext(page))
	if s.Page == "" {
		whole = slug(s.Drop.Date + " " + s.Drop.Water)
	}
	nth := ""
	if s.Nth > 1 {
		nth = fmt.Sprintf(".%d", s.Nth) // no page's name has a point: whole is another where one has
	}
	if len(whole+nth) <= longestName && whole == slug(whole) && whole != "" {
		return whole + nth
	}
	whole += nth
	sum := sha256.Sum256([]byte(whole))
	head := stamp().ReplaceAllString(slug(whole), "$1$2$3-$4$5-")
	head = strings.Trim(head[:min(len(head), nameHead)], "-")
	return strings.ToLower(strings.Trim(head+"-"+base32.StdEncoding.EncodeToString(sum[:])[:longestName-nameHead-1], "-"))
}

// slug is a text in small letters, digits and single hyphens.
func slug(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9')
	}), "-")
}

// activity names one of the drop's readings, the n-th at its depth, or what stands for the
// depth: at most 35 characters.
func (it Item) activity(what string, n int) string {
	if n > 1 {
		what = fmt.Sprintf("%s-%d", what, n)
	}
	const longest = 35
	if id := it.ID + "-" + what; len(id) <= longest {
		return id
	}
	sum := sha256.Sum256([]byte(what))
	return it.ID + "-" + strings.ToLower(base32.StdEncoding.EncodeToString(sum[:])[:longest-longestName-1])
}
