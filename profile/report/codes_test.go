package report

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/demo"
	"coldseam/profile/light"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/sampling"
	"coldseam/profile/unit"
)

// codes are the values of the constants of a type of strings in a package's folder.
func codes(t *testing.T, dir, typeName string) (out []string) {
	t.Helper()
	files, _ := filepath.Glob(filepath.Join(dir, "*.go"))
	for _, name := range files {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			s, ok := n.(*ast.ValueSpec)
			if !ok || len(s.Values) != 1 {
				return true
			}
			of, _ := s.Type.(*ast.Ident)
			value, _ := s.Values[0].(*ast.BasicLit)
			if of != nil && of.Name == typeName && value != nil && value.Kind == token.STRING {
				code, err := strconv.Unquote(value.Value)
				if err != nil {
					t.Fatal(err)
				}
				out = append(out, code)
			}
			return true
		})
	}
	if len(out) < 2 {
		t.Fatalf("%s of %s has the codes %q", typeName, dir, out)
	}
	return out
}

// TestEveryCodeHasWords: whatever a plan may find, there is a sentence for it of more than
// its code, in feet and in metres.
func TestEveryCodeHasWords(t *testing.T) {
	for _, units := range []string{"ft F", "m C"} {
		page := july
		if units == "m C" {
			page = "date: 2026-07-18\nunits: m C\nbottom: 9.5 m\n0 23.5\n1.5 23\n3 22\n4 21\n4.5 18.5\n5 16\n6 13.5\n7.5 11\n9 10.5\n"
		}
		p := demo.PlanFor(t, page, "rainbow")
		p.StepM = 4
		s := speak(p)
		advice := sampling.Advice{DepthM: 5, FromM: 3, ToM: 6, LevelC: 19}
		for _, c := range []struct {
			dir, typeName string
			words         func(code string) string
		}{
			{"../plan", "Doubt", func(code string) string { return s.doubt(plan.Doubt(code)) }},
			{"../plan", "Assumption", func(code string) string { return s.assumption(plan.Assumption(code)) }},
			{"../plan", "Caution", func(code string) string { return cautionOf(plan.Caution(code)).text(s) }},
			{"../plan", "Change", func(code string) string { return s.change(plan.Change(code)) }},
			{"../rig", "Reason", func(code string) string { return s.rigReason(rig.Reason(code)) }},
			{"../band", "Flaw", func(code string) string { return s.flaw(band.Flaw(code)) }},
			{"../sampling", "Why", func(code string) string {
				a := advice
				a.Why = sampling.Why(code)
				return nextReason(a, unit.System{}.Shown())
			}},
			{"../light", "Reason", func(code string) string {
				lit := s
				lit.p.Band.Shift = light.Advice{Why: light.Reason(code)}
				return lit.lightReason()
			}},
			{"..", "Flag", func(code string) string {
				_, text, _ := strings.Cut(Flagged(profile.Reading{Flag: profile.Flag(code)}), " at ")
				return text
			}},
		} {
			said := map[string]string{}
			for _, code := range codes(t, c.dir, c.typeName) {
				if code == "" {
					continue
				}
				text := c.words(code)
				if text == code || len(text) < 8 || strings.Contains(text, "%!") {
					t.Errorf("%s: %s %q says %q", units, c.typeName, code, text)
				}
				if other, ok := said[text]; ok {
					t.Errorf("%s: %s %q and %q both say %q", units, c.typeName, code, other, text)
				}
				said[text] = code
			}
		}
	}
}
