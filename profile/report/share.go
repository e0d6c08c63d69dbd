package report

import (
	"slices"
	"strings"

	"coldseam/profile/plain"
	"coldseam/profile/plan"
)

// shared are the rows that a message to a partner has, a line each.
var shared = [][]string{
	{"Fish", "Fly", "Cast over", "Hole over", "Anchor over", "Thermocline"},
	{"Rig", "Leader"},
}

// Share is the answer as a few lines for a message to a partner: what it is of, what warns,
// where the fish are, what is tied on and how firm that is. A message is short, so details
// are left out, and of what warns all but its first sentence. The spot is told only where
// that is wanted; a long name is cut.
func Share(p plan.Plan, spot bool) string {
	const longest = 40 // letters of a name
	p.Drop.Water, p.Drop.Spot = plain.Cut(p.Drop.Water, longest), plain.Cut(p.Drop.Spot, longest)
	if !spot {
		p.Drop.Spot = ""
	}
	b := Short(p, nil)
	if p.Drop.Date == "" {
		b.Title += ", date not noted"
	}
	return b.share()
}

func (b Brief) share() string {
	lines := []string{b.Title}
	for _, w := range b.Warnings {
		lines = append(lines, firstSentence(w))
	}
	if b.NoWater != "" {
		lines = append(lines, firstSentence(b.NoWater))
	}
	for _, labels := range shared {
		var parts []string
		for _, r := range b.Rows {
			if slices.Contains(labels, r.Label) && r.Value != "none" && r.Value != "not known" {
				parts = append(parts, r.Label+" "+r.Value)
			}
		}
		for i := 1; i < len(parts); i++ {
			parts[i] = strings.ToLower(parts[i][:1]) + parts[i][1:]
		}
		if len(parts) > 0 {
			lines = append(lines, strings.Replace(strings.Join(parts, "; "), "Rig ", "Rig: ", 1)+".")
		}
	}
	return strings.Join(append(lines, b.Confidence), "\n") + "\n"
}

// Lead is a text up to its first full stop, and the rest.
func Lead(text string) (first, rest string) {
	first, rest, more := strings.Cut(text, ". ")
	if more {
		first += "."
	}
	return first, rest
}

func firstSentence(text string) string {
	first, _ := Lead(text)
	return first
}
