// Package asset holds the script that draws the moving picture on a page, with its
// licences, where they were fetched before the program was built (see README.txt).
// It fetches nothing by itself and works without them.
package asset

//go:generate go run ./internal/fetch .

import (
	"embed"
	"strings"
	"sync"
)

// The pattern matches README.txt, so that a folder without the script builds too.
//
//go:embed *.[jt]*
var folder embed.FS

// Script is the script, nil where it was not fetched or is not the one that is wanted
// to the byte. The caller must not change it.
func Script() []byte { return script() }

var script = sync.OnceValue(func() []byte { return checked(scriptFile, folder.ReadFile) })

// Licences is the text that must go along with the script, "" where there is none.
func Licences() string {
	var texts []string
	for _, f := range Files {
		if f.To == scriptFile {
			continue
		}
		if b := checked(f.To, folder.ReadFile); b != nil {
			texts = append(texts, strings.TrimSpace(string(b)))
		}
	}
	return strings.Join(texts, "\n\n")
}

// checked reads a kept file, nil where it is missing or another one.
func checked(name string, read func(string) ([]byte, error)) []byte {
	for _, f := range Files {
		if f.To != name {
			continue
		}
		if b, err := read(name); err == nil && f.Check(b) == nil {
			return b
		}
	}
	return nil
}
