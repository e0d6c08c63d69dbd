package notebook

import (
	"fmt"
	"slices"

	"coldseam/profile"
)

// tooDeep asks about readings that lie deeper than the bottom that was noted; where
// nobody can be asked they stay, and the checks flag them.
func (b *builder) tooDeep() error {
	if b.r.o.Ask == nil {
		return nil
	}
	kept := b.d.Readings[:0:0]
	for _, r := range b.d.Readings {
		if b.d.BelowBottom(r.DepthM) {
			u := b.d.Units.Shown()
			n, err := b.r.ask(Question{Line: r.Line, Text: r.Text,
				What:    fmt.Sprintf("a depth of %s %s, but the bottom was noted at %s", exact(r.Depth), r.DepthUnit, u.Length(b.d.Bottom.Value)),
				Choices: []string{"a mistake: leave this reading out", "the bottom is at least as deep as this reading"}})
			if err != nil {
				return err
			}
			if n == 0 {
				continue
			}
			b.d.Bottom = profile.Some(rounded(r.DepthM))
		}
		kept = append(kept, r)
	}
	b.d.Readings = kept
	return nil
}

// What a depth without a temperature may be.
const (
	nothingTaken = iota
	sameAsAbove
	theBottom
)

// depthAlone asks what a depth without a temperature is, and takes the bottom.
func (b *builder) depthAlone(e entry, depths []token) (int, error) {
	var meant []int
	q := Question{Line: e.line, Text: e.text, What: "no temperature stands beside the depth"}
	offer := func(what int, choice, instead string) {
		meant, q.Choices = append(meant, what), append(q.Choices, choice)
		if q.Instead == "" {
			q.Instead = "write " + instead
		} else {
			q.Instead += " or " + instead
		}
	}
	if len(b.d.Readings) > 0 {
		offer(sameAsAbove, "the same as the reading above", `"15 same"`)
	}
	offer(nothingTaken, "no reading taken", `"15 x"`)
	m := b.metres(depths[0])
	if len(depths) == 1 && !b.d.Bottom.Known && m > 0 && !slices.ContainsFunc(b.d.Readings, func(r profile.Reading) bool { return r.DepthM > m }) {
		offer(theBottom, "the depth of the bottom", `"bottom: 15 ft"`)
	}
	n, err := b.r.ask(q)
	if err != nil {
		return 0, err
	}
	if meant[n] == theBottom {
		b.d.Bottom = profile.Some(m)
	}
	return meant[n], nil
}
