package main

import (
	"github.com/urfave/cli/v2"

	"coldseam/profile/book"
	"coldseam/profile/catches"
	"coldseam/profile/plan"
	"coldseam/profile/settings"
)

// taken is what was caught before, as far as the book can be read: a plan does without it.
func (p *program) taken(c *cli.Context, set settings.Settings) (out []catches.Taken) {
	dir, err := p.bookDir(c, set)
	if err != nil {
		return nil
	}
	for _, d := range book.At(dir, p.disk).Caught(set.Reading()) {
		out = append(out, plan.TakenOn(d)...)
	}
	return out
}
