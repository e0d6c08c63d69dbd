// Package demo gives tests the plan of a page of text, and the pages of the module's
// testdata. It says and draws nothing, and is for tests alone.
package demo

import (
	"os"
	"path/filepath"

	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// TB is what tests, benchmarks and properties have in common.
type TB interface {
	Helper()
	Fatal(...any)
}

// Pages are the demo pages, file names with their path.
func Pages(tb TB) []string {
	tb.Helper()
	pages, err := filepath.Glob(filepath.Join(folder(tb), "*.txt"))
	if err != nil || len(pages) < 4 {
		tb.Fatal("too few demo pages: ", pages, err)
	}
	return pages
}

// folder is the testdata of the module, whose root is above the package under test.
func folder(tb TB) string {
	tb.Helper()
	at := "."
	for range 6 {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return filepath.Join(at, "testdata")
		}
		at = filepath.Join(at, "..")
	}
	tb.Fatal("no go.mod above this package")
	return ""
}

// Page is the text of a demo page, named without its .txt. A page that cannot be read
// ends the test.
func Page(tb TB, name string) string {
	tb.Helper()
	b, err := os.ReadFile(filepath.Join(folder(tb), name+".txt"))
	if err != nil {
		tb.Fatal(err)
	}
	return string(b)
}

// Plan is the plan of the first drop on a page of text, for rainbow trout. A page without
// a plan ends the test.
func Plan(tb TB, page string) plan.Plan {
	tb.Helper()
	return PlanFor(tb, page, "rainbow")
}

// PlanFor is Plan for another fish.
func PlanFor(tb TB, page, wanted string) plan.Plan {
	tb.Helper()
	p, err := Try(tb, page, wanted)
	if err != nil {
		tb.Fatal(err)
	}
	return p
}

// Try makes the plan of the first drop on a page, with the settings that the program
// begins with; the error is that of plan.Make. A page that cannot be read ends the test.
func Try(tb TB, page, wanted string) (plan.Plan, error) {
	tb.Helper()
	return plan.Make(Input(tb, page, wanted))
}

// Input is what Try makes the plan from.
func Input(tb TB, page, wanted string) plan.Input {
	tb.Helper()
	sheets, err := notebook.Read([]byte(page), notebook.Options{Name: "page"})
	if err != nil {
		tb.Fatal(err)
	}
	f, err := fish.Find(wanted)
	if err != nil {
		tb.Fatal(err)
	}
	return plan.Input{Drop: sheets[0].Drop, Fish: f, ClearanceM: plan.ClearanceM, Tackle: rig.DefaultTackle()}
}
