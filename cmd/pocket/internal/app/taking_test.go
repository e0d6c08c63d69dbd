package app

import (
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/book"
	"coldseam/profile/session"
)

// fataler is a test, of whatever kind.
type fataler interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
	Fatal(args ...any)
}

// angler is a hand on an app on an empty folder, and what it showed last.
type angler struct {
	*App
	t      fataler
	o      Options
	show   Show
	locked bool // by another page
	held   int  // locks of this one
	theirs bool // what is shown may hold words of somebody else
}

func anAngler(t testing.TB) *angler { return anAnglerIn(t, t.TempDir()) }

func anAnglerIn(t fataler, dir string) *angler {
	p := &angler{t: t}
	p.o = Options{
		Dir: filepath.Join(dir, "book"), Settings: filepath.Join(dir, "settings.toml"), Durable: true,
		Now: func() time.Time { return time.Date(2026, 7, 18, 14, 20, 0, 0, time.UTC) },
		Lock: func() (func(), error) {
			if p.locked || p.held > 0 {
				return nil, book.ErrInUse
			}
			p.held++
			return func() { p.held-- }, nil
		},
	}
	return p.opened()
}

// opened is the page opened anew: all that was not saved is gone.
func (p *angler) opened() *angler {
	p.held = 0
	p.App = New(p.o)
	p.does("start", "")
	return p
}

// does does something; fields are names and texts.
func (p *angler) does(do, value string, fields ...string) *angler {
	e := Event{Do: do, Value: value, Fields: map[string]string{}}
	for i := 0; i+1 < len(fields); i += 2 {
		e.Fields[fields[i]] = fields[i+1]
	}
	p.show = p.Do(e)
	p.check()
	return p
}

var (
	aTag    = regexp.MustCompile(`</?([a-z0-9]+)`)
	ourTags = regexp.MustCompile(`^(h1|h2|p|b|button|form|label|input|textarea|nav|div|ul|li|span|small|section|pre|details|summary|select|option|fieldset|legend|dl|dt|dd|ol|figure|svg|g|path|text|tspan|rect|line|circle|title|desc|polyline|polygon|style|defs|table|tr|td|th|tbody|thead|caption|progress|main|article|strong|em)$`)
)

// screenIs tells the screens of others.
func (p *angler) screenIs() string {
	if reflect.ValueOf(p.App.screen).Pointer() == reflect.ValueOf(answerScreen).Pointer() {
		return "answer"
	}
	return ""
}

// check looks at every screen: one heading, a way out, no word of a terminal, and no markup
// that is not ours.
func (p *angler) check() {
	p.t.Helper()
	main := p.show.Main
	if strings.Count(main, "<h1") != 1 || !strings.Contains(main, "data-do=") && p.screenIs() != "answer" {
		p.t.Fatalf("a screen without one heading or without a way out:\n%s", main)
	}
	if again := markup.Write(p.screen(p.App)...); !strings.HasSuffix(main, again) {
		p.t.Fatalf("a screen that changes when it is drawn:\n%s\n%s", main, again)
	}
	for _, m := range aTag.FindAllStringSubmatch(main, -1) {
		if !ourTags.MatchString(m[1]) {
			p.t.Fatalf("<%s> on a screen:\n%s", m[1], main)
		}
	}
	for _, text := range []string{p.text(), p.show.Say, p.show.Title} {
		if said := terminal.FindString(text); said != "" && !p.theirs {
			p.t.Errorf("%q is said on a screen: %s", said, text)
		}
	}
}

var (
	aButton = regexp.MustCompile(`(?s)<button type="button" data-do="([^"]*)"(?: data-value="([^"]*)")?[^>]*>(.*?)</button>`)
	aField  = regexp.MustCompile(`<form class="number" data-do="([^"]*)"><label for="([^"]*)">`)
)

// text is what can be read on the screen.
func (p *angler) text() string { return textOf(p.show.Main) }

func textOf(main string) string { return strings.Join(strings.Fields(words(main)), " ") }

// touches touches the button on which a text stands.
func (p *angler) touches(label string) *angler {
	p.t.Helper()
	for _, m := range aButton.FindAllStringSubmatch(p.show.Main, -1) {
		if strings.HasPrefix(textOf(m[3]), label) {
			return p.does(m[1], textOf(m[2]))
		}
	}
	p.t.Fatalf("no button %q:\n%s", label, p.show.Main)
	return p
}

// types sends the form of the number field.
func (p *angler) types(texts ...string) *angler {
	p.t.Helper()
	for _, text := range texts {
		m := aField.FindStringSubmatch(p.show.Main)
		if m == nil {
			p.t.Fatalf("no field for %q:\n%s", text, p.show.Main)
		}
		p.does(m[1], "", m[2], text)
	}
	return p
}

func (p *angler) wants(texts ...string) *angler {
	p.t.Helper()
	for _, text := range texts {
		if !strings.Contains(p.text(), text) {
			p.t.Errorf("the screen does not say %q:\n%s", text, p.text())
		}
	}
	return p
}

// pages are the pages of the book.
func (p *angler) pages() (out []string) {
	p.t.Helper()
	names, err := filepath.Glob(filepath.Join(p.o.Dir, "*.txt"))
	if err != nil {
		p.t.Fatal(err)
	}
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			p.t.Fatal(err)
		}
		out = append(out, string(data))
	}
	return out
}

// rows are the readings of the one page of the book.
func (p *angler) rows() []string {
	p.t.Helper()
	pages := p.pages()
	if len(pages) != 1 {
		p.t.Fatalf("%d pages: %q", len(pages), pages)
	}
	return regexp.MustCompile(`(?m)^[\d.]+ (?:ft|m): .*$`).FindAllString(pages[0], -1)
}

// begun is a drop in feet over 30 ft of water.
func begun(t testing.TB) *angler {
	t.Helper()
	return anAngler(t).touches("New drop").touches("Feet and Fahrenheit").types("30")
}

// The units are asked for once: then they stand in the settings.
func TestWholeDrop(t *testing.T) {
	p := anAngler(t)
	p.touches("New drop").wants("Which units").touches("Feet and Fahrenheit").wants("How deep is the water here").types("30").wants("1 ft", "nothing was read just under the surface")
	if len(p.pages()) != 0 || p.show.Persist {
		t.Errorf("saved before the first reading: %q", p.pages())
	}
	p.types("74").wants("These units stay")
	if !p.show.Persist || !p.show.Awake || p.show.Focus != "temp" || p.show.Say != "Saved: 74 F at 1 ft. Next: 29 ft." {
		t.Errorf("%+v", p.show)
	}
	if p.wants("29 ft", "nothing was read close above the bottom").types("52"); p.show.Persist {
		t.Error("asked to keep what is saved again")
	}
	p.wants("14 ft").types("63", "70", "66").touches("End the drop").wants("for rainbow trout")
	if p.held != 0 || len(p.rows()) != 5 || strings.Contains(p.pages()[0], "not ended") {
		t.Errorf("%d locks, %q", p.held, p.pages())
	}
	p.does("home", "").wants("Last drop", "2026-07-18 14:20", "thermocline").touches("2026-07-18 14:20").wants("for rainbow trout")
	p.does("home", "").touches("New drop").wants("How deep is the water here, in ft?").touches("Back").wants("New drop")
	if len(p.pages()) != 1 || p.held != 0 {
		t.Errorf("%d locks, %q", p.held, p.pages())
	}
}

// What is saved is said aloud, of a reading that was typed again too, and of nothing else.
func TestSavedSaid(t *testing.T) {
	p := begun(t).types("74", "52", "36")
	for _, c := range []struct {
		do   func()
		said string
	}{
		{func() { p.types("63") }, "Saved: 63 F at 14 ft."},
		{func() { p.touches("Undo 63 F") }, "Next: 14 ft."},
		{func() { p.does("take-reading", "0").does("take-right", "", "right", "73") }, "Saved: 73 F at 1 ft."},
		{func() { p.touches("Skip 14 ft") }, "Next: "},
		{func() { p.types("none") }, "Not taken."},
		{func() { p.does("take-line", "", "line", "marks at: gunwale 2 ft") }, "Next: "},
		{func() { p.touches("Leave it").touches("Go on with") }, "Next: "},
	} {
		if c.do(); !strings.HasPrefix(p.show.Say, c.said) {
			t.Errorf("said %q, not %q", p.show.Say, c.said)
		}
	}
}

// inTerminal gives the page of a drop that is typed at a terminal.
func inTerminal(t *testing.T, lines ...string) string {
	t.Helper()
	dir := t.TempDir()
	b, err := book.Open(dir, book.System{})
	if err != nil {
		t.Fatal(err)
	}
	now := func() time.Time { return time.Date(2026, 7, 18, 14, 20, 0, 0, time.UTC) }
	s := session.New(session.Options{Now: now(), Clock: now, New: b.Store(new(book.Log))})
	for _, line := range lines {
		s.Type(line)
	}
	data, err := os.ReadFile(s.Saved())
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// What is touched is saved as what is typed.
func TestSavedAsTyped(t *testing.T) {
	for _, c := range []struct {
		name  string
		touch func(p *angler)
		typed []string
	}{
		{"as asked for", func(p *angler) { p.types("74", "52", "63", "70").touches("End the drop") }, []string{"74", "52", "63", "70", "stop"}},
		{"commas, oxygen, a unit", func(p *angler) { p.types("74,5", "11 C", "63 DO 6,1").touches("End the drop") }, []string{"74,5", "11 C", "63 DO 6,1", "stop"}},
		{"other depths", func(p *angler) {
			p.types("74").touches("Above").touches("Above").types("53").touches("Below").types("64").touches("End the drop")
		}, []string{"74", "27 53", "30 64", "stop"}},
		{"undo and skip", func(p *angler) {
			p.types("74").touches("Undo 74 F").types("73.5").touches("Skip 29 ft").types("66").touches("End the drop")
		}, []string{"74", "undo", "73.5", "skip", "66", "stop"}},
		{"odd, kept", func(p *angler) {
			p.types("74", "52", "36").wants("Is that right?", "slipped digit").touches("Keep 36 F").touches("End the drop")
		}, []string{"74", "52", "36", "", "stop"}},
		{"odd, typed again", func(p *angler) { p.types("74", "52", "36", "63").touches("End the drop") }, []string{"74", "52", "36", "63", "stop"}},
		{"odd, taken back", func(p *angler) { p.types("74", "52", "36").touches("Undo 36 F").types("63").touches("End the drop") }, []string{"74", "52", "36", "undo", "63", "stop"}},
		{"the new one is right", func(p *angler) {
			p.types("74", "52").does("take-line", "", "line", "1 73").wants("At 1 ft it was 74 F before").touches("The new one is right").touches("End the drop")
		}, []string{"74", "52", "1 73", "1", "stop"}},
		{"read twice", func(p *angler) {
			p.types("74", "52").does("take-line", "", "line", "1 73.8").touches("It is a second reading").touches("End the drop")
		}, []string{"74", "52", "1 73.8", "2", "stop"}},
		{"read twice, taken back", func(p *angler) {
			p.types("74", "52").does("take-line", "", "line", "1 73.8").touches("Undo 73.8 F").touches("End the drop")
		}, []string{"74", "52", "1 73.8", "undo", "stop"}},
		{"corrected", func(p *angler) {
			p.types("74", "52 DO 2", "63").touches("29 ft").wants("The right temperature at 29 ft").types("53").touches("End the drop")
		}, []string{"74", "14 63", "29 53 DO 2", "stop"}},
		{"corrected, and odd", func(p *angler) {
			p.types("74", "52", "63").touches("14 ft").types("36").wants("Is that right?").types("62").touches("End the drop")
		}, []string{"74", "52", "62", "stop"}},
		{"another depth", func(p *angler) {
			p.types("74", "52", "63").touches("14 ft").types("15 63").touches("End the drop")
		}, []string{"74", "52", "15 63", "stop"}},
		{"taken out", func(p *angler) {
			p.types("74", "52", "63").touches("29 ft").touches("Take it out").wants("Removed: 52 F at 29 ft").touches("End the drop")
		}, []string{"74", "14 63", "stop"}},
		{"noted", func(p *angler) {
			p.types("74").does("take-line", "", "line", "wind: light S").wants("Noted: wind: light S").does("take-line", "", "line", "caught rainbow 16 ft").touches("End the drop")
		}, []string{"74", "wind: light S", "caught rainbow 16 ft", "stop"}},
		{"a page", func(p *angler) {
			p.types("74").does("take-line", "", "line", "water: Alder Kettle\n12 68\n20 58\n").touches("End the drop")
		}, []string{"74", "water: Alder Kettle", "12 68", "20 58", "stop"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := begun(t)
			c.touch(p)
			want := inTerminal(t, append([]string{"1", "30"}, c.typed...)...)
			if got := p.pages(); len(got) != 1 || got[0] != want {
				t.Errorf("%q, at a terminal\n%q", got, want)
			}
		})
	}
}

// The depth that is asked for stays within the water, a mark of the line at a time.
func TestAboveBelow(t *testing.T) {
	p := begun(t)
	p.touches("Above: 0 ft").does("take-move", "above").wants("0 ft", "Your own choice: 1 ft is advised.")
	if !strings.Contains(p.show.Main, `disabled>Above</button>`) {
		t.Error("a depth above the surface can be asked for")
	}
	p.touches("Below: 1 ft").touches("Below: 2 ft").wants("2 ft").touches("Above: 1 ft")
	p.types("74").wants("29 ft").touches("Below: 30 ft").does("take-move", "below").wants("30 ft").types("warm x9").wants("30 ft")
	if !strings.Contains(p.show.Main, `disabled>Below</button>`) {
		t.Error("a depth below the bottom can be asked for")
	}
	m := anAngler(t).touches("New drop").touches("Metres and Celsius").touches("I do not know")
	m.wants("0.5 m").touches("Below").wants("0.75 m").types("23,4").touches("0.75 m").wants("23.4 C at 0.75 m")
	enough := begun(t).types("74", "73.9", "74").wants("Enough is read", "Hardly any change", "Show the answer")
	enough.touches("Below: 15 ft").wants("15 ft").types("73.8").touches("Show the answer").wants("for rainbow trout")
	if got := enough.rows(); len(got) != 4 {
		t.Errorf("%q", got)
	}
}

// The answer is made for another fish as long as it is open; the page stays as it is.
func TestAnotherFish(t *testing.T) {
	p := begun(t).types("74", "52", "63", "70", "66").touches("End the drop").wants("for rainbow trout")
	was := p.pages()[0]
	p.touches("For another fish").wants("which fish").touches("Back").wants("for rainbow trout")
	p.touches("For another fish").touches("Walleye").wants("for walleye").touches("Caught one").touches("Walleye").wants("for walleye").touches("Undo").wants("for walleye")
	if now := p.pages()[0]; now != was {
		t.Errorf("%q was %q", now, was)
	}
	p.does("fish-for", "perch").wants("for walleye")
	p.does("check", "", "depth", "14", "temperature", "63")
	said := p.answer.checked
	if p.wants(said).touches("For another fish").touches("Rainbow trout"); said == "" || strings.Contains(p.text(), said) {
		t.Errorf("it says of another fish: %q", said)
	}
	p.does("home", "").touches("2026-07-18 14:20").wants("for rainbow trout")
}

// Questions are touched; what is not understood is said beside the field, which keeps it.
func TestQuestions(t *testing.T) {
	for label, want := range map[string]string{"Feet and Fahrenheit": "ft F", "Metres and Celsius": "m C", "Feet and Celsius": "ft C", "Metres and Fahrenheit": "m F"} {
		p := anAngler(t).touches("New drop").touches(label).touches("I do not know").types("15")
		if pages := p.pages(); len(pages) != 1 || !strings.Contains(pages[0], "units: "+want) {
			t.Errorf("%s: %q", label, pages)
		}
	}
	p := anAngler(t).touches("New drop").touches("Metres and Celsius").types("deep").wants(`"deep" is not a depth`, "24 m").types("", "24 ft").wants("0.5 m")
	p.types("23").does("take-line", "", "line", "7 8 9 10 x").wants("Not taken")
	if !strings.Contains(p.show.Main, ">\n7 8 9 10 x</textarea>") || p.show.Say != "Not taken." {
		t.Errorf("the field does not keep what was not taken: %s", p.show.Main)
	}
	if p.types(""); !strings.Contains(p.text(), "Type the temperature first") || len(p.rows()) != 1 {
		t.Error(p.text())
	}
	meaning := begun(t).types("74").does("take-line", "", "line", "68 12")
	if q := meaning.App.taking.view.Question; q == nil || !q.Meaning {
		t.Fatalf("nothing is asked: %s", meaning.text())
	}
	meaning.touches("Leave this line out").wants("Not taken", "29 ft")
	if len(meaning.rows()) != 1 {
		t.Errorf("%q", meaning.rows())
	}
}

// The bottom that was given first is corrected by a line, and what stands in the examples is in
// the units of the drop.
func TestBottomCorrected(t *testing.T) {
	p := anAngler(t).touches("New drop").touches("Metres and Celsius").types("12", "22,5").wants("caught rainbow 5 m", "4 18,5")
	p.does("take-line", "", "line", "bottom 30 m").wants("Noted: bottom 30 m.").does("take-line", "", "line", "bottom: 20 m").wants("Noted: bottom: 20 m.")
	if page := p.pages()[0]; !strings.Contains(page, "bottom: 20 m\n") {
		t.Errorf("%q", page)
	}
	begun(t).types("74").wants("caught rainbow 16 ft", "12 68").types("help").wants("or a depth and a temperature")
}

// A touch that comes late does nothing: its question is closed, its reading is gone.
func TestLateTouches(t *testing.T) {
	p := anAngler(t).touches("New drop").does("take-choose", "1.0").does("take-choose", "1.0").does("take-leave", "1").wants("How deep is the water here")
	p.types("30").does("take-choose", "2.0").does("take-answer", "", "answer", "9").types("74")
	value := regexp.MustCompile(`data-do="take-undo" data-value="([^"]*)"`).FindStringSubmatch(p.show.Main)[1]
	p.types("52").does("take-undo", value)
	if got := p.rows(); len(got) != 2 {
		t.Errorf("%q", got)
	}
	two := begun(t).types("74").does("take-line", "", "line", "7/8/2026\n40 60\n")
	first := strconv.Itoa(two.App.taking.asked) + ".0"
	q := two.does("take-choose", first).App.taking.view.Question
	if q == nil || len(q.Choices) == 0 {
		t.Fatalf("no second question with choices: %s", two.text())
	}
	if two.does("take-choose", first).App.taking.view.Question != q {
		t.Error("a late touch answers the next question")
	}
	p.does("take-right", "", "right", "60").does("take-out", "").does("take-reading", "9").does("take-reading", "-1").does("take-reading", "x").does("take-keep", "").wants("14 ft")
	if got := p.rows(); len(got) != 2 {
		t.Errorf("%q", got)
	}
}

// A reading that is looked at is left as it is, or what is typed there is not understood.
func TestLookAtReading(t *testing.T) {
	p := begun(t).types("74", "52").touches("29 ft").wants("52 F at 29 ft").touches("Leave it as it is").wants("14 ft")
	p.touches("29 ft").types("").wants("Type the temperature that is right").types("5 6 7 8 x9").wants("52 F at 29 ft", "Not taken").types("bottom: 12 ft").wants("Type the one temperature")
	p.does("back", "").wants("14 ft")
	if got := p.rows(); strings.Join(got, ";") != "1 ft: 74 F;29 ft: 52 F" {
		t.Errorf("%q", got)
	}
}

// brittle is a disk that is full while fails is set.
type brittle struct {
	book.System
	fails bool
}

func (b *brittle) Create(path string, mode fs.FileMode) (book.File, error) {
	if b.fails {
		return nil, &fs.PathError{Op: "open", Path: path, Err: syscall.ENOSPC}
	}
	return b.System.Create(path, mode)
}

// Where saving fails the page can be copied; nothing leads away but an answer.
func TestSavingFails(t *testing.T) {
	disk := &brittle{}
	p := anAngler(t)
	p.o.Disk = disk
	p.opened().touches("New drop").touches("Feet and Fahrenheit").types("30", "74", "52")
	disk.fails = true
	p.types("63").wants("63 F at 14 ft is not saved: the phone has no room left. Free some on it, then try again. The readings before it stay saved.", "14 ft: 63 F")
	if !strings.Contains(p.show.Main, `data-copy="unsaved"`) || !strings.Contains(p.show.Main, `<pre id="unsaved" hidden>`) || p.show.Say != "Not saved." {
		t.Error(p.show.Main)
	}
	p.does("back", "").does("home", "").does("drop", "").wants("Not saved").touches("Try again").wants("63 F at 14 ft is not saved", "14 ft: 63 F")
	if len(p.rows()) != 2 {
		t.Errorf("%q", p.rows())
	}
	disk.fails = false
	p.touches("Try again").wants("10 ft")
	if len(p.rows()) != 3 || p.held != 1 {
		t.Errorf("%q, %d locks", p.rows(), p.held)
	}
	disk.fails = true
	p.types("70").touches("I have copied it down").wants("The last of the drop is not saved: the phone has no room left. Free some on it, then try again. What was saved of it before stays.", "Go on with the drop of 2026-07-18 14:20, 3 readings")
	if p.held != 0 {
		t.Error("the book is still locked")
	}
	p.touches("It is finished").wants("The drop was not ended: the phone has no room left.", "What was read of it is saved.")
	disk.fails = false
	p.touches("It is finished").wants("for rainbow trout")
}

// A correction that cannot be saved is nowhere but here either, and what comes late leaves it
// alone.
func TestCorrectionNotSaved(t *testing.T) {
	disk := &brittle{}
	p := anAngler(t)
	p.o.Disk = disk
	p.opened().touches("New drop").touches("Feet and Fahrenheit").types("30", "74", "52").touches("29 ft")
	disk.fails = true
	p.types("53").wants("What you did last is not saved: the phone has no room left.", "29 ft: 53 F")
	for _, do := range []string{"back", "home", "book", "settings", "paste", "drop", "message", "export"} {
		p.does(do, "", "page", "5 71\n10 68").wants("Not saved", "29 ft: 53 F")
	}
	disk.fails = false
	p.touches("Try again").wants("14 ft")
	if got := p.rows(); strings.Join(got, ";") != "1 ft: 74 F;29 ft: 53 F" || p.held != 1 {
		t.Errorf("%q, %d locks", got, p.held)
	}
}

// The disk that fails at the first reading: units, bottom and reading are on the page.
func TestFirstSavingFails(t *testing.T) {
	p := anAngler(t)
	p.o.Disk = &brittle{fails: true}
	p.opened().touches("New drop").touches("Feet and Fahrenheit").types("30")
	if p.types("74").wants("74 F at 1 ft is not saved: the phone", "bottom: 30 ft", "1 ft: 74 F"); p.show.Persist {
		t.Error("nothing is saved that could be kept")
	}
	p.touches("I have copied it down").wants("The drop is not saved: the phone has no room left.", "New drop")
	if len(p.pages()) != 0 {
		t.Errorf("%q", p.pages())
	}
}

// While another page takes a drop none is begun here.
func TestLocked(t *testing.T) {
	p := begun(t).types("74")
	p.opened()
	p.locked = true
	for _, button := range []string{"New drop", "Go on with", "It is finished"} {
		p.touches(button).wants("A drop is being taken in another window", "New drop")
	}
	if !strings.HasPrefix(p.show.Say, "Not done") || p.does("nothing", "").show.Say != "" || strings.Contains(p.text(), "another window") {
		t.Errorf("%q, and later %s", p.show.Say, p.text())
	}
	p.does("paste", "", "page", "units: ft F\n5 71\n10 68\n").wants("Not saved: a drop is being taken in another window", "5 71")
	p.locked = false
	if p.touches("Go on with").wants("29 ft"); p.held != 1 {
		t.Errorf("%d locks", p.held)
	}
}

// A drop is gone on with after the page was lost, or left, and can be ended.
func TestCutOff(t *testing.T) {
	p := begun(t).types("74", "52").opened().wants("Go on with the drop of 2026-07-18 14:20, 2 readings")
	if p.touches("Go on with").wants("14 ft", "Your readings"); strings.Contains(p.text(), "Undo") {
		t.Error("what was read before is no reading of now")
	}
	p.types("63").touches("Leave it for later").wants("3 readings", "Go on with")
	if p.held != 0 {
		t.Error("the book is still locked")
	}
	p.touches("New drop").types("20", "71").touches("Leave it for later").wants("3 readings", "1 reading")
	p.touches("Go on with the drop of 2026-07-18 14:20, 3 readings").types("70").touches("29 ft").types("53").touches("End the drop").wants("for rainbow trout")
	p.does("home", "").wants("1 reading").touches("It is finished").does("home", "")
	if strings.Contains(p.text(), "Go on with") || len(p.pages()) != 2 || strings.Contains(strings.Join(p.pages(), ""), "not ended") {
		t.Errorf("%s\n%q", p.text(), p.pages())
	}
	listed := begun(t).types("74").opened().touches("Book")
	listed.begin(filepath.Join(listed.o.Dir, "2026-07-18-14-20-drop.txt"), nil)
	if listed.does("back", "").wants("New drop", "Go on with"); listed.held != 0 || listed.show.Depth != 0 {
		t.Error("from the list of drops one is not left to the first screen")
	}
	gone := begun(t).types("74").opened()
	if err := os.RemoveAll(gone.o.Dir); err != nil {
		t.Fatal(err)
	}
	gone.touches("Go on with").wants("ended or changed meanwhile", "New drop")
}

// Nothing was read: the first screen says so, and nothing is kept.
func TestNothingRead(t *testing.T) {
	p := begun(t).types("74").touches("Undo 74 F").does("take-end", "").wants("No reading was taken", "New drop")
	if len(p.pages()) != 0 || p.held != 0 {
		t.Errorf("%q, %d locks", p.pages(), p.held)
	}
}

// A phone that keeps nothing and settings that cannot be read are told first.
func TestWarnings(t *testing.T) {
	p := anAngler(t)
	if err := os.WriteFile(p.o.Settings, []byte("rod = yes\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	p.o.Durable = false
	p.opened().wants("This browser keeps nothing", "The settings are not used: line 1: a value is missing, or has no quotes", "They can be put right under Settings")
	p.touches("New drop").touches("Feet and Fahrenheit").types("30", "74").does("home", "")
	if data, err := os.ReadFile(p.o.Settings); err != nil || string(data) != "rod = yes\n" {
		t.Errorf("damaged settings were written over: %q, %v", data, err)
	}
}

// A page is read, kept in the book once, and answered.
func TestPaste(t *testing.T) {
	page := "water: Alder Kettle\ndate: 2026-07-18\nunits: ft F\nbottom: 31 ft\n5ft 71.2\n10-68\n72@3\n20 55\n"
	p := anAngler(t).does("paste", "", "page", page).wants("Alder Kettle, 2026-07-18, for rainbow trout")
	if !p.show.Persist || len(p.pages()) != 1 || p.held != 0 {
		t.Errorf("%q", p.pages())
	}
	p.does("back", "").wants("Last drop").does("paste", "", "page", page).wants("Alder Kettle")
	if len(p.pages()) != 1 || p.show.Persist {
		t.Errorf("kept twice: %q", p.pages())
	}
	two := page + "\nwater: Sedge Mere\ndate: 2026-07-19\nunits: ft F\n0 75\n8 70\n15 60\n"
	p.does("home", "").does("paste", "", "page", two).wants("2 drops", "Alder Kettle, 2026-07-18", "was in the book already", "Sedge Mere, 2026-07-19", "saved")
	p.touches("Sedge Mere").wants("Sedge Mere, 2026-07-19, for rainbow trout").does("back", "").wants("2 drops").touches("Alder Kettle").wants("Alder Kettle").does("back", "").touches("Back").wants("New drop")
	if len(p.pages()) != 2 {
		t.Errorf("%q", p.pages())
	}
}

// What the page leaves open is touched; what cannot be read is named, and the text stays.
func TestPasteAsks(t *testing.T) {
	p := anAngler(t).does("paste", "", "page", "7/8/2026\n5 20\n10 18\n15 11\n").wants("One question", "2026-07-08").touches("2026-07-08")
	for i := 0; i < 5 && strings.Contains(p.text(), "One question"); i++ {
		p.touches(map[bool]string{true: "Metres", false: "Celsius"}[strings.Contains(p.text(), "Metres")])
	}
	if p.wants("2026-07-08, for rainbow trout"); len(p.pages()) != 1 || !strings.Contains(p.pages()[0], "units: m C") {
		t.Errorf("%q", p.pages())
	}
	p = anAngler(t).does("paste", "", "page", "7/8/2026\n5 20\n10 18\n").touches("Back").wants("7/8/2026 5 20 10 18")
	p.does("paste", "", "page", "units: ft F\n5 71\n10 6x8y\n").wants("Line 3: ", "10 6x8y")
	if len(p.pages()) != 0 {
		t.Errorf("%q", p.pages())
	}
	p.does("paste", "", "page", " \n").wants("Paste or type a page")
}

// Words of somebody else are only text.
func TestHostile(t *testing.T) {
	p := begun(t)
	p.theirs = true
	bad := `</textarea><script>alert("1")</script><img src=x onerror=alert(1)>&amp;`
	p.types(bad).types("74")
	p.does("take-line", "", "line", "water: "+bad).does("take-line", "", "line", "note: "+bad+"\x1b[2J").does("take-line", "", "line", bad+"\n"+bad).types("52 "+bad, "52")
	p.does("back", "").does("paste", "", "page", bad).does("paste", "", "page", "water: "+bad+"\nunits: ft F\n5 71\n20 60\n").does("home", "").wants("alert(")
	p.touches("Go on").touches("1 ft").types(bad).does("back", "").touches("End the drop").does("home", "")
}

// Whatever is touched and typed in whatever order: a screen with one heading and a way out,
// and what was saved stays or is taken out by the hand that took it in.
func TestAnyEvents(t *testing.T) {
	texts := []string{"74", "52", "63,4", "36", "12 68", "10-68", "68 12", "1 73", "stop", "undo", "", "x", "bottom: 24 ft", "bottom 9", "7/8/2026", "caught rainbow 16 ft", "for: dragon",
		"units: m C", "5 71\n10 68\n15 60", "0 75\n5 70\n\n0 74\n5 69", "water: Alder Kettle\ndate: 2026-07-18\nunits: ft F\n5 71\n10 68", "9 9 9 x", "200", "-5", "14"}
	dos := []string{"start", "home", "back", "drop", "take-type", "take-line", "take-move", "take-keep", "take-skip", "take-undo", "take-end", "take-choose", "take-answer", "take-leave",
		"take-reading", "take-right", "take-out", "home-go-on", "home-finish", "home-last", "paste", "paste-answer", "paste-open", "nothing"}
	rapid.Check(t, func(t *rapid.T) {
		dir, err := os.MkdirTemp("", "taking")
		if err != nil {
			t.Fatal(err)
		}
		defer os.RemoveAll(dir)
		p := anAnglerIn(t, dir)
		p.theirs = true
		disk := &brittle{}
		p.o.Disk = disk
		p.opened()
		for range rapid.IntRange(1, 25).Draw(t, "steps") {
			disk.fails = rapid.IntRange(0, 9).Draw(t, "disk") == 0
			p.locked = rapid.IntRange(0, 19).Draw(t, "lock") == 0
			text := rapid.SampledFrom(texts).Draw(t, "text")
			buttons := aButton.FindAllStringSubmatch(p.show.Main, -1)
			field := aField.FindStringSubmatch(p.show.Main)
			switch n := rapid.IntRange(0, 9).Draw(t, "what"); {
			case n == 0:
				p.opened()
			case n < 3:
				do := rapid.SampledFrom(dos).Draw(t, "do")
				value := rapid.SampledFrom([]string{"", "0", "1", "1.0", "2.1", "above", "below", "x"}).Draw(t, "value")
				p.does(do, value, "temp", text, "line", text, "answer", text, "right", text, "page", text)
			case n < 6 && field != nil:
				p.types(text)
			case len(buttons) > 0:
				b := rapid.SampledFrom(buttons).Draw(t, "button")
				p.does(b[1], textOf(b[2]))
			}
		}
	})
}
