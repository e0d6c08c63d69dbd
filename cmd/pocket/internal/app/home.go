package app

import "coldseam/cmd/pocket/internal/markup"

var homeActs = actions{
	"home": func(a *App, _ Event) { a.homeward() },
}

// home is the first screen: the last drop, or a new one.
func home(*App) []markup.Node {
	return []markup.Node{
		markup.El("h1", "Coldseam"),
		markup.El("button", markup.Class("big"), markup.A("data-do", "drop"), "New drop"),
	}
}
