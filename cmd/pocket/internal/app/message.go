package app

import (
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/report"
)

var messageActs = actions{
	"message":      func(a *App, _ Event) { a.books.spot = false; a.goTo(messageScreen) },
	"message-spot": func(a *App, e Event) { a.books.spot = e.Fields["checked"] != "" },
}

// messageScreen is the answer in a few lines, for a message. The spot is an angler's own
// affair: it is told only where that is wanted.
func messageScreen(a *App) []markup.Node {
	a.show.Title = "Message"
	out := []markup.Node{markup.El("h1", "Message")}
	if err := a.answer.err; err != nil {
		return append(out, told(sentence("there is no answer to tell: "+why(err))), wayBack())
	}
	spot := a.answer.plan.Drop.Spot
	out = append(out, markup.Pre(markup.ID("message"), markup.Class("paper"), strings.TrimSuffix(report.Share(a.answer.plan, a.books.spot), "\n")))
	if strings.TrimSpace(spot) != "" {
		tick := []any{markup.ID("spot"), markup.A("type", "checkbox"), markup.A("data-do", "message-spot")}
		if a.books.spot {
			tick = append(tick, markup.A("checked", ""))
		}
		out = append(out, markup.El("label", markup.Class("tick"), markup.El("input", tick...), "with the spot"))
	}
	return append(out,
		markup.El("p", markup.Class("row"),
			markup.El("button", markup.A("type", "button"), markup.A("data-share", "message"), markup.Class("go"), "Send"),
			markup.El("button", markup.A("type", "button"), markup.A("data-copy", "message"), "Copy")),
		wayBack())
}
