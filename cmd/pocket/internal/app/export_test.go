package app

import (
	"fmt"
	"html"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coldseam/profile/book"
	"coldseam/profile/demo"
	"coldseam/profile/notebook"
)

var hiddenPages = regexp.MustCompile(`(?s)<pre id="(pages-\d+)" hidden>\n(.*?)</pre>`)

// handed are the texts that a screen hands on, by the names of their files.
func (p *phone) handed() map[string]string {
	p.t.Helper()
	out := map[string]string{}
	for _, m := range hiddenPages.FindAllStringSubmatch(p.show.Main, -1) {
		for _, by := range []string{"data-share", "data-save", "data-copy"} {
			name := regexp.MustCompile(by + `="` + m[1] + `" data-name="([^"]*)"`).FindStringSubmatch(p.show.Main)
			if name == nil {
				p.t.Fatalf("no %s of %s:\n%s", by, m[1], p.show.Main)
			}
			out[html.UnescapeString(name[1])] = html.UnescapeString(m[2])
		}
	}
	return out
}

// only is the one text of handed.
func (p *phone) only() (name, text string) {
	p.t.Helper()
	all := p.handed()
	if len(all) != 1 {
		p.t.Fatalf("%d texts", len(all))
	}
	for name, text = range all {
	}
	return name, text
}

// written are pages of drops of many kinds, as they are written by the program.
func written(t *testing.T) []string {
	t.Helper()
	var out []string
	for _, file := range demo.Pages(t) {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		sheets, err := notebook.Read(data, notebook.Options{Name: file, Ask: func(notebook.Question) (int, error) { return 0, nil }})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range sheets {
			out = append(out, notebook.Write(s.Drop))
		}
	}
	return append(out,
		"water: Alder Kettle\ndate: 2026-07-18\nmarks at: gunwale 1.5 ft\nnote: <b>\"quotes\"</b> & 'marks' 👨‍👩‍👧 \\# no comment\n0 ft: 74 F\n5 ft: 73.5 F\n",
		"10 m: 12 C\n20 m: 6 C\n",
		"water: "+strings.Repeat("Long ", 50)+"\n0 m: 12.5 C\n20 m: 6 C\n")
}

// From the phone to the terminal, to another phone: each page is the same to the byte, and
// has the same name.
func TestRoundAllBooks(t *testing.T) {
	first, second := newPhone(t), newPhone(t)
	for _, page := range written(t) {
		first.save(page)
	}
	first.do("book", "")
	first.do("export", "")
	first.has("drops, in 1 text file of")
	name, text := first.only()
	if name != "drops-2026-11-28.txt" {
		t.Errorf("the file is called %s", name)
	}
	file, terminal := filepath.Join(t.TempDir(), name), filepath.Join(t.TempDir(), "terminal")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	coldseam(t, "book", "add", "--book", terminal, file)
	compareBooks(t, "the terminal's", first.pages(), (&phone{t: t, dir: terminal}).pages())

	var back []string // as a person would join files, page behind page
	names := []string{}
	for n, page := range (&phone{t: t, dir: terminal}).pages() {
		if n == ".taking" {
			continue
		}
		names, back = append(names, n), append(back, page)
	}
	second.do("bring", "")
	for i := range back {
		second.do("import", back[i], "name", names[i])
		second.has("Added: ")
		if !second.show.Persist {
			t.Error("the browser is not asked to keep what was added")
		}
	}
	compareBooks(t, "the second phone's", first.pages(), second.pages())
	second.do("import", text, "name", name)
	second.has("0 drops added to the book, "+fmt.Sprint(len(back))+" there already.", "Not added, already drop")
	compareBooks(t, "the second phone's, once more,", first.pages(), second.pages())
}

// compareBooks compares the pages; pages of one name and number may have changed places.
func compareBooks(t *testing.T, whose string, want, got map[string]string) {
	t.Helper()
	delete(got, ".taking")
	texts := func(pages map[string]string) map[string]string {
		out := map[string]string{}
		for name, text := range pages {
			out[text] = regexp.MustCompile(`(-\d)?\.txt$`).ReplaceAllString(name, "")
		}
		return out
	}
	if diff := cmp.Diff(texts(want), texts(got)); diff != "" || len(want) != len(got) {
		t.Errorf("%s book has %d pages, not %d (-want +got):\n%s", whose, len(got), len(want), diff)
	}
}

// coldseam runs the terminal's own program, without settings.
func coldseam(t *testing.T, args ...string) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "coldseam")
	if out, err := exec.Command("go", "build", "-o", program, "coldseam/cmd/coldseam").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	c := exec.Command(program, args...)
	home := t.TempDir()
	c.Env = []string{"HOME=" + home, "XDG_CONFIG_HOME=" + home, "XDG_DATA_HOME=" + home}
	out, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return string(out)
}

// A drop alone is handed on as its page stands, also one that was written by hand.
func TestExportOne(t *testing.T) {
	p := newPhone(t)
	const byHand = "\tmy page, of Alder Kettle # mine\ndate: 2026-07-18\n5 ft 71.2 F\n10-68\n"
	p.write("2026-07-18-mine.txt", byHand)
	p.save("water: Sedge Mere\n0 ft: 70 F\n10 ft: 62 F\n")
	p.do("book", "")
	p.do("open", "2")
	p.do("export", "one")
	name, text := p.only()
	if name != "2026-07-18-mine.txt" || text != byHand {
		t.Errorf("%s: %q", name, text)
	}
	p.has("2026-07-18-mine.txt", "10-68")
	p.do("back", "")
	if p.answer.path == "" {
		t.Error("back does not lead to the answer")
	}
}

// What was found alone is handed on, or all; a page that no book would take is left out.
func TestExportFound(t *testing.T) {
	p := newPhone(t)
	p.do("export", "all")
	p.has("There is no page with readings")
	p.do("back", "")
	const one, two = "water: Alder Kettle\ndate: 2026-07-01\nunits: ft F\nnote: midges\n0 ft: 70 F\n10 ft: 60 F\n", "water: Alder Kettle\ndate: 2026-07-02\nunits: ft F\n0 ft: 70 F\n10 ft: 61 F\n"
	p.save(one, two)
	p.write("bad.txt", "0 ft: 70 F\n-5 ft: 900 F\n")
	p.write("empty.txt", "water: Alder Kettle\ndate: 2026-07-03\n# not ended: coldseam drop goes on with it\n")
	p.do("book", "")
	p.do("find", "", "words", "midges")
	p.do("export", "")
	if name, text := p.only(); text != one || !strings.HasPrefix(name, "2026-07-01") {
		t.Errorf("%s: %q", name, text)
	}
	p.hasNot("left out")
	p.do("export-all", "")
	p.has("2 pages left out")
	if _, text := p.only(); text != notebook.Pages([]string{"2026-07-01-alder-kettle.txt", "2026-07-02-alder-kettle.txt"}, []string{one, two}) {
		t.Errorf("%q", text)
	}
	p.do("back", "")
	p.has("Book of drops")
	p.do("find", "", "words", "")
	p.do("export", "")
	p.hasNot("All drops instead")
}

// A text holds no more than can be read again.
func TestExportInParts(t *testing.T) {
	p := newPhone(t)
	for i := range 5 {
		p.write(fmt.Sprintf("%d.txt", i), "water: W\ndate: 2026-07-0"+fmt.Sprint(i+1)+"\n0 ft: 70 F\n10 ft: 60 F\n"+strings.Repeat("# "+strings.Repeat("x", 98)+"\n", 4000))
	}
	p.do("export", "all")
	p.has("5 drops, in 3 text files of", "part 3")
	drops := 0
	all := p.handed()
	for name, text := range all {
		sheets, err := notebook.Read([]byte(text), notebook.Options{Name: name})
		if err != nil {
			t.Error(err)
		}
		drops += len(sheets)
	}
	if drops != 5 || len(all) != 3 {
		t.Errorf("%d drops in %d files", drops, len(all))
	}
}

// A question that a page leaves open is asked by touch; what comes meanwhile waits.
func TestBringAsks(t *testing.T) {
	p := newPhone(t)
	p.do("bring", "")
	p.do("import", "water: Alder Kettle\ndate: 2026-07-18\n0 20\n5 19\n10 12\n", "name", "bare.txt")
	p.has("bare.txt can be read in two ways", "which is it?", "Leave this one out")
	p.do("import", "water: Sedge Mere\ndate: 2026-07-19\n0 ft: 70 F\n10 ft: 62 F\n", "name", "second.txt")
	p.has("bare.txt")
	for _, value := range []string{"", "9", "-1", "x"} {
		p.do("bring-answer", value)
		p.has("bare.txt")
	}
	if len(p.pages()) != 0 {
		t.Errorf("added before it was answered: %v", p.pages())
	}
	for n := 0; p.books.bring.open != nil; n++ {
		choice := 0
		for i, c := range p.books.bring.open.Choices {
			if strings.Contains(c, "met") || strings.Contains(c, "C") {
				choice = i
			}
		}
		if n > 4 {
			t.Fatal(p.show.Main)
		}
		p.do("bring-answer", fmt.Sprint(choice))
	}
	p.has("Added: Alder Kettle, 2026-07-18, 3 readings", "Added: Sedge Mere", "How lines were read", "as you said")
	if got := p.pages()["2026-07-18-alder-kettle.txt"]; !strings.Contains(got, "5 m: 19 C") {
		t.Errorf("%q", got)
	}
	p.do("bring-text", "", "text", "water: W\n0 20\n5 19\n10 12\n")
	p.has("The pasted text can be read in two ways")
	p.do("bring-leave", "")
	p.has("The pasted text was left out.", "Text files")
	if len(p.pages()) != 2 {
		t.Errorf("%v", p.pages())
	}
	p.do("bring-leave", "")
	p.do("bring-answer", "0")
}

// What cannot be read or saved is told with why, and nothing of it is half added.
func TestBringRefused(t *testing.T) {
	p := newPhone(t)
	p.do("bring", "")
	for _, c := range []struct{ name, text, says string }{
		{"b.txt", "water: W\ndate: 2026-07-18\n0 ft: 70 F\n5 ft: 69 F\n\nwater: V\n0 ft: 60 F\n-5 ft: 900 F\n", "b.txt, line 8: cannot be read"},
		{"c.txt", "", "c.txt: cannot be read: has no readings"},
		{"d.png", "\x89PNG\r\n\x1a\n\x00\x00", "d.png: cannot be read: is not text"},
		{hostile, "nothing", "alert(\"1\")"},
		{strings.Repeat("n", 300), "0 ft: 70 F\n-5 ft: 900 F\n", strings.Repeat("n", 59) + "..., line 2"},
		{"e.txt", strings.Repeat("0 ft: 70 F\n", 100000), "is larger than 1 MiB"},
	} {
		p.do("import", c.text, "name", c.name)
		p.has(c.says, "Nothing of it was added.")
	}
	p.do("bring-text", "", "text", " \n")
	p.has("There is nothing to add")
	if len(p.pages()) != 0 {
		t.Errorf("added %v", p.pages())
	}
	p.o.Lock = func() (func(), error) { return nil, book.ErrInUse }
	p.do("bring-text", "", "text", "0 ft: 70 F\n5 ft: 69 F\n")
	p.has("A drop is being taken in another window")
	p.o.Lock = func() (func(), error) {
		return nil, &fs.PathError{Op: "write", Path: "/book/x.txt.part", Err: syscall.ENOSPC}
	}
	p.do("bring-text", "", "text", "0 ft: 70 F\n5 ft: 69 F\n")
	p.has("The pasted text: nothing was added. The phone has no room left. Free some")
	if len(p.pages()) != 0 {
		t.Errorf("added %v", p.pages())
	}
}

// A file of many drops is summed up; the same drop twice in it is added once.
func TestBringMany(t *testing.T) {
	p := newPhone(t)
	text := ""
	for i := range 30 {
		text += fmt.Sprintf("water: Alder Kettle\ndate: 2026-06-%02d\n0 ft: 70 F\n10 ft: 6%d F\n\n", i+1, i%10)
	}
	p.do("bring", "")
	p.do("bring-text", "", "text", text+"date: 2026-06-30\n0 ft: 70 F\n10 ft: 69 F\n")
	p.has("and 23 more drops", "30 drops added to the book, 1 there already.")
	if len(p.pages()) != 30 {
		t.Errorf("%d pages", len(p.pages()))
	}
}

// Of the settings only the units count for a page that comes in.
func TestBringUnits(t *testing.T) {
	p := newPhone(t)
	if err := p.saveSettings("units = \"m C\"\nthermometer = \"reads 1 C in ice water\"\nfor = \"perch\"\n"); err != nil {
		t.Fatal(err)
	}
	p.do("book", "")
	p.do("bring", "")
	p.do("bring-text", "", "text", "date: 2026-07-18\n0 20\n5 19\n")
	p.has("Added")
	p.do("back", "")
	p.has("1 drop, the newest first", "2026-07-18")
	if got := p.pages()["2026-07-18-drop.txt"]; got != "date: 2026-07-18\nunits: m C\n0 m: 20 C\n5 m: 19 C\n" {
		t.Errorf("%q", got)
	}
}
