package book

import (
	"path/filepath"

	"coldseam/profile/notebook"
)

// Text is a page of the book as it stands.
func (b *Book) Text(path string) (string, error) {
	data, err := text(path)
	return string(data), err
}

// Pages gives the pages of drops as they stand, each once, with the names of their files,
// and how many were left out: those that cannot be read or have no readings, which no other
// book would take. notebook.Pages makes one text of them.
func (b *Book) Pages(heads []Head, o notebook.Options) (names, texts []string, left int) {
	g := notebook.NewGlancer(o)
	seen := map[string]bool{}
	for _, h := range heads {
		if seen[h.Path] {
			continue
		}
		seen[h.Path] = true
		page, err := b.Text(h.Path)
		if err != nil || h.Err != nil || !hasReadings(page, g, o) {
			left++
			continue
		}
		names, texts = append(names, filepath.Base(h.Path)), append(texts, page)
	}
	return names, texts, left
}

// hasReadings reports whether every drop of a page has a reading.
func hasReadings(page string, g *notebook.Glancer, o notebook.Options) bool {
	if _, ok := g.Look([]byte(page)); ok {
		return true
	}
	o.Unread = false
	_, err := notebook.Read([]byte(page), o)
	return err == nil
}
