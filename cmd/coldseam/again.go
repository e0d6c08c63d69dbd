package main

import (
	"fmt"
	"slices"

	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

// again are the headers that the last drop gives to a new one, and how that is said; flags
// win over them. The bottom is that under the boat: it is taken over from the last drop at the
// spot.
func (p *program) again(c *cli.Context, set settings.Settings) (out []notebook.Header, said string, err error) {
	b, heads, err := p.heads(c, set, book.Query{})
	if err != nil {
		return nil, "", err
	}
	heads = slices.DeleteFunc(heads, func(h book.Head) bool {
		return h.Err != nil || c.IsSet("water") && !sameName(h.Water, c.String("water"))
	})
	if len(heads) == 0 {
		return nil, "", refuse("--again: there is no drop of this water in the book to take over from: leave --again out")
	}
	from := heads[len(heads)-1]
	e := b.Read([]book.Head{from}, set.Reading())[0]
	if e.Err != nil {
		return nil, "", fmt.Errorf("--again: drop %d: %s", from.Number, oneLine(e.Err))
	}
	source := fmt.Sprintf("drop %d", from.Number)
	given := slices.DeleteFunc(notebook.Keys(), func(k string) bool { return !c.IsSet(flagName(k)) })
	out = notebook.Carried(e.Drop, source, set.Fish, given...)
	var bottom []notebook.Header
	spot := e.Drop.Spot
	if c.IsSet("spot") {
		spot = c.String("spot")
	}
	if !c.IsSet("bottom") {
		for _, h := range slices.Backward(heads) {
			if sameName(h.Water, from.Water) && sameName(h.Spot, spot) {
				if there := b.Read([]book.Head{h}, set.Reading())[0]; there.Err == nil {
					bottom = notebook.Headers(there.Drop, fmt.Sprintf("drop %d", h.Number), "bottom")
				}
				break
			}
		}
	}
	return append(out, bottom...), report.CarriedOver(from.Number, e.Drop, out, bottom), nil
}
