package report

import (
	"testing"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// TestCarriedOver: what is taken over is named with the drop it comes from, and a bottom is
// to be checked.
func TestCarriedOver(t *testing.T) {
	from := profile.Drop{Water: "Alder\x1b Kettle", Date: "2026-07-18"}
	for _, c := range []struct{ got, want string }{
		{CarriedOver(3, from, []notebook.Header{{Key: "units", Value: "ft F"}, {Key: "for", Value: "perch"}}, nil), "Taken over from drop 3 (Alder\ufffd Kettle, 2026-07-18): units ft F, for perch."},
		{CarriedOver(3, from, nil, nil), "Nothing is taken over from drop 3 (Alder\ufffd Kettle, 2026-07-18)."},
		{CarriedOver(3, from, nil, []notebook.Header{{Key: "bottom", Value: "31 ft", From: "drop 2"}}), "Nothing is taken over from drop 3 (Alder\ufffd Kettle, 2026-07-18). The bottom is taken to be at 31 ft, as in drop 2: check it, and type bottom: with its depth if it is not."},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
