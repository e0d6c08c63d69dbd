// Package app is the screens of the pocket page: what is touched or typed goes in as an
// Event, what there is to see comes out as a Show. It has no rule of its own on water, fish
// and readings: what to ask and what is odd is package session's, what a page says package
// notebook's, the answer package plan's, and the sentences about them package report's.
// Here are the words on the buttons, and which screen comes after which.
//
// It knows nothing of browsers: the book is a folder, in the browser one that lies in its
// database.
package app

import (
	"reflect"
	"strings"
	"time"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/book"
	"coldseam/profile/settings"
)

// Options are what the app needs to know of the phone.
type Options struct {
	Dir      string // the folder of saved drops
	Settings string // the file of the settings
	Now      func() time.Time
	Lock     func() (unlock func(), err error) // keeps other pages out while a drop is taken; book.ErrInUse
	Durable  bool                              // what is saved outlives the page
	Disk     book.Disk                         // nil: the machine's
}

// Event is what somebody did on the page: what is to be done, with a value, and the fields
// of a form.
type Event struct {
	Do, Value string
	Fields    map[string]string
}

// Show is what there is to see then.
type Show struct {
	Title string // of the window
	Main  string // HTML
	Say   string // for those who listen
	Focus string // the id of what is to have the focus; "" leaves it where it is
	Depth int    // how many screens back leads through
	Turn  bool   // another screen than before: it is shown from its top
	Effects
}

// Effects are what the page is asked to do besides.
type Effects struct {
	Persist bool // ask the browser to keep what is saved
	Awake   bool // keep the screen on
	// Later is an event that is to follow by itself where nothing else is done at once: the
	// rest of a work of which there is something to see already. "" is none.
	Later string
}

// App is the pocket page as it is now. It is not safe for concurrent use.
type App struct {
	o      Options
	book   *book.Book
	set    settings.Settings
	setErr error    // why the settings file is not used
	screen screen   // what is seen
	before []screen // the screens that back leads to
	wrong  string   // what went wrong with the last event
	show   Show
	state
}

// state is what the screens keep between events.
type state struct {
	paste    pasteState
	taking   takingState
	answer   answerState
	books    bookState
	settings settingsState
	page     pageState
	out      outState
}

// screen draws what is seen.
type screen func(a *App) []markup.Node

// New begins; the first event is "start".
func New(o Options) *App {
	return &App{o: o, screen: home}
}

// acts are what each event does.
var acts = joined(homeActs, pasteActs, takingActs, answerActs, timerActs, catchActs, pageActs, fishActs, outActs, bookActs, exportActs, bringActs, messageActs, settingsActs)

type actions map[string]func(a *App, e Event)

func joined(all ...actions) actions {
	out := actions{"start": (*App).start, "back": func(a *App, _ Event) { a.back() }}
	for _, some := range all {
		for name, do := range some {
			if out[name] != nil {
				panic("two actions named " + name)
			}
			out[name] = do
		}
	}
	return out
}

// Do does what an event asks, and gives what there is to see then. Readings that could not be
// saved are not left: only what is done about them counts.
func (a *App) Do(e Event) Show {
	if e.Do == "" || e.Do != a.show.Later { // what follows by itself is no answer to what was done
		a.wrong = ""
	}
	a.show = Show{}
	before := a.screen
	if do := acts[e.Do]; do != nil && (!a.unsaved() || strings.HasPrefix(e.Do, "take-")) {
		do(a, e)
	}
	a.show.Depth, a.show.Turn = len(a.before), !a.on(before)
	a.show.Main = markup.Write(append([]markup.Node{warning(a.wrong)}, a.screen(a)...)...)
	if a.show.Title == "" {
		a.show.Title = "Coldseam"
	}
	return a.show
}

// start opens the book and reads the settings.
func (a *App) start(Event) {
	a.book = book.At(a.o.Dir, a.disk())
	a.readSettings()
	if !a.o.Durable {
		a.say("This browser keeps nothing.")
	}
}

// on reports whether a screen is the one that is seen.
func (a *App) on(s screen) bool { return same(a.screen, s) }

func same(s, t screen) bool { return reflect.ValueOf(s).Pointer() == reflect.ValueOf(t).Pointer() }

// goTo shows another screen; back leads to this one again. A touch that came twice leads
// there once.
func (a *App) goTo(s screen) {
	if !a.on(s) {
		a.before = append(a.before, a.screen)
	}
	a.enter(s)
}

// back shows the screen before.
func (a *App) back() {
	if n := len(a.before) - 1; n >= 0 {
		s := a.before[n]
		a.before = a.before[:n]
		a.enter(s)
	}
}

// homeward shows the first screen, from which back leads nowhere.
func (a *App) homeward() {
	a.before = nil
	a.enter(home)
}

// enter shows a screen, and does what is done on the way there: on the first one no drop is
// being taken, and the list of drops is as the book is now.
func (a *App) enter(s screen) {
	a.screen = s
	switch {
	case a.on(home):
		a.leave()
	case a.on(books):
		a.look()
	}
}

// say has a sentence said to those who listen, and shown.
func (a *App) say(text string) { a.show.Say = text }

// fail tells above the screen what went wrong, and beside it, where that is out of sight,
// that something did.
func (a *App) fail(text string) {
	a.wrong = text
	a.say("Not done: the reason stands at the top.")
}

// hold opens the book for saving, and keeps other pages out of it.
func (a *App) hold() (*book.Book, func(), error) {
	b, err := book.Open(a.o.Dir, a.disk())
	if err != nil {
		return nil, nil, err
	}
	if a.o.Lock == nil {
		return b, func() {}, nil
	}
	unlock, err := a.o.Lock()
	return b, unlock, err
}

// disk is where the book is kept.
func (a *App) disk() book.Disk {
	if a.o.Disk != nil {
		return a.o.Disk
	}
	return book.System{}
}
