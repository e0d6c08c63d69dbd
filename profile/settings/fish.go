package settings

import (
	"errors"

	"coldseam/profile/fish"
)

func (p *parser) fishes(list []fish.Entry) {
	for i, e := range list {
		f, err := e.Own(p.s.Fish)
		var wrong *fish.EntryError
		if errors.As(err, &wrong) {
			p.fail(in("fish", i, wrong.Key), wrong.Err)
			return
		}
		p.s.Fish = append(p.s.Fish, f)
	}
}
