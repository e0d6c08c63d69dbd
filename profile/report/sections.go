package report

import (
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
)

// Section is a part of the whole answer: its title, and a sentence or two each.
type Section struct {
	Title string
	Items []string
}

// ConfirmTitle is that of the section whose items are ticked off at the anchor.
const ConfirmTitle = "Confirm at the anchor"

// Sections are the parts of the whole answer behind its sentences and the picture, in order,
// without those that have nothing to say; notes are those on how the page was read.
func Sections(p plan.Plan, notes []notebook.Note) (out []Section) {
	why, changes := Reasons(p)
	for _, s := range []Section{
		{ConfirmTitle, Confirm(p)},
		{"Why", why},
		{"What would change it", changes},
		{"Light of the day", Sun(p)},
		{"The whole lake", Basin(p)},
		{"Assumed or not measured", Assumed(p)},
		{"Your readings", AsRead(p, notes)},
		{"Safety", Cautions(p)},
	} {
		if len(s.Items) > 0 {
			out = append(out, s)
		}
	}
	return out
}
