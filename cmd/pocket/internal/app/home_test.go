package app

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// Another drop on the water of the last one takes over what holds there, and nothing else:
// the bottom is asked for, and the wind of that day is forgotten.
func TestAnotherDrop(t *testing.T) {
	p := anAngler(t)
	p.does("paste", "", "page", "water: Alder Kettle\nspot: off the reed point\nunits: ft F\nbottom: 31 ft\nfor: perch\nwind: 12 mph S\n0 74\n10 72\n15 66\n20 58\n")
	p.does("home", "").touches("Another drop at Alder Kettle")
	p.wants("How deep is the water here").types("24")
	p.does("take-type", "", "temp", "74").does("take-end", "")
	pages := p.pages()
	if len(pages) != 2 {
		t.Fatalf("%d pages", len(pages))
	}
	page := pages[0] + pages[1]
	if strings.Count(page, "water: Alder Kettle") != 2 || strings.Count(page, "for: perch") != 2 || strings.Count(page, "wind") != 1 || !strings.Contains(page, "bottom: 24 ft") {
		t.Errorf("the pages: %s", page)
	}
}

// Where the last drop names no water there is no other drop at it.
func TestNoOtherDrop(t *testing.T) {
	p := anAngler(t)
	p.does("paste", "", "page", "units: ft F\n0 74\n10 72\n15 66\n20 58\n").does("home", "")
	if strings.Contains(p.text(), "Another drop") {
		t.Error(p.text())
	}
	p.does("drop-again", "")
}

// What is there before the program runs stands first, and stays there when it runs.
func TestHomeStays(t *testing.T) {
	p := begun(t).types("74")
	p.o.Durable = false
	p.opened().does("paste", "", "page", "water: Alder Kettle\nunits: ft F\n0 74\n10 72\n15 66\n20 58\n").does("home", "")
	static, err := os.ReadFile("../../page/page.html")
	if err != nil {
		t.Fatal(err)
	}
	_, main, _ := strings.Cut(string(static), `<main id="main">`)
	words := func(html string) string {
		html, _, _ = strings.Cut(html, "</form>")
		return strings.Join(strings.Fields(regexp.MustCompile("<[^>]*>").ReplaceAllString(html, " ")), " ")
	}
	if got, before := words(p.show.Main), words(main); got != before {
		t.Errorf("the first screen begins with %q, and before the program runs with %q", got, before)
	}
	rest := p.show.Main[strings.Index(p.show.Main, "</form>"):]
	for _, text := range []string{"keeps nothing", "Go on with the drop", "Last drop", "Another drop at Alder Kettle", "Settings"} {
		if !strings.Contains(rest, text) {
			t.Errorf("%q does not stand below: %s", text, rest)
		}
	}
}
