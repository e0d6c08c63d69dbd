package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"coldseam/cmd/coldseam/internal/licence"
)

// credits are lines that a licence asks for in so many words. The FreeType License does
// in its introduction; the year is the last one of the code that the Go port was made
// from, as its README states.
var credits = map[string]string{
	"github.com/golang/freetype": "Portions of this software are copyright © 2010 The FreeType Project\n(www.freetype.org).  All rights reserved.",
}

// notTaken are licences that a part offers besides the one it is used under.
var notTaken = []string{
	"github.com/golang/freetype licenses/gpl.txt", // "your choice of exactly one": the FreeType License
}

// write is the listing: the parts, their credits, then each licence under the names of
// the parts that have it.
func write(parts []*part) ([]byte, error) {
	type text struct {
		heads []string
		body  string
	}
	var texts []*text
	var b bytes.Buffer
	b.WriteString("Coldseam is made of these parts. Their licences follow.\n\n")
	var asked []string
	for _, p := range parts {
		b.WriteString("    " + p.name + "\n")
		path, _, _ := strings.Cut(p.name, " ")
		if c := credits[path]; c != "" {
			asked = append(asked, c)
		}
		files, err := p.files()
		if err != nil {
			return nil, err
		}
		found := false
		for _, f := range files {
			name, err := filepath.Rel(p.root, f)
			if err != nil {
				return nil, err
			}
			if name = filepath.ToSlash(name); slices.Contains(notTaken, path+" "+name) {
				continue
			}
			raw, err := os.ReadFile(f)
			if err != nil {
				return nil, err
			}
			body := plain(raw)
			if body == "" {
				return nil, fmt.Errorf("%s: %s is empty", p.name, name)
			}
			found = true
			i := slices.IndexFunc(texts, func(t *text) bool { return t.body == body })
			if i < 0 {
				i, texts = len(texts), append(texts, &text{body: body})
			}
			texts[i].heads = append(texts[i].heads, p.name+", "+name)
		}
		if !found {
			return nil, fmt.Errorf("%s has no licence in %s", p.name, p.root)
		}
	}
	for _, c := range asked {
		b.WriteString("\n" + c + "\n")
	}
	for _, t := range texts {
		b.WriteString("\n")
		for _, h := range t.heads {
			b.WriteString(licence.Head + h + "\n")
		}
		b.WriteString("\n" + t.body + "\n")
	}
	return b.Bytes(), nil
}

// plain is a text in UTF-8 with plain line ends; old licences are in Latin-1.
func plain(raw []byte) string {
	text := string(raw)
	if !utf8.Valid(raw) {
		runes := make([]rune, len(raw))
		for i, c := range raw {
			runes[i] = rune(c)
		}
		text = string(runes)
	}
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\f", "\n").Replace(text)
	return strings.Trim(text, "\n")
}
