package settings

import (
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
	"pgregory.net/rapid"

	"coldseam/profile/notebook"
)

// TestRulesReadBack: the rules noted for a water are found again, with their note as it
// was typed, for a drop that was saved and read back.
func TestRulesReadBack(t *testing.T) {
	name := rapid.StringOfN(rapid.OneOf(rapid.SampledFrom([]rune(`## \\ :;,.'"`)), rapid.RuneFrom([]rune("Pond 3 Étang ß🐟"))), 1, 20, -1)
	rapid.Check(t, func(t *rapid.T) {
		water, note := name.Draw(t, "water"), name.Draw(t, "note")
		if strings.TrimSpace(water) == "" {
			t.Skip("no name")
		}
		data, err := toml.Marshal(map[string]any{"water": []map[string]any{{"name": water, "max_flies": 1, "note": note}}})
		if err != nil {
			t.Fatal(err)
		}
		set, err := Parse("s", data)
		if err != nil {
			t.Fatal(err)
		}
		page := "units: ft F\n0 74\n5 73\n"
		sheets, err := notebook.Read([]byte(page), notebook.Options{Name: "p", Flags: []notebook.Header{{Key: "water", Value: water, From: "--water"}}})
		if err != nil {
			t.Fatal(err)
		}
		if sheets, err = notebook.Read([]byte(notebook.Write(sheets[0].Drop)), notebook.Options{Name: "p"}); err != nil {
			t.Fatal(err)
		}
		if r := set.RulesFor(sheets[0].Drop.Water); r.MaxFlies != 1 || r.Note != note {
			t.Fatalf("rules of %q for %q: %+v", water, sheets[0].Drop.Water, r)
		}
	})
}
