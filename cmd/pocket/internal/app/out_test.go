package app

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile/book"
)

// A drop is taken out of the book after it was asked once, from its own screen, wherever that
// was opened from.
func TestTakeOut(t *testing.T) {
	const one, two = "water: Alder Kettle\ndate: 2026-07-01\nunits: ft F\n0 ft: 70 F\n10 ft: 60 F\n", "water: Sedge Mere\ndate: 2026-07-03\nunits: ft F\n0 ft: 70 F\n10 ft: 62 F\n"
	p := newPhone(t)
	p.save(one, two)
	p.do("out", "")
	p.do("out-yes", "") // nothing is looked at
	p.do("book", "")
	p.do("open", "1")
	p.has("Take this drop out of the book")
	p.do("out-yes", "")
	p.do("out", "")
	p.has("Take it out of the book?", "Alder Kettle, 2026-07-01, 2 readings", "It cannot be had back unless you carried it out.", "Keep it")
	p.do("back", "")
	p.has("Confidence")
	if n := len(p.pages()); n != 2 {
		t.Fatalf("%d pages", n)
	}
	p.do("out", "")
	p.o.Lock = func() (func(), error) { return nil, book.ErrInUse }
	p.do("out-yes", "")
	p.has("Not taken out: a drop is being taken in another window", "Keep it")
	held := 0
	p.o.Lock = func() (func(), error) { held++; return func() { held-- }, nil }
	p.do("out-yes", "")
	p.has("Book of drops", "Alder Kettle, 2026-07-01, 2 readings: taken out of the book.", "1 drop, the newest first")
	if pages := p.pages(); len(pages) != 1 || !strings.Contains(pages["2026-07-03-sedge-mere.txt"], "Sedge Mere") || held != 0 {
		t.Errorf("%q, %d locks", pages, held)
	}
	p.do("home", "")
	p.do("home-last", filepath.Join(p.dir, "2026-07-03-sedge-mere.txt"))
	p.do("out", "")
	p.do("out-yes", "")
	p.has("New drop")
	p.hasNot("Last drop")
	if len(p.pages()) != 0 || p.show.Depth != 0 {
		t.Errorf("%q, %d screens back", p.pages(), p.show.Depth)
	}
}

// So are one that was cut off and one that cannot be read; a page of several drops, and one that
// was changed meanwhile, stay.
func TestTakeOutOthers(t *testing.T) {
	p := newPhone(t)
	p.write("cut.txt", "water: Sedge Mere\ndate: 2026-09-01\n# not ended: coldseam drop goes on with it\n")
	p.write("torn.txt", "0 ft: 70 F\n-5 ft: 900 F\n")
	p.write("two.txt", "water: Alder Kettle\ndate: 2026-07-01\n0 ft: 70 F\n10 ft: 60 F\n\nwater: Sedge Mere\ndate: 2026-07-02\n0 ft: 70 F\n10 ft: 62 F\n")
	p.do("book", "")
	p.do("open", "1")
	p.do("out", "")
	p.has("This page holds 2 drops")
	p.do("back", "")
	p.do("open", "3")
	p.has("Not ended")
	p.do("out", "")
	if err := os.WriteFile(filepath.Join(p.dir, "cut.txt"), []byte("0 ft: 70 F\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	p.do("out-yes", "")
	p.has("Not taken out: the page was changed meanwhile")
	p.do("back", "")
	p.do("out", "")
	p.do("out-yes", "")
	p.has("Book of drops", "taken out of the book")
	p.do("page", "2")
	p.do("out", "")
	p.has("Torn.txt")
	p.do("out-yes", "")
	if pages := p.pages(); len(pages) != 1 || pages["two.txt"] == "" {
		t.Errorf("%q", pages)
	}
}

// At the end of an answer there is a way on: another drop with what holds here, the page, back.
func TestAnswerLeadsOn(t *testing.T) {
	p := anAngler(t).does("paste", "", "page", "water: Alder Kettle\nunits: m C\nbottom: 9 m\nfor: perch\n0 22\n4 18\n8 9\n")
	p.does("home", "").does("paste", "", "page", "water: Sedge Mere\nunits: ft F\n0 74\n10 72\n15 66\n20 58\n").does("home", "").touches("Book").touches("no date Alder Kettle")
	end := p.show.Main[strings.LastIndex(p.show.Main, "</details>"):]
	for _, label := range []string{"Another drop here", "Send a copy", "Correct this drop", "To the book"} {
		if !strings.Contains(end, ">"+label+"</button>") {
			t.Errorf("no %q at the end: %s", label, end)
		}
	}
	p.touches("Send a copy").wants("The page of one drop").does("back", "")
	p.touches("Another drop here").wants("How deep is the water here, in m?").types("8", "21").does("take-end", "")
	found := false
	for _, page := range p.pages() {
		found = found || strings.Contains(page, "Alder Kettle") && strings.Contains(page, "for: perch") && strings.Contains(page, "bottom: 8 m")
	}
	if !found {
		t.Errorf("%q", p.pages())
	}
}
