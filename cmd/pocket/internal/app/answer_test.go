package app

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldseam/profile/book"
	"coldseam/profile/demo"
	"coldseam/profile/notebook"
	"coldseam/profile/report"
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
	a.showAnswer(e.Sheet, e.Path, 0)
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

// oddPages are pages that hardly fit the screens.
var oddPages = []string{
	"units: m C\n0 22\n2 21.5\n4 18\n6 11\n8 8\n",
	"units: m C\ndate: 2026-01-20\nfor: lake trout\nbottom: 12 m\n0 0.5\n3 2\n6 3.1\n11 3.9\n",
	"0 ft 74 F\n2 m 22 C\n20 ft 15 C\n9 m 50 F\n",
	"units: fathoms F\n0 70\n2 66\n4 50\n6 45\n",
	"10 ft 60 F\n",
	"units: ft F\nfor: bluegill\nbottom: 6 ft\n0 82\n2 81\n4 79\n5 78\n",
	"units: ft F\nfor: unicorn\n0 70\n10 60\n20 50\n",
	"units: ft F\n0 700\n10 600\n",
	"units: ft F\nwater: Alder Kettle\n",
	"units: ft F\nwind: 30 mph\nsky: thunder\nlake length: 3 km\nlatitude: 45\ndate: 2026-07-18 20:30\n0 74\n5 73\n10 66\n15 60\n20 55\n25 52\n",
	"water: </h1><script>alert(1)</script>\nspot: \"quoted\" & <b>alert</b> \U0001f41f\nunits: ft F\nfor: <b>alert(1)</b>\n0 70\n5 68\n10 60\n15 52\n20 50\ncaught: <script>alert(2)</script> 12 ft\n",
	"water: " + strings.Repeat("ooo ", 75) + "\nunits: ft F\n0 70\n5 68\n10 60\n15 52\n20 50\n",
}

// Every screen behind an answer, of every page, is well made and leads on.
func TestEveryAnswer(t *testing.T) {
	for _, page := range append(everyPage(t), oddPages...) {
		a := withBook(t, "", page)
		show := answered(t, a, 0)
		wellMade(t, show)
		if !strings.Contains(show.Main, `data-do="caught"`) || !strings.Contains(show.Main, `data-do="drop"`) || !strings.Contains(show.Main, `data-do="book"`) {
			t.Errorf("%s\nleads nowhere:\n%s", page, show.Main)
		}
		if got, want := strings.Contains(show.Main, `class="rows"`), a.answer.err == nil; got != want {
			t.Errorf("%s\nnumbers: %v, %v", page, got, a.answer.err)
		}
		for _, do := range []string{"timer", "caught", "correct"} {
			before := a.screen
			wellMade(t, a.Do(Event{Do: do}))
			if len(a.before) > 1 {
				wellMade(t, a.Do(Event{Do: "catch-more"}))
				a.Do(Event{Do: "back"})
			}
			if fmt.Sprintf("%p", before) != fmt.Sprintf("%p", a.screen) {
				t.Errorf("%s: no way back to the answer", do)
			}
		}
		for _, fields := range []map[string]string{{"depth": "3", "temperature": "15,5"}, {"depth": "<b>", "temperature": ""}, {}} {
			wellMade(t, a.Do(Event{Do: "check", Fields: fields}))
		}
	}
}

// What the short answer and the whole one of the terminal say stands on the screen.
func TestAnswerSaysAll(t *testing.T) {
	for _, page := range append(everyPage(t), oddPages...) {
		a := withBook(t, "", page)
		got := strings.Join(strings.Fields(words(answered(t, a, 0).Main)), " ")
		if a.answer.err != nil {
			continue
		}
		p := a.answer.plan
		b := report.Short(p, a.answer.sheet.Notes)
		want := append(append([]string{b.Title, b.NoWater, b.Confidence}, b.Warnings...), b.Safety...)
		for _, r := range b.Rows {
			want = append(want, r.Label, r.Value, r.Detail)
		}
		for _, s := range report.Sections(p, a.answer.sheet.Notes) {
			want = append(append(want, s.Title), s.Items...)
		}
		for _, w := range want {
			if w = strings.Join(strings.Fields(w), " "); !strings.Contains(got, w) {
				t.Errorf("%s\nlacks %q:\n%s", page, w, got)
			}
		}
		if p.Band.Found != strings.Contains(answered(t, a, 0).Main, "picture-scene") {
			t.Errorf("%s\ndrawing: %v", page, !p.Band.Found)
		}
	}
}

// Where there is no answer, the screen says why in a line, and what to do.
func TestNoAnswer(t *testing.T) {
	for page, want := range map[string]string{
		"units: ft F\nfor: rainbo\n0 70\n10 60\n": `No answer: no fish "rainbo" here, did you mean rainbow?`,
		"units: ft F\n0 700\n10 600\n":            "No answer: no reading is left to use: every one is flagged.",
		"units: ft F\nwater: Alder Kettle\n":      "No answer: no readings.",
	} {
		show := answered(t, withBook(t, "", page), 0)
		if got := words(show.Main); !strings.Contains(got, want) || !strings.Contains(show.Main, `data-do="correct"`) {
			t.Errorf("%q:\n%s", want, show.Main)
		}
	}
}

// A reading at the anchor says what plan says of it.
func TestCheck(t *testing.T) {
	a := withBook(t, "", demo.Page(t, "alder-kettle-july"))
	answered(t, a, 0)
	for _, c := range []struct{ depth, temp, want string }{
		{"17", "57", "Check: 57 F"}, {"16", "64.5", "as expected"}, {"16,5", "64", "as expected"}, {"16,5", "64.3", "Check: 64.3 F at 16.5 ft, expected"}, {"45", "50", "below the deepest reading"},
		{"16 ft 64.5 F", "", "as expected"}, {"", "", "Not compared: "}, {"16", "", "Not compared: "}, {"16", "64\n20 58", "Not compared: "},
	} {
		show := a.Do(Event{Do: "check", Fields: map[string]string{"depth": c.depth, "temperature": c.temp}})
		wellMade(t, show)
		if !strings.Contains(show.Say, c.want) || !strings.Contains(words(show.Main), show.Say) {
			t.Errorf("%q %q: %q", c.depth, c.temp, show.Say)
		}
	}
}

// A page is corrected in its place, as it was written; what cannot be read changes nothing,
// nor does a page that was changed meanwhile.
func TestCorrect(t *testing.T) {
	const page = "for: unicorn\nunits: ft F\n# mine\n0 70\n10 60\n20 50\n"
	a := withBook(t, "", page)
	answered(t, a, 0)
	if show := a.Do(Event{Do: "correct"}); !strings.Contains(show.Main, "# mine\n0 70") {
		t.Fatal(show.Main)
	}
	bad := a.Do(Event{Do: "page-save", Fields: map[string]string{"page": "units: ft F\nfly weight: heavy\n0 70\n"}})
	if !strings.Contains(bad.Say, "Not saved: ") || !strings.Contains(bad.Main, "fly weight: heavy") || onlyPage(t, a) != page {
		t.Errorf("%q\n%s\n%s", bad.Say, bad.Main, onlyPage(t, a))
	}
	if empty := a.Do(Event{Do: "page-save", Fields: map[string]string{"page": " "}}); !strings.Contains(empty.Say, "Not saved: ") || onlyPage(t, a) != page {
		t.Errorf("%q\n%s", empty.Say, onlyPage(t, a))
	}
	right := strings.Replace(page, "unicorn", "perch", 1)
	show := a.Do(Event{Do: "page-save", Fields: map[string]string{"page": strings.TrimSuffix(right, "\n")}})
	if a.answer.err != nil || !strings.Contains(words(show.Main), "For yellow perch") || onlyPage(t, a) != right {
		t.Errorf("%v\n%s\n%s", a.answer.err, words(show.Main), onlyPage(t, a))
	}
	a.Do(Event{Do: "correct"})
	other := right + "caught: perch 9 ft\n"
	if err := os.WriteFile(filepath.Join(a.o.Dir, "a.txt"), []byte(other), 0o600); err != nil {
		t.Fatal(err)
	}
	if show := a.Do(Event{Do: "page-save", Fields: map[string]string{"page": right}}); !strings.Contains(show.Say, "changed meanwhile") || onlyPage(t, a) != other {
		t.Errorf("%q\n%s", show.Say, onlyPage(t, a))
	}
}

// onlyPage is the text of the first page of the book.
func onlyPage(t *testing.T, a *App) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(a.o.Dir, "a.txt"))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// Readings that the answer leaves out are named beside it, and no more than three.
func TestUnusedReadings(t *testing.T) {
	show := answered(t, withBook(t, "", "units: ft F\n0 74\n5 73.5\n10 27.2\n15 66\n20 85\n25 51\n30 49.5\n"), 0)
	for _, want := range []string{"27.2 F at 10 ft looks like a slipped digit (72.2 F?); not used.", "85 F at 20 ft looks like a slipped digit"} {
		if at := strings.Index(words(show.Main), want); at < 0 || at > strings.Index(words(show.Main), "Caught one") {
			t.Errorf("%q is not said beside the answer:\n%s", want, words(show.Main))
		}
	}
	if show := answered(t, withBook(t, "", demo.Page(t, "alder-kettle-july")), 0); strings.Contains(show.Main, "not used.") {
		t.Error("a reading is named that is used")
	}
}
