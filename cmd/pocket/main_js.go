// Pocket is the program of the page for the phone: it takes what is touched and typed there
// to package app, and hands back what to show.
package main

import (
	"syscall/js"
	"time"

	"coldseam/cmd/pocket/internal/app"
	"coldseam/profile/book"
)

// host is what worker.js offers.
var host = js.Global().Get("pocket")

func main() {
	a := app.New(app.Options{
		Dir: "/book", Settings: "/settings.toml",
		Now: time.Now, Lock: lock, Durable: host.Get("durable").Bool(),
	})
	s, aside := a.Do(app.Event{Do: "start"}), false
	for {
		host.Call("show", map[string]any{
			"title": s.Title, "main": s.Main, "say": s.Say, "focus": s.Focus, "persist": s.Persist, "awake": s.Awake,
			"depth": s.Depth, "turn": s.Turn, "aside": aside,
		})
		var e app.Event
		e, aside = next(s.Later)
		s = a.Do(e)
	}
}

// asked is what is done on the page next, once it was asked for.
var asked chan js.Value

// next waits for what is done on the page, or gives the event later (aside) where nothing is
// done at once.
func next(later string) (e app.Event, aside bool) {
	if asked == nil {
		asked = make(chan js.Value, 1)
		go func() { asked <- await(host.Call("next")) }()
	}
	var soon <-chan time.Time
	if later != "" {
		soon = time.After(time.Millisecond)
	}
	select {
	case v := <-asked:
		asked = nil
		return event(v), false
	case <-soon:
		return app.Event{Do: later}, true
	}
}

// event is an event as the page sent it.
func event(v js.Value) app.Event {
	e := app.Event{Do: v.Get("do").String(), Value: v.Get("value").String(), Fields: map[string]string{}}
	fields := v.Get("fields")
	names := js.Global().Get("Object").Call("keys", fields)
	for i := range names.Length() {
		name := names.Index(i).String()
		e.Fields[name] = fields.Get(name).String()
	}
	return e
}

// lock takes the lock that one page at a time may hold; the browser lets go of it when the
// page ends.
func lock() (unlock func(), err error) {
	held := await(host.Call("lock"))
	if held.IsNull() {
		return nil, book.ErrInUse
	}
	return func() { held.Invoke() }, nil
}

// await waits for a promise that does not fail.
func await(promise js.Value) js.Value {
	done := make(chan js.Value)
	then := js.FuncOf(func(_ js.Value, args []js.Value) any {
		done <- args[0]
		return nil
	})
	defer then.Release()
	promise.Call("then", then)
	return <-done
}
