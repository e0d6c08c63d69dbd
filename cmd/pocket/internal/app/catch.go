package app

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/report"
)

var catchActs = actions{
	"caught":      (*App).caught,
	"catch":       (*App).catch,
	"catch-depth": (*App).catchDepth,
	"catch-more":  func(a *App, _ Event) { a.answer.catch.more = true },
	"uncatch":     (*App).uncatch,
}

// catchState is a catch that is about to be noted.
type catchState struct {
	depthM profile.Optional // of the fly
	more   bool             // all fish are shown
	told   string           // why it was not noted
}

// caught shows what can be noted with two touches: the fish, at the depth of the answer's
// fly.
func (a *App) caught(Event) {
	s := &a.answer
	s.catch = catchState{}
	if s.err == nil && s.plan.Band.Found {
		s.catch.depthM = profile.Some(s.plan.FlyM())
	}
	a.goTo(catchScreen)
}

func catchScreen(a *App) []markup.Node {
	s := &a.answer
	out := []markup.Node{a.head("Caught one"), told(s.catch.told)}
	out = append(out, markup.El("p", markup.Class("lead"), a.depthSaid()),
		markup.El("div", markup.Class("row"), touch("catch-depth", "-1", "Shallower"), touch("catch-depth", "1", "Deeper")))
	for _, f := range a.likelyFish() {
		out = append(out, a.fishButton(f, markup.Class("big")))
	}
	if s.catch.more {
		all := []any{markup.Class("row")}
		for _, f := range fish.All(a.set.Fish...) {
			if !slices.Contains(a.likelyFish(), f.Key) {
				all = append(all, a.fishButton(f.Key))
			}
		}
		out = append(out, markup.El("div", all...))
	} else {
		out = append(out, markup.El("div", markup.Class("row"), touch("catch-more", "", "Another fish")))
	}
	like := "2 perch 12 ft on a leech"
	if !s.sheet.Drop.Units.Feet() {
		like = "2 perch 4 m on a leech"
	}
	out = append(out, markup.El("form", markup.ID("words"), markup.A("data-do", "catch"),
		field("said", "said", "Or in words of your own: "+like), submit("Note it")))
	if !notebook.OfNow(s.sheet.Drop.Date, a.o.Now()) {
		out = append(out, markup.El("p", markup.Class("quiet"), "This drop is not of today: what is noted with it has no time of day."))
	}
	return append(out, wayBack())
}

// catchAt is the depth as it is noted, "" for none.
func (a *App) catchAt() string {
	d := a.answer.catch.depthM
	if !d.Known {
		return ""
	}
	return a.answer.sheet.Drop.Units.Marked(d.Value)
}

// catchDepth moves the depth to the next mark; above the first it is not noted.
func (a *App) catchDepth(e Event) {
	s := &a.answer
	step := s.sheet.Drop.Units.DepthStepM()
	marks := s.catch.depthM.Or(0) / step
	switch e.Value {
	case "1":
		marks = math.Floor(marks+0.01) + 1
	case "-1":
		marks = math.Ceil(marks-0.01) - 1
	}
	s.catch.depthM = profile.Optional{Value: marks * step, Known: marks > 0}
	a.say(a.depthSaid())
}

// depthSaid says at which depth a catch is noted.
func (a *App) depthSaid() string {
	if at := a.catchAt(); at != "" {
		return "At " + at
	}
	return "No depth is noted"
}

// fishButton is the button that notes a fish.
func (a *App) fishButton(name string, more ...any) markup.Node {
	label := name
	if f, ok := fish.Known(a.set.Fish, name); ok {
		label = f.Name
	}
	if at := a.catchAt(); at != "" {
		label += ", " + at
	}
	return touch("catch", name, append(more, capital(label))...)
}

// likelyFish are the fish of the answer, and those caught before on its water, the ones caught
// most first.
func (a *App) likelyFish() []string {
	s := &a.answer
	var out []string
	if f, ok := fish.Known(a.set.Fish, cmp.Or(s.fish, s.sheet.Drop.For, fish.Usual)); ok {
		out = append(out, f.Key)
	}
	count := map[string]int{}
	for _, d := range s.caught {
		if !strings.EqualFold(strings.TrimSpace(d.Water), strings.TrimSpace(s.sheet.Drop.Water)) {
			continue
		}
		for _, c := range d.Catches {
			count[c.Fish] += c.Count
		}
	}
	var before []string
	for name := range count {
		if name != "" && !slices.Contains(out, name) {
			before = append(before, name)
		}
	}
	slices.SortFunc(before, func(x, y string) int {
		return cmp.Or(cmp.Compare(count[y], count[x]), cmp.Compare(x, y))
	})
	return append(out, before[:min(len(before), mostLikely)]...)
}

// mostLikely are the fish caught before that have a button at once.
const mostLikely = 4

// catch notes a fish by its button, or what was said in words.
func (a *App) catch(e Event) {
	if !a.on(catchScreen) { // a touch that came twice notes one fish
		return
	}
	text := strings.TrimSpace(e.Fields["said"])
	if e.Value != "" {
		text = a.catchText(e.Value)
	}
	if text == "" {
		a.notCaught("say what was caught, such as: 2 perch")
		return
	}
	if _, err := notebook.ReadCatch(text, a.set.Fish...); err != nil {
		a.notCaught(why(err))
		return
	}
	if notebook.OfNow(a.answer.sheet.Drop.Date, a.o.Now()) {
		text = notebook.CatchNow(text, a.o.Now(), a.set.Fish...)
	}
	var is profile.Catch
	entry, err := a.onPage(func(b *book.Book, e book.Entry) (err error) {
		is, err = b.AddCatch(e, text, a.reading())
		return err
	})
	if err != nil {
		a.notCaught(why(err))
		return
	}
	a.back()
	a.tellAnswer(report.CatchNoted(entry.Number, entry.Drop, is), "Noted.", "uncatch")
}

// catchText is the line of a fish at the depth shown, in the first of its names that is read
// back as that fish.
func (a *App) catchText(name string) string {
	names := []string{name}
	if f, ok := fish.Known(a.set.Fish, name); ok {
		names = append(names, f.Name)
	}
	for _, n := range names {
		text := strings.TrimSpace(n + " " + a.catchAt())
		if is, err := notebook.ReadCatch(text, a.set.Fish...); err == nil && is.Fish == name {
			return text
		}
	}
	return strings.TrimSpace(name + " " + a.catchAt())
}

func (a *App) notCaught(why string) {
	a.answer.catch.told = "Not noted: " + why + "."
	a.say(a.answer.catch.told)
}

// uncatch takes the catch noted last off the page again.
func (a *App) uncatch(Event) {
	if a.answer.undo != "uncatch" {
		return
	}
	var is profile.Catch
	entry, err := a.onPage(func(b *book.Book, e book.Entry) (err error) {
		is, err = b.TakeCatch(e, a.reading())
		return err
	})
	if err != nil {
		a.tellAnswer("Not taken back: "+why(err)+".", "Not taken back.", "uncatch")
		return
	}
	a.tellAnswer(report.CatchTaken(entry.Number, entry.Drop, is), "Taken back.", "")
}

var errGone = errors.New("the page is not in the book any more, or was changed elsewhere: open the drop from the book again")

// onPage changes the page of the answer's drop, with other pages kept out, and makes the
// answer of what stands there then. The entry is the drop as it was.
func (a *App) onPage(change func(b *book.Book, e book.Entry) error) (book.Entry, error) {
	b, unlock, err := a.hold()
	if err != nil {
		return book.Entry{}, err
	}
	defer unlock()
	was, err := a.entry()
	if err == nil {
		err = change(b, was)
	}
	if err != nil {
		return was, err
	}
	a.answer.nth = was.Nth
	if now, err := a.entry(); err == nil {
		a.answer.sheet = now.Sheet
		a.answer.plan, a.answer.err = a.planOf(now.Sheet)
	}
	return was, nil
}
