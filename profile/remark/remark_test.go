package remark

import (
	"testing"
)

// The longest beginning wins, so no two may be the same, and a word with more than one
// space or with capitals would never be met.
func TestWordsCanBeMet(t *testing.T) {
	for _, words := range [][]word{sky, mud, colour} {
		seen := map[string]bool{}
		for _, w := range words {
			if found, n := find([]string{w.begins}, words); seen[w.begins] || n == 0 || found != w {
				t.Errorf("%q finds %q", w.begins, found.begins)
			}
			seen[w.begins] = true
			if _, is := modifiers[w.begins]; is {
				t.Errorf("%q is also a modifier", w.begins)
			}
		}
	}
}

// Danger is heard wherever it is said, and only a no right before it, or one that an or
// carries on, takes it back.
func TestDanger(t *testing.T) {
	for _, c := range []struct {
		text string
		want Facts
	}{
		{"thunder", Thunder}, {"Thunderstorms to the W", Thunder}, {"lightning", Thunder}, {"lightening far off", Thunder}, {"t-storm", Thunder}, {"storm coming", Thunder}, {"rumbling", Thunder},
		{"No thunder this morning, thunder now", Thunder}, {"no thunder this morning but thunder now", Thunder}, {"no thunder then thunder", Thunder},
		{"no lightning, thunder", Thunder}, {"scattered thunderstorms", Thunder}, {"chance of thunder", Thunder}, {"no luck and thunder", Thunder}, {"not only thunder", Thunder},
		{"no rain, some thunder", Thunder}, {"no more thunder", Thunder}, {"calm\tthunder", Thunder}, {"clear; THUNDER", Thunder},
		{"no thunder", none}, {"clear, no thunder or lightning", none}, {"no wind or thunder", none}, {"no sign of thunder", none}, {"without any thunder", none}, {"isn't thundering", none}, {"no storms", none},
		{"", none}, {"light rain", none}, {"snowstorm", none}, {"low light", none},
		{"whitecaps", Whitecaps}, {"white caps further out", Whitecaps}, {"no whitecaps at 6, whitecaps now", Whitecaps}, {"scattered whitecaps", Whitecaps}, {"squalls", Whitecaps},
		{"no whitecaps", none}, {"no chop or whitecaps", none}, {"chop", none},
		{"orage au loin", Thunder}, {"pas d'orage", none}, {"pas d'orage ce matin, orage maintenant", Thunder}, {"sans tonnerre ni éclairs", none}, {"éclaircies", none}, {"moutons", Whitecaps},
		{"no whitecaps, thunder", Thunder}, {"whitecaps and thunder", Thunder | Whitecaps},
	} {
		if got := Sky(c.text) & (Thunder | Whitecaps); got != c.want {
			t.Errorf("%q: %b, want %b", c.text, got, c.want)
		}
	}
}

func TestAnchor(t *testing.T) {
	for text, want := range map[string]bool{
		"black": true, "Black mud": true, "it smells": true, "rotten eggs": true, "clean last time, black now": true, "no smell, black mud": true, "no smell at first, smells now": true,
		"grey but stinks": true, "sulphur": true,
		"": false, "clean": false, "not black": false, "no smell": false, "doesn't smell": false, "no black mud or smell": false, "sand": false, "weed, no smell": false,
	} {
		if got := Anchor(text).Has(BlackMud); got != want {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
}

func FuzzSky(f *testing.F) {
	f.Add("no thunder this morning, thunder now")
	f.Add("\xff 50 % cloud 4/0 /% isn’t no no or nor ,;white")
	f.Fuzz(func(t *testing.T, text string) {
		if again := Sky(text); again != Sky(text) || Anchor(text)&^BlackMud != 0 || Sky(text).Has(BlackMud) {
			t.Fatalf("%q: %b, %b", text, Sky(text), Anchor(text))
		}
	})
}
