// Package page makes the page for the phone: one file that holds the whole program, and the
// same as a site that a phone installs. The program is built by go generate; without it
// there is no page.
package page

//go:generate go run ./internal/build built
//go:generate go run ../../../cmd/coldseam/internal/licence/internal/gather built/licences.txt coldseam/cmd/pocket js/wasm

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"errors"
	"strings"
	"text/template"

	"coldseam/chart/seal"
	"coldseam/chart/vector"
)

// The README of the built parts is always there, so a folder without the parts builds too.
//
//go:embed *.html *.css *.js *.webmanifest built
var folder embed.FS

// ErrNotBuilt says how the built parts are made.
var ErrNotBuilt = errors.New("the program of the page is not in this build: run go generate ./cmd/pocket/page and build again")

// File is the whole page in one file, with its seal.
func File() ([]byte, error) { return write(false) }

// The scripts of the page and of its worker, in their order.
var (
	onPage   = []string{"patch.js", "timer.js", "page.js"}
	inWorker = []string{"built/wasm_exec.js", "lzma.js", "unpack.js", "folder.js", "worker.js"}
)

// content fills page.html.
type content struct{ Policy, Site, Style, Script, Worker, Licences, Program string }

// write writes the page, alone or as part of a site.
func write(site bool) ([]byte, error) {
	program := read("built/pocket.lzma")
	c := content{Style: style(), Script: texts(onPage), Worker: texts(inWorker), Licences: read("built/licences.txt")}
	if program == "" || c.Licences == "" || read("built/wasm_exec.js") == "" {
		return nil, ErrNotBuilt
	}
	for _, text := range []string{c.Script, c.Worker, c.Licences} {
		if low := strings.ToLower(text); strings.Contains(low, "</script") || strings.Contains(low, "<!--") {
			return nil, errors.New("a script or a licence that holds </script or <!-- cannot stand in the page")
		}
	}
	c.Program = base64.StdEncoding.EncodeToString([]byte(program))
	if !site {
		return c.fill("")
	}
	c.Site = siteHead
	return c.fill(" 'self'")
}

// fill puts the parts into page.html, with the policy that lets them do what they do, and
// what self adds.
func (c content) fill(self string) ([]byte, error) {
	c.Policy = policy(c, self)
	t, err := template.New("page.html").Parse(read("page.html"))
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := t.Execute(&b, c); err != nil {
		return nil, err
	}
	return seal.Put(b.Bytes()), nil
}

// policy lets the page do what it does and no more: its own script and style, the worker
// and pictures made from texts in it, and what self adds.
func policy(c content, self string) string {
	p := "default-src 'none'; base-uri 'none'; form-action 'none'; script-src 'wasm-unsafe-eval' " + hash(c.Script) +
		"; style-src " + hash(c.Style) + "; worker-src blob:" + self + "; img-src data: blob:" + self
	if self != "" {
		p += "; manifest-src" + self
	}
	return p
}

// style is that of the page and of the pictures on it.
func style() string { return read("page.css") + vector.Style }

// texts are embedded files, one after the other.
func texts(names []string) string {
	var b strings.Builder
	for _, name := range names {
		b.WriteString(read(name) + "\n")
	}
	return b.String()
}

// read is an embedded file, "" where there is none.
func read(name string) string {
	b, _ := folder.ReadFile(name)
	return string(b)
}

// hash names a script or a style in the policy.
func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}
