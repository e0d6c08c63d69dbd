package fish

import (
	"strings"
	"testing"
)

func TestFind(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"rainbow", "rainbow"}, {"Rainbow Trout", "rainbow"}, {"  RAINBOW\ttrout ", "rainbow"}, {"rainbows", "rainbow"},
		{"lake trout", "lake trout"}, {"laketrout", "lake trout"}, {"Lake-Trout", "lake trout"}, {"lakers", "lake trout"},
		{"laker", "lake trout"}, {"brookie", "brook"}, {"brown", "brown"}, {"cutt", "cutthroat"}, {"kokanee salmon", "kokanee"},
		{"smallie", "smallmouth"}, {"smallmouth bass", "smallmouth"}, {"walleyes", "walleye"}, {"Yellow Perch", "perch"},
		{"northern", "pike"}, {"tiger-trout", "tiger trout"}, {"Arctic charr", "arctic char"}, {"Atlantic salmon", "landlocked salmon"},
		{"muskies", "muskellunge"}, {"tullibee", "cisco"}, {"black crappie", "crappie"}, {"Lepomis macrochirus", "bluegill"}, {"esox lucius", "pike"}, {"largemouth", "largemouth"},
	} {
		if f, err := Find(c.in); err != nil || f.Key != c.want {
			t.Errorf("Find(%q) is %q, %v; want %q", c.in, f.Key, err, c.want)
		}
	}
	for _, f := range All() {
		for _, n := range append([]string{f.Key, f.Name, f.Scientific}, f.Aliases...) {
			if got, err := Find(strings.ToUpper(n)); err != nil || got.Key != f.Key {
				t.Errorf("Find(%q) is %q, %v; want %q", n, got.Key, err, f.Key)
			}
		}
	}
}

func TestFindUnknown(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"rainbo", `no fish "rainbo" here, did you mean rainbow?`},
		{"raimbow", "did you mean rainbow?"},
		{"wlaleye", "did you mean walleye?"},
		{"kokane", "did you mean kokanee?"},
		{"smalmouth", "did you mean smallmouth?"},
		{"brwon", "did you mean brown?"},
		{"pyke", "did you mean pike?"},
		{"trout", "did you mean rainbow, brown, cutthroat, tiger trout, brook, lake trout or bull trout?"},
		{"trouts", "did you mean rainbow, brown, cutthroat, tiger trout, brook, lake trout or bull trout?"},
		{"bw", "did you mean rainbow?"}, // one letter short of "bow"
		{"pokk", `no fish "pokk" here`}, // half of "pike" wrong
		{"bass", "did you mean smallmouth or largemouth?"},
		{"whitefish", "did you mean lake whitefish or mountain whitefish?"},
		{"salmon", "did you mean kokanee or landlocked salmon?"},
		{"carp", `no fish "carp" here`},
		{"xyzzy", `no fish "xyzzy" here`},
		{"s", `no fish "s" here`},
		{"", "no fish named"},
		{" \t-", "no fish named"},
		{strings.Repeat("trout\n", 500), `trou..." here`},
	} {
		f, err := Find(c.in)
		if err == nil || f.Key != "" || !strings.Contains(err.Error(), c.want) || len(err.Error()) > 160 {
			t.Errorf("Find(%.20q) is %q, %v; want an error with %s", c.in, f.Key, err, c.want)
		}
	}
}

// TestFindIn: an angler's own fish wins by any of its names, and is suggested.
func TestFindIn(t *testing.T) {
	rainbow, err := Find("rainbow")
	if err != nil {
		t.Fatal(err)
	}
	rainbow.ComfortHighC.Value = 17
	own := []Fish{rainbow, {Key: "pond special", Name: "Pond special", Aliases: []string{"lake trout", "splashers"}, Kind: Coolwater}}
	for _, c := range []struct{ in, want string }{
		{"rainbows", "rainbow"}, {"bow", "rainbow"}, {"Pond-Specials", "pond special"}, {"Lake Trout", "pond special"},
		{"laker", "lake trout"}, {"Salvelinus namaycush", "lake trout"}, {"splashers", "pond special"},
	} {
		if f, err := FindIn(own, c.in); err != nil || f.Key != c.want || f.Key == "rainbow" && f.ComfortHighC.Value != 17 {
			t.Errorf("%q is %q up to %v, %v; want %q", c.in, f.Key, f.ComfortHighC.Value, err, c.want)
		}
	}
	for _, c := range []struct{ in, want string }{
		{"pond", "did you mean pond special?"}, {"rainbo", "did you mean rainbow?"}, {"", "no fish named"}, {"xyzzy", "no fish"},
	} {
		if f, err := FindIn(own, c.in); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q is %q, %v; want an error with %s", c.in, f.Key, err, c.want)
		}
	}
	// A scientific name that is not known is no name.
	if f, err := FindIn(own, "?"); err == nil {
		t.Errorf("%q", f.Key)
	}
}

func TestShares(t *testing.T) {
	a := Fish{Key: "rainbow", Name: "rainbow trout", Aliases: []string{"bow"}}
	for _, c := range []struct {
		b    Fish
		want string
	}{
		{Fish{Key: "rain bow", Name: "another"}, "rainbow"}, {Fish{Key: "x", Name: "Bow"}, "bow"},
		{Fish{Key: "x", Name: "y", Aliases: []string{"RAINBOW-TROUT"}}, "rainbow trout"}, {Fish{Key: "x", Name: "bows"}, ""}, {Fish{}, ""},
	} {
		if got := a.Shares(c.b); got != c.want {
			t.Errorf("%+v: %q, want %q", c.b, got, c.want)
		}
	}
}

func TestDistance(t *testing.T) {
	// Counted by hand.
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "pike", 4}, {"pike", "", 4}, {"pike", "pike", 0}, {"pike", "pyke", 1}, {"pike", "ipke", 1},
		{"pike", "spike", 1}, {"pike", "pie", 1}, {"perch", "pike", 4}, {"brown", "brwno", 2}, {"kitten", "sitting", 3},
	} {
		if got := Distance([]rune(c.a), []rune(c.b)); got != c.want {
			t.Errorf("%q to %q is %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func FuzzFind(f *testing.F) {
	for _, s := range []string{"", "rainbow", "lake-trout", "ßĐ\x00", "trouts"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if got, err := Find(s); (err == nil) == (got.Key == "") {
			t.Errorf("Find(%q) is %q with %v", s, got.Key, err)
		}
	})
}
