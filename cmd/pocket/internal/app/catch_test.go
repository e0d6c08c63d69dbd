package app

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldseam/profile/book"
	"coldseam/profile/demo"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
)

// What is noted is what the terminal's caught writes, on a page as whoever wrote it.
func TestCaughtAsInTheTerminal(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the terminal's program")
	}
	terminal := filepath.Join(t.TempDir(), "coldseam")
	if out, err := exec.Command("go", "build", "-o", terminal, "coldseam/cmd/coldseam").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	today := time.Now().Format(time.DateOnly)
	for _, page := range []string{
		demo.Page(t, "alder-kettle-july"),
		strings.Replace(demo.Page(t, "alder-kettle-july"), "2026-07-18 14:20", today, 1),
		strings.ReplaceAll(demo.Page(t, "marl-hole-july"), "\n", "\r\n"),
		"units: m C\nspot: caf\xe9\n0 20\n5 15\n8 9\ncaught: tench 4 m\n\n# windy\n",
	} {
		for _, said := range []string{"rainbow 16 ft", "18:10 2 perch 12 ft on a leech", "5 nice ones", "11:05 3 Bärsche 4,5 m", "7:45 nothing like it # but big"} {
			a := withBook(t, "", page)
			a.o.Now = time.Now
			answered(t, a, 0)
			if notebook.OfNow(a.answer.sheet.Drop.Date, time.Now()) && !strings.Contains(said, ":") {
				continue // the time of day is that of the moment
			}
			a.Do(Event{Do: "caught"})
			show := a.Do(Event{Do: "catch", Fields: map[string]string{"said": said}})
			wellMade(t, show)

			dir := t.TempDir()
			if err := os.WriteFile(filepath.Join(dir, "a.txt"), []byte(page), 0o600); err != nil {
				t.Fatal(err)
			}
			cmd := exec.Command(terminal, "caught", "--book", dir, "--drop", "1", said)
			cmd.Env = []string{"HOME=" + dir}
			var out, wrong bytes.Buffer
			cmd.Stdout, cmd.Stderr = &out, &wrong
			refused := cmd.Run() != nil
			want, err := os.ReadFile(filepath.Join(dir, "a.txt"))
			if err != nil {
				t.Fatal(err)
			}
			if got := onlyPage(t, a); got != string(want) || refused == (got != page) {
				t.Errorf("%q: %q\nin the terminal: %q\n%s%s%s", said, got, want, out.String(), wrong.String(), show.Main)
			}
			told := strings.Join(strings.Fields(out.String()), " ")
			if !refused && !strings.Contains(words(show.Main), told) {
				t.Errorf("%q: the terminal says %q:\n%s", said, told, words(show.Main))
			}
		}
	}
}

// Two touches note a fish at the depth of the answer's fly, with the time; then it is part
// of the answer's page, and can be taken off again.
func TestTwoTouches(t *testing.T) {
	july := demo.Page(t, "alder-kettle-july")
	a := withBook(t, "", july)
	if show := answered(t, a, 0); !strings.Contains(show.Main, `data-do="caught"`) {
		t.Fatal(show.Main)
	}
	if show := a.Do(Event{Do: "caught"}); !strings.Contains(show.Main, `data-do="catch" data-value="rainbow"`) || !strings.Contains(words(show.Main), "Rainbow trout, 16 ft") {
		t.Fatal(show.Main)
	}
	show := a.Do(Event{Do: "catch", Value: "rainbow"})
	wellMade(t, show)
	if got := onlyPage(t, a); got != july+"caught: 18:10 rainbow 16 ft\n" || !strings.Contains(words(show.Main), "Noted in drop 1 (") {
		t.Errorf("%q\n%s", got, words(show.Main))
	}
	if c := a.answer.sheet.Drop.Catches; len(c) != 1 || len(a.answer.caught) != 1 || c[0].Fish != "rainbow" {
		t.Errorf("the answer has the catches %v", c)
	}
	back := a.Do(Event{Do: "uncatch"})
	wellMade(t, back)
	if got := onlyPage(t, a); got != july || !strings.Contains(words(back.Main), "Taken away from drop 1 (") || strings.Contains(back.Main, "uncatch") || len(a.answer.sheet.Drop.Catches) > 0 {
		t.Errorf("%q\n%s", got, words(back.Main))
	}
	a.Do(Event{Do: "uncatch"}) // a late second touch
	if got := onlyPage(t, a); got != july {
		t.Errorf("%q", got)
	}
}

// The depth is moved from mark to mark, and what is shown is what is noted.
func TestCatchDepth(t *testing.T) {
	metric := "units: m C\nbottom: 9 m\ndate: 2026-07-18\n0 23\n2 22.5\n3 21.5\n4 18\n5 14\n6 12\n8 10\n"
	for _, c := range []struct {
		page  string
		moves string
		want  string
	}{
		{demo.Page(t, "alder-kettle-july"), "1 1", "18 ft"}, {demo.Page(t, "alder-kettle-july"), "-1 -1 -1", "13 ft"},
		{demo.Page(t, "alder-kettle-july"), strings.Repeat("-1 ", 16), ""}, {demo.Page(t, "alder-kettle-july"), strings.Repeat("-1 ", 20) + "1", "1 ft"},
		{metric, "", "%"}, {metric, "1", "4.25 m"}, {metric, "1 1 1", "4.75 m"}, {"units: ft F\nfor: unicorn\n0 70\n5 60\n", "", ""},
		{"units: ft F\nfor: unicorn\n0 70\n5 60\n", "1 1 1 1", "4 ft"},
	} {
		a := withBook(t, "", c.page)
		answered(t, a, 0)
		show := a.Do(Event{Do: "caught"})
		for _, m := range strings.Fields(c.moves) {
			show = a.Do(Event{Do: "catch-depth", Value: m})
		}
		if c.want == "%" {
			c.want = a.answer.plan.Drop.Units.Length(a.answer.plan.FlyM())
		}
		if like := strings.Contains(words(show.Main), "2 perch 4 m on a leech"); like != (c.page == metric) {
			t.Errorf("the example is in the wrong units:\n%s", words(show.Main))
		}
		button := "Rainbow trout, " + c.want
		if c.want == "" {
			button = "Rainbow trout"
		}
		if strings.Contains(c.page, "unicorn") {
			show = a.Do(Event{Do: "catch-more"})
		}
		if !strings.Contains(show.Main, ">"+button+"</button>") {
			t.Errorf("%q: no button %q:\n%s", c.moves, button, words(show.Main))
		}
		a.Do(Event{Do: "catch", Value: "rainbow"})
		if got := onlyPage(t, a); !strings.HasSuffix(got, strings.TrimSpace("rainbow "+c.want)+"\n") {
			t.Errorf("%q: %q", c.moves, got)
		}
	}
}

// The fish caught most on this water before have a button, then all others of the table and
// of the settings; each is noted as that fish.
func TestCatchFish(t *testing.T) {
	july := demo.Page(t, "alder-kettle-july")
	a := withBook(t, "", july, "water: alder kettle\ndate: 2026-06-01\nunits: ft F\n0 70\n9 66\ncaught: walleye 5 ft\ncaught: 3 perch 9 ft\ncaught: <b>alert(1)</b> 9 ft\n",
		"water: Sedge Mere\ndate: 2026-06-02\nunits: ft F\n0 70\n9 66\ncaught: 9 pike 5 ft\n")
	answered(t, a, 2)
	likely := a.likelyFish()
	if len(likely) < 3 || strings.Join(likely[:3], " ") != "rainbow perch walleye" || strings.Contains(strings.Join(likely, " "), "pike") {
		t.Errorf("likely: %v", likely)
	}
	wellMade(t, a.Do(Event{Do: "caught"}))
	const own = "[[fish]]\nname = \"Pond Special\"\nlike = \"brown\"\ncomfort = \"12-17 C\"\n[[fish]]\nname = \"Sauger-Walleye\"\nlike = \"walleye\"\n"
	mine := withBook(t, own, july).set.Fish
	if len(mine) != 2 {
		t.Fatal(mine)
	}
	for _, f := range fish.All(mine...) {
		a := withBook(t, own, july)
		answered(t, a, 0)
		a.Do(Event{Do: "caught"})
		if show := a.Do(Event{Do: "catch-more"}); strings.Count(show.Main, `data-value="`+f.Key+`"`) != 1 {
			t.Errorf("%s: no button", f.Key)
		}
		a.Do(Event{Do: "catch", Value: f.Key})
		if c := a.answer.sheet.Drop.Catches; len(c) != 1 || c[0].Fish != f.Key || !c[0].Depth.Known || c[0].Count != 1 {
			t.Errorf("%s was noted as %+v", f.Key, c)
		}
	}
}

// What cannot be noted says why on the same screen, keeps the page, and can be tried again.
func TestCatchRefused(t *testing.T) {
	july := demo.Page(t, "alder-kettle-july")
	for said, want := range map[string]string{"": "say what was caught", "nothing": "names no catch", "rain\x1bbow": "control character", strings.Repeat("x", 5000): "shorten it"} {
		a := withBook(t, "", july)
		answered(t, a, 0)
		a.Do(Event{Do: "caught"})
		show := a.Do(Event{Do: "catch", Fields: map[string]string{"said": said}})
		wellMade(t, show)
		if !strings.Contains(show.Say, "Not noted: ") || !strings.Contains(show.Say, want) || !strings.Contains(show.Main, `id="said"`) || onlyPage(t, a) != july {
			t.Errorf("%.20q: %q", said, show.Say)
		}
	}
	a := withBook(t, "", july)
	answered(t, a, 0)
	a.Do(Event{Do: "caught"})
	unlock, err := book.At(a.o.Dir, book.System{}).Lock()
	if err != nil {
		t.Fatal(err)
	}
	if show := a.Do(Event{Do: "catch", Value: "rainbow"}); !strings.Contains(show.Say, "a drop is being taken in another window or tab") || onlyPage(t, a) != july {
		t.Errorf("%q", show.Say)
	}
	unlock()
	if err := os.Remove(filepath.Join(a.o.Dir, "a.txt")); err != nil {
		t.Fatal(err)
	}
	if show := a.Do(Event{Do: "catch", Value: "rainbow"}); !strings.Contains(show.Say, "not in the book any more") {
		t.Errorf("%q", show.Say)
	}
}

// Of a page with several drops the one that is seen is noted on.
func TestCatchOfTheSecondDrop(t *testing.T) {
	drop := "\nwater: Alder Kettle\ndate: %\nunits: ft F\n0 74\n5 73.5\n10 72\n14 66\n16 62\n20 56\n25 52\n"
	page := strings.Replace(drop, "%", "2026-07-17 09:00", 1)[1:] + strings.Replace(drop, "%", "2026-07-18 09:00", 1)
	a := withBook(t, "", page)
	for n, date := range []string{"2026-07-17", "2026-07-18"} {
		answered(t, a, n)
		for range 2 { // the second on a page that has changed
			a.Do(Event{Do: "caught"})
			a.Do(Event{Do: "catch", Value: "perch"})
		}
		if d := a.answer.sheet.Drop; !strings.HasPrefix(d.Date, date) || len(d.Catches) != 2 {
			t.Errorf("%s: %v", d.Date, d.Catches)
		}
	}
	sheets, err := notebook.Read([]byte(onlyPage(t, a)), notebook.Options{Name: "a"})
	if err != nil || len(sheets) != 2 || len(sheets[0].Drop.Catches) != 2 || len(sheets[1].Drop.Catches) != 2 {
		t.Errorf("%v\n%s", err, onlyPage(t, a))
	}
	if got, want := sheets[0].Drop.Catches[0].Text, "18:10 perch 16 ft"; !strings.HasSuffix(want, got) && got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A finger that touches twice notes one fish, and goes one screen on.
func TestTouchedTwice(t *testing.T) {
	july := demo.Page(t, "alder-kettle-july")
	a := withBook(t, "", july)
	answered(t, a, 0)
	for range 2 {
		a.Do(Event{Do: "caught"})
	}
	for range 2 {
		a.Do(Event{Do: "catch", Value: "rainbow"})
	}
	if got := onlyPage(t, a); got != july+"caught: 18:10 rainbow 16 ft\n" || !a.on(answerScreen) || a.answer.undo != "uncatch" {
		t.Errorf("%q", got)
	}
	for range 2 {
		a.Do(Event{Do: "message"})
	}
	if show := a.Do(Event{Do: "back"}); show.Depth != 1 || !a.on(answerScreen) {
		t.Errorf("%d screens back", show.Depth)
	}
}
