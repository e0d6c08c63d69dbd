package app

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"coldseam/profile/book"
	"coldseam/profile/demo"
	"coldseam/profile/notebook"
)

// afternoon is when the tests are.
var afternoon = time.Date(2026, 7, 18, 18, 10, 0, 0, time.UTC)

// withBook is the app with pages in its book, and settings or "".
func withBook(t *testing.T, settings string, pages ...string) *App {
	t.Helper()
	dir := t.TempDir()
	for i, page := range pages {
		if err := os.WriteFile(filepath.Join(dir, string(rune('a'+i))+".txt"), []byte(page), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	file := filepath.Join(t.TempDir(), "settings.toml")
	if settings != "" {
		if err := os.WriteFile(file, []byte(settings), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	b := book.At(dir, book.System{})
	a := New(Options{Dir: dir, Settings: file, Now: func() time.Time { return afternoon }, Lock: b.Lock, Durable: true})
	a.Do(Event{Do: "start"})
	if a.setErr != nil {
		t.Fatal(a.setErr)
	}
	return a
}

// answered opens the answer of the n-th drop of the book, from 0.
func answered(t *testing.T, a *App, n int) Show {
	t.Helper()
	heads, err := a.book.Heads(a.reading())
	if err != nil {
		t.Fatal(err)
	}
	e := a.book.Read(heads, a.reading())[n]
	if e.Err != nil {
		t.Fatal(e.Err)
	}
	a.showAnswer(e.Sheet, e.Path)
	return a.Do(Event{})
}

// everyPage are the demo pages, one for each drop.
func everyPage(t *testing.T) (pages []string) {
	for _, file := range demo.Pages(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		sheets, err := notebook.Read(text, notebook.Options{Name: file})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range sheets {
			pages = append(pages, notebook.Write(s.Drop))
		}
	}
	return pages
}

func TestEveryAnswer(t *testing.T) {
	for _, page := range everyPage(t) {
		a := withBook(t, "", page)
		wellMade(t, answered(t, a, 0))
	}
}
