package app

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"coldseam/profile/book"
	"coldseam/profile/demo"
	"coldseam/profile/notebook"
)

// phone is an app over a book of its own, whose screens are looked at after each event.
type phone struct {
	*App
	t    testing.TB
	dir  string
	show Show
}

func newPhone(t testing.TB) *phone {
	t.Helper()
	dir := t.TempDir()
	p := &phone{t: t, dir: filepath.Join(dir, "book"), App: New(Options{
		Dir: filepath.Join(dir, "book"), Settings: filepath.Join(dir, "settings.toml"), Durable: true,
		Now:  func() time.Time { return time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC) },
		Lock: func() (func(), error) { return func() {}, nil },
	})}
	p.do("start", "")
	return p
}

// do sends an event with fields, name after value, and looks at the screen.
func (p *phone) do(do, value string, fields ...string) Show {
	p.t.Helper()
	e := Event{Do: do, Value: value, Fields: map[string]string{}}
	for i := 0; i+1 < len(fields); i += 2 {
		e.Fields[fields[i]] = fields[i+1]
	}
	p.show = p.Do(e)
	if do != "start" {
		wellMade(p.t, p.show)
	}
	return p.show
}

// save puts pages into the book as a drop that is taken does, or as they are written.
func (p *phone) save(pages ...string) {
	p.t.Helper()
	b, err := book.Open(p.dir, book.System{})
	if err != nil {
		p.t.Fatal(err)
	}
	for _, page := range pages {
		sheets, err := notebook.Read([]byte(page), notebook.Options{Name: "p"})
		if err != nil {
			p.t.Fatal(err)
		}
		for _, s := range sheets {
			if _, err := b.Add(s.Drop); err != nil {
				p.t.Fatal(err)
			}
		}
	}
}

// write puts a file into the book as it stands.
func (p *phone) write(name, text string) {
	p.t.Helper()
	if err := os.MkdirAll(p.dir, 0o700); err != nil {
		p.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(p.dir, name), []byte(text), 0o600); err != nil {
		p.t.Fatal(err)
	}
}

// pages are the files of the book.
func (p *phone) pages() map[string]string {
	p.t.Helper()
	out := map[string]string{}
	files, _ := filepath.Glob(filepath.Join(p.dir, "*"))
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			p.t.Fatal(err)
		}
		out[filepath.Base(f)] = string(data)
	}
	return out
}

var (
	wholeDate = regexp.MustCompile(`<span class="whole">(\d{4}-\d\d-\d\d)</span>`) // stands within a sentence
	tags      = regexp.MustCompile(`<[^>]*>`)
	terminal  = regexp.MustCompile(`--|coldseam [a-z]|\bEnter\b|\bflag\b|\[\[|/book|\.part\b|no space left|not a directory|[Ii]nput/output|i/o error|\b[a-z]+_[a-z]+\b`)
)

// words are what a screen says, without its markup.
func words(html string) string {
	r := strings.NewReplacer("&#34;", `"`, "&#39;", "'", "&lt;", "<", "&gt;", ">", "&amp;", "&")
	html = wholeDate.ReplaceAllString(html, "$1")
	return r.Replace(tags.ReplaceAllString(html, " "))
}

var hiddenText = regexp.MustCompile(`(?s)<pre [^>]*hidden>.*?</pre>|<textarea.*?</textarea>`)

// wellMade checks what holds of every screen.
func wellMade(t testing.TB, s Show) {
	t.Helper()
	seen := words(hiddenText.ReplaceAllString(s.Main, ""))
	if n := strings.Count(s.Main, "<h1"); n != 1 {
		t.Errorf("%d headings of the first order:\n%s", n, s.Main)
	}
	if m := terminal.FindString(seen + s.Say); m != "" {
		t.Errorf("%q is of the terminal:\n%s\n%s", m, seen, s.Say)
	}
	if !strings.Contains(s.Main, `data-do="back"`) && !strings.Contains(s.Main, `data-do="home"`) && !strings.Contains(s.Main, `data-do="drop"`) {
		t.Errorf("no way out:\n%s", s.Main)
	}
	for _, bad := range []string{"<script", "<b>alert", "onerror=", "\x1b", "\u202e"} {
		if strings.Contains(hiddenText.ReplaceAllString(s.Main, ""), bad) {
			t.Errorf("%q is on the page:\n%s", bad, s.Main)
		}
	}
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(s.Main, -1) {
		if ids[m[1]] {
			t.Errorf("two elements of the id %s", m[1])
		}
		ids[m[1]] = true
	}
	for _, m := range regexp.MustCompile(` (?:for|aria-describedby|data-copy|data-share|data-save)="([^"]*)"`).FindAllStringSubmatch(s.Main, -1) {
		if !ids[m[1]] && m[1] != "licences" { // these stand in the page
			t.Errorf("no element of the id %s:\n%s", m[1], s.Main)
		}
	}
	for _, m := range regexp.MustCompile(` data-(?:do|file)="([^"]*)"`).FindAllStringSubmatch(s.Main, -1) {
		if acts[m[1]] == nil {
			t.Errorf("nothing does %q", m[1])
		}
	}
}

// has asks that a screen says something.
func (p *phone) has(texts ...string) {
	p.t.Helper()
	for _, text := range texts {
		if !strings.Contains(words(p.show.Main), text) {
			p.t.Errorf("no %q in\n%s", text, words(p.show.Main))
		}
	}
}

// hasNot asks that it does not.
func (p *phone) hasNot(texts ...string) {
	p.t.Helper()
	for _, text := range texts {
		if strings.Contains(words(p.show.Main), text) {
			p.t.Errorf("%q in\n%s", text, words(p.show.Main))
		}
	}
}

// settle does what follows by itself.
func (p *phone) settle() int {
	p.t.Helper()
	n := 0
	for ; p.show.Later != ""; n++ {
		p.do(p.show.Later, "")
	}
	return n
}

const hostile = `</p><script>alert("1")</script> <b>alert</b> \u202e & 'x' ` + "🎣👨‍👩‍👧"

// The list tells of each drop what it found, the newest first, and opens it.
func TestBooks(t *testing.T) {
	p := newPhone(t)
	p.do("book", "")
	p.has("No drop is saved yet", "Add pages")
	p.do("back", "")
	july := demo.Page(t, "alder-kettle-july")
	p.save(july, demo.Page(t, "marl-hole-july"), "water: "+hostile+"\ndate: 2027-01-02\nfor: snark\n0 ft: 60 F\n10 ft: 58 F\n")
	p.write("2026-08-30-torn.txt", "date: 2026-08-30\n0 ft: 70 F\n-5 ft: 900 F\n")
	p.write("2026-09-01-cut.txt", "water: Sedge Mere\ndate: 2026-09-01\n0 ft: 70 F\n5 ft: 69 F\n# not ended: coldseam drop goes on with it\n")
	p.do("book", "")
	p.has("4 drops, the newest first", "2027-01-02", "2026-08-30", "Not ended")
	if p.show.Later != "lines" {
		t.Errorf("later %q", p.show.Later)
	}
	if n := p.settle(); n != 4 {
		t.Errorf("%d plans for 4 drops", n)
	}
	p.has("Thermocline 14 to 16 ft", "Band 15 to 29 ft", "No fish is called snark", "Not ended, 2 readings", "2026-08-30-torn.txt, line 3: cannot be read", "alert(\"1\")")
	text := words(p.show.Main)
	at := -1
	for _, date := range []string{"2027-01-02", "2026-09-01", "2026-08-30", "2026-07-18"} {
		i := strings.Index(text, date)
		if i < at || i < 0 {
			t.Errorf("%s stands at %d, after %d:\n%s", date, i, at, text)
		}
		at = i
	}
	number := regexp.MustCompile(`data-value="(\d+)"[^>]*><b>2026-07-18`).FindStringSubmatch(p.show.Main)
	if number == nil {
		t.Fatal(p.show.Main)
	}
	p.do("open", number[1])
	if got := p.answer.sheet.Drop; got.Date[:10] != "2026-07-18" || p.answer.err != nil || p.answer.path == "" {
		t.Errorf("%+v, %v", got, p.answer.err)
	}
	p.do("back", "")
	p.has("4 drops")
	for _, value := range []string{"", "x", "0", "99", "-1"} {
		p.do("open", value)
		p.has("4 drops")
	}
}

// A page that cannot be read is named, with why, and its text can be taken out.
func TestDamagedPage(t *testing.T) {
	p := newPhone(t)
	const torn = "date: 2026-08-30\nwater: a\u200db\n0 ft: 70 F\n-5 ft: 900 F\n"
	p.write("2026-08-30-torn.txt", torn)
	p.do("book", "")
	p.has("2026-08-30-torn.txt, line 4: cannot be read")
	p.do("page", "0")
	p.has("A page that cannot be read", "line 4", "-5 ft: 900 F")
	if strings.Count(p.show.Main, torn) != 2 { // to the byte, with what cannot be seen
		t.Error(p.show.Main)
	}
	p.do("back", "")
	for _, value := range []string{"", "1", "-1", "x"} {
		p.do("page", value)
		p.has("Book of drops")
	}
	p.do("page-save", "", "page", torn) // nothing was to be mended but what was looked at last
	p.do("page", "0")
	wrong := "date: 2026-08-30\nwater: a\u200db\n0 ft: 70 F\n-5 ft: 69 F\nwater: b"
	p.do("page-save", "", "page", wrong)
	p.has("Not saved: line 4: ")
	if !strings.Contains(p.show.Main, wrong+"\n</textarea>") || p.pages()["2026-08-30-torn.txt"] != torn {
		t.Errorf("%q\n%s", p.pages(), p.show.Main)
	}
	p.do("page-save", "", "page", "date: 2026-08-30\n")
	p.has("has no readings")
	right := strings.ReplaceAll(torn, "-5 ft: 900", "5 ft: 69")
	p.do("page-save", "", "page", strings.ReplaceAll(right, "\n", "\r\n"))
	if p.pages()["2026-08-30-torn.txt"] != right || p.answer.sheet.Drop.Date != "2026-08-30" {
		t.Errorf("%q\n%s", p.pages(), p.show.Main)
	}
	p.do("back", "")
	p.has("1 drop, the newest first")
}

// A drop that has not ended is gone on with, or ended.
func TestNotEnded(t *testing.T) {
	p := newPhone(t)
	p.write("2026-09-01-cut.txt", "water: Sedge Mere\ndate: 2026-09-01\n0 ft: 70 F\n5 ft: 69 F\n10 ft: 66 F\n# not ended: coldseam drop goes on with it\n")
	p.do("book", "")
	p.settle()
	p.has("Not ended, 3 readings")
	p.do("open", "1")
	p.has("Sedge Mere, 2026-09-01, 3 readings", "Go on with it", "It is finished")
	p.do("back", "")
	p.do("open", "1")
	p.do("home-go-on", filepath.Join(p.dir, "2026-09-01-cut.txt"))
	p.has("How deep is the water here")
	p.do("home", "")
	p.do("book", "")
	p.do("open", "1")
	p.o.Lock = func() (func(), error) { return nil, book.ErrInUse }
	p.do("home-go-on", filepath.Join(p.dir, "2026-09-01-cut.txt"))
	p.has("A drop is being taken in another window", "Go on with it")
	p.o.Lock = func() (func(), error) { return func() {}, nil }
	p.do("home-finish", filepath.Join(p.dir, "2026-09-01-cut.txt"))
	if strings.Contains(p.pages()["2026-09-01-cut.txt"], "not ended") || p.answer.sheet.Drop.Water != "Sedge Mere" {
		t.Errorf("%q", p.pages())
	}
}

// Twenty are listed at first, and no plan is made of those that are not.
func TestManyDrops(t *testing.T) {
	p := newPhone(t)
	var all []string
	for i := range 65 {
		all = append(all, fmt.Sprintf("water: W%d\ndate: 2026-%02d-%02d\n0 ft: 70 F\n10 ft: 60 F\n20 ft: 50 F\n", i%3, 1+i/28, 1+i%28))
	}
	p.save(all...)
	p.do("book", "")
	if n := p.settle(); n != 20 {
		t.Errorf("%d plans", n)
	}
	p.has("65 drops, the newest first", "Show 20 of 45 older drops")
	p.do("older", "")
	p.settle()
	p.do("older", "")
	p.settle()
	p.has("Show 5 of 5 older drops")
	p.do("older", "")
	p.hasNot("older")
	if n := strings.Count(p.show.Main, `data-do="open"`); n != 65 {
		t.Errorf("%d drops listed", n)
	}
}

// What is looked for is found as in the terminal: words that stand anywhere on the page, all
// of them, and a water.
func TestFind(t *testing.T) {
	p := newPhone(t)
	p.save("water: Alder Kettle\ndate: 2026-07-01\nnote: midges at dusk\n0 ft: 70 F\n10 ft: 60 F\n",
		"water: Alder Kettle\ndate: 2026-07-02\n0 ft: 70 F\n10 ft: 61 F\n", "water: Sedge Mere\ndate: 2026-07-03\nnote: Dusk\n0 ft: 70 F\n10 ft: 62 F\n")
	p.write("bad.txt", "0 ft: 70 F\n-5 ft: 900 F\n")
	p.do("book", "")
	p.has("3 drops", "bad.txt", "all waters", "Sedge Mere")
	p.do("find", "", "words", " DUSK ", "water", "")
	p.has("2 of 3 drops", "2026-07-01", "2026-07-03")
	p.hasNot("2026-07-02", "bad.txt")
	if p.show.Say != "2 of 3 drops, the newest first" || !strings.Contains(p.show.Main, `value=" DUSK "`) {
		t.Errorf("%q\n%s", p.show.Say, p.show.Main)
	}
	p.do("find", "", "words", "dusk midges", "water", "alder kettle")
	p.has("1 of 3 drops", "2026-07-01")
	if !strings.Contains(p.show.Main, `<option value="Alder Kettle" selected>`) {
		t.Error(p.show.Main)
	}
	p.do("open", "1")
	p.do("book", "") // leads back to what was found
	p.has("1 of 3 drops", "2026-07-01")
	if p.show.Depth != 1 {
		t.Errorf("%d screens back", p.show.Depth)
	}
	p.do("find", "", "words", hostile)
	p.has("None of 3 drops is like that.")
	p.do("find", "", "words", "", "water", "")
	p.has("3 drops, the newest first")
}

// A drop that goes away meanwhile is told.
func TestGoneMeanwhile(t *testing.T) {
	p := newPhone(t)
	p.save("water: Alder Kettle\ndate: 2026-07-01\n0 ft: 70 F\n10 ft: 60 F\n", "water: Sedge Mere\ndate: 2026-07-03\n0 ft: 70 F\n10 ft: 62 F\n")
	p.do("book", "")
	files, _ := filepath.Glob(filepath.Join(p.dir, "2026-07-01*"))
	if err := os.Remove(files[0]); err != nil {
		t.Fatal(err)
	}
	p.do("open", "1")
	p.has("changed or removed meanwhile", "1 drop, the newest first")
	p.hasNot("2026-07-01")
}

// A folder that is none is said.
func TestNoBook(t *testing.T) {
	p := newPhone(t)
	if err := os.WriteFile(p.dir, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	p.do("book", "")
	p.has("The saved drops cannot be read")
	p.do("export", "all")
	p.has("cannot be read")
	p.do("bring", "")
	p.do("import", "0 ft: 70 F\n10 ft: 60 F\n", "name", "a.txt")
	p.has("a.txt", "a.txt: nothing was added. Not a folder.")
}
