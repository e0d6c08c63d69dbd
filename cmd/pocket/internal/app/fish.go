package app

import (
	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/fish"
)

var fishActs = actions{
	"fish":     func(a *App, _ Event) { a.goTo(fishScreen) },
	"fish-for": answerFor,
}

// fishScreen chooses the fish of the answer.
func fishScreen(a *App) []markup.Node {
	list := []any{markup.Class("row")}
	for _, f := range fish.All(a.set.Fish...) {
		list = append(list, touch("fish-for", f.Key, capital(f.Name)))
	}
	return []markup.Node{
		a.head("The answer for which fish?"),
		markup.El("p", "For this answer, as long as it is open. The fish of every drop is chosen under Settings."),
		markup.El("div", list...), wayBack(),
	}
}

// answerFor makes the answer again for another fish; the page of the drop stays as it is.
func answerFor(a *App, e Event) {
	s := &a.answer
	if !a.on(fishScreen) {
		return
	}
	s.fish, s.checked = e.Value, "" // what a reading at the anchor says is of a fish
	s.plan, s.err = a.planOf(s.sheet)
	a.back()
}
