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
		{"northern", "pike"}, {"esox lucius", "pike"}, {"largemouth", "largemouth"},
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
		{"rainbo", `no fish "rainbo" here, did you mean rainbow? 'coldseam fish' lists them`},
		{"raimbow", "did you mean rainbow?"},
		{"wlaleye", "did you mean walleye?"},
		{"kokane", "did you mean kokanee?"},
		{"smalmouth", "did you mean smallmouth?"},
		{"brwon", "did you mean brown?"},
		{"pyke", "did you mean pike?"},
		{"trout", "did you mean rainbow, brown, brook, cutthroat or lake trout?"},
		{"trouts", "did you mean rainbow, brown, brook, cutthroat or lake trout?"},
		{"bw", "did you mean rainbow?"},                             // one letter short of "bow"
		{"pokk", `no fish "pokk" here: 'coldseam fish' lists them`}, // half of "pike" wrong
		{"bass", "did you mean smallmouth or largemouth?"},
		{"carp", `no fish "carp" here: 'coldseam fish' lists them`},
		{"xyzzy", `no fish "xyzzy" here: 'coldseam fish' lists them`},
		{"s", `no fish "s" here: 'coldseam fish' lists them`},
		{"", "no fish named: 'coldseam fish' lists them"},
		{" \t-", "no fish named: 'coldseam fish' lists them"},
		{strings.Repeat("trout\n", 500), `trou..." here: 'coldseam fish'`},
	} {
		f, err := Find(c.in)
		if err == nil || f.Key != "" || !strings.Contains(err.Error(), c.want) || len(err.Error()) > 160 {
			t.Errorf("Find(%.20q) is %q, %v; want an error with %s", c.in, f.Key, err, c.want)
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
		if got := distance([]rune(c.a), []rune(c.b)); got != c.want {
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
