// Package demo gives tests of pictures the plan of a page of text, and the pages of the
// module's testdata. It draws nothing, knows no figure, and is for tests alone.
package demo

import (
	"os"
	"testing"

	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// Folder is where the demo pages lie, as seen from a package two folders below the
// module's own, where go test runs its tests.
const Folder = "../../testdata"

// Page is the text of a demo page, named without its .txt. A page that cannot be read
// ends the test.
func Page(tb testing.TB, name string) string {
	tb.Helper()
	b, err := os.ReadFile(Folder + "/" + name + ".txt")
	if err != nil {
		tb.Fatal(err)
	}
	return string(b)
}

// Plan is the plan of the first drop on a page of text, for rainbow trout with the
// settings that the program begins with. A page without a plan ends the test.
func Plan(tb testing.TB, page string) plan.Plan {
	tb.Helper()
	sheets, err := notebook.Read([]byte(page), notebook.Options{})
	if err != nil {
		tb.Fatal(err)
	}
	f, err := fish.Find("rainbow")
	if err != nil {
		tb.Fatal(err)
	}
	p, err := plan.Make(plan.Input{Drop: sheets[0].Drop, Fish: f, Stock: rig.DefaultStock(), ClearanceM: plan.ClearanceM, LongestM: rig.LongestM, RodM: rig.RodM})
	if err != nil {
		tb.Fatal(err)
	}
	return p
}
