package book

import (
	"testing"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// TestQuery: all that is asked must hold; a part of a name is enough, and case counts for
// nothing.
func TestQuery(t *testing.T) {
	is := notebook.Glance{Water: "Alder Kettle", Spot: "North Bay", Date: "2026-07-18 14:20", For: "rainbow"}
	text := "water: Alder Kettle\nnote: mist at dawn\n"
	page := onPage{func() string { return text }, func() []profile.Catch { return []profile.Catch{{Fish: "perch"}} }}
	fish := func(name string) func(string) bool { return func(s string) bool { return s == name } }
	for _, c := range []struct {
		name string
		q    Query
		want bool
	}{
		{"nothing", Query{}, true}, {"water", Query{Water: "KETTLE"}, true}, {"other water", Query{Water: "sedge"}, false},
		{"spot", Query{Spot: "bay"}, true}, {"other spot", Query{Spot: "south"}, false},
		{"month", Query{Month: "2026-07"}, true}, {"any July", Query{Month: "-07"}, true}, {"other month", Query{Month: "-06"}, false}, {"other year", Query{Month: "2025-07"}, false},
		{"fished for", Query{Fish: fish("rainbow")}, true}, {"caught", Query{Fish: fish("perch")}, true}, {"other fish", Query{Fish: fish("pike")}, false},
		{"words", Query{Words: []string{"MIST", "dawn"}}, true}, {"one word missing", Query{Words: []string{"mist", "dusk"}}, false},
		{"all but one", Query{Water: "alder", Spot: "bay", Month: "-07", Words: []string{"dusk"}}, false},
	} {
		if got := c.q.asks(is, page); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	if (Query{Month: "-07"}).asks(notebook.Glance{}, page) {
		t.Error("a drop without a date is of July")
	}
	for s, want := range map[string]string{"july": "-07", "Jul": "-07", "7": "-07", "07": "-07", "2026-07": "2026-07", "2026-7": "2026-07", "december": "-12", "ju": "", "0": "", "13": "", "2026-13": "", "": "", "smarch": ""} {
		if got, err := Month(s); got != want || (err == nil) != (want != "") {
			t.Errorf("%q: %q, %v", s, got, err)
		}
	}
}
