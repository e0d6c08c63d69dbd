package fish

import (
	"math"
	"reflect"
	"strings"
	"testing"
)

// figures are the figures of f by name, in a fixed order.
func figures(f Fish) []struct {
	name string
	Figure
} {
	return []struct {
		name string
		Figure
	}{
		{"comfort low", f.ComfortLowC}, {"comfort high", f.ComfortHighC}, {"upper use", f.UpperUseC},
		{"optimum", f.OptimumC}, {"oxygen", f.OxygenMgL},
	}
}

// figure finds one figure of the table, or ends the test.
func figure(t *testing.T, key, name string) Figure {
	t.Helper()
	f, err := Find(key)
	if err != nil {
		t.Fatal(err)
	}
	for _, g := range figures(f) {
		if g.name == name {
			return g.Figure
		}
	}
	t.Fatalf("no figure is called %q", name)
	return Figure{}
}

func TestTableFigures(t *testing.T) {
	for _, f := range All() {
		for _, g := range figures(f) {
			top := 40.0
			if g.name == "oxygen" {
				top = 12
			}
			switch {
			case !g.Known && g.Figure != Figure{}:
				t.Errorf("%s, %s: not known, but %+v", f.Key, g.name, g.Figure)
			case g.Known && (strings.TrimSpace(g.Source) == "" || len(g.Source) >= 70):
				t.Errorf("%s, %s: source %q has %d characters, want 1 to 69", f.Key, g.name, g.Source, len(g.Source))
			case g.Known && !(g.Value > 0 && g.Value <= top):
				t.Errorf("%s, %s: %v is outside 0 to %v", f.Key, g.name, g.Value, top)
			}
		}
		low, high, upper, best := f.ComfortLowC, f.ComfortHighC, f.UpperUseC, f.OptimumC
		if !low.Known || !high.Known || !f.OxygenMgL.Known {
			t.Errorf("%s: comfort range and oxygen must be known", f.Key)
		}
		if low.Value >= high.Value {
			t.Errorf("%s: comfort range %v to %v", f.Key, low.Value, high.Value)
		}
		if upper.Known && high.Value > upper.Value {
			t.Errorf("%s: comfort high %v is over upper use %v", f.Key, high.Value, upper.Value)
		}
		if best.Known && (best.Value < low.Value || best.Value > high.Value) {
			t.Errorf("%s: optimum %v is outside comfort %v to %v", f.Key, best.Value, low.Value, high.Value)
		}
	}
}

func TestTableNames(t *testing.T) {
	owner, keys, kind := map[string]string{}, map[string]bool{}, Coldwater
	for _, f := range All() {
		if f.Key == "" || f.Name == "" || f.Scientific == "" || f.Note == "" || f.Key != strings.ToLower(f.Key) {
			t.Errorf("%q: key, name, scientific name and note are needed, the key in lower case: %+v", f.Key, f)
		}
		if keys[f.Key] {
			t.Errorf("key %q stands twice", f.Key)
		}
		keys[f.Key] = true
		for _, n := range names(f) {
			if was, ok := owner[n]; ok && was != f.Key {
				t.Errorf("the name %q is both %s and %s", n, was, f.Key)
			}
			owner[n] = f.Key
		}
		given := map[string]bool{fold(f.Key): true, fold(f.Name): true}
		for _, a := range f.Aliases {
			if n := fold(a); n == "" || given[n] {
				t.Errorf("%s: alias %q is empty or given already", f.Key, a)
			} else {
				given[n] = true
			}
		}
		if f.Kind < kind {
			t.Errorf("%s: %v comes after %v", f.Key, f.Kind, kind)
		}
		kind = f.Kind
		if f.Salmonid && (f.Kind != Coldwater || !f.CanVent) {
			t.Errorf("%s: the salmon family is coldwater and has an open swim bladder", f.Key)
		}
	}
	for _, want := range []string{"rainbow", "brown", "brook", "cutthroat", "lake trout", "kokanee", "smallmouth", "walleye", "perch", "pike"} {
		if !keys[want] {
			t.Errorf("%q is missing", want)
		}
	}
}

// TestPublished holds the table to figures of the publications it names.
func TestPublished(t *testing.T) {
	for _, c := range []struct {
		key, figure string
		want, tol   float64
		source      string // must be part of the figure's own source
	}{
		{"rainbow", "comfort low", 13, 0, "North Twin Lake"},
		{"rainbow", "comfort high", 19, 0, "North Twin Lake"},
		{"rainbow", "oxygen", 5, 0, "North Twin Lake"},
		{"rainbow", "upper use", 21, 0, "Review of rainbow trout in lakes"},
		{"rainbow", "optimum", 13.1, 0, "Bear, McMahon & Zale 2007"},
		{"brown", "comfort low", (54 - 32) / 1.8, 0.05, "common practice"}, // charts: 54 F
		{"brown", "comfort high", (65 - 32) / 1.8, 0.05, "common practice"},
		{"brown", "upper use", 21, 0, "Wehrly et al. 2007"},
		{"brown", "optimum", 16, 0, "Larsson 2002"},
		{"brook", "comfort low", 14, 0, "AFS meeting 2011"},
		{"brook", "comfort high", 18, 0, "AFS meeting 2011"},
		{"brook", "upper use", 21, 0, "AFS meeting 2011"},
		{"brook", "optimum", 16, 0, "Water 2017, 9:346"},
		{"cutthroat", "comfort low", 13, 0, "Bear, McMahon & Zale 2007"},
		{"cutthroat", "comfort high", 15, 0, "Bear, McMahon & Zale 2007"},
		{"cutthroat", "upper use", 19.6, 0, "Bear, McMahon & Zale 2007"},
		{"cutthroat", "optimum", 13.6, 0, "Bear, McMahon & Zale 2007"},
		{"lake trout", "comfort low", 6, 0, "thermoregulation study"},
		{"lake trout", "comfort high", 12, 0, "Plumb & Blanchfield 2009"},
		{"lake trout", "upper use", 15, 0, "Plumb & Blanchfield 2009"},
		{"lake trout", "oxygen", 6, 0, "Plumb & Blanchfield 2009"},
		{"lake trout", "optimum", 11.7, 0, "McCauley & Tait 1970"},
		{"kokanee", "comfort low", 10, 0, "Spohn 1996"},
		{"kokanee", "comfort high", 12, 0, "Birtwell 1994"},
		{"kokanee", "optimum", 11.1, 0, "Fortune 1964"},
		{"smallmouth", "comfort low", 19, 0, "Hile & Juday 1941"},
		{"smallmouth", "comfort high", 27, 0, "Wyoming review"},
		{"smallmouth", "upper use", 31, 0, "Barans & Tubb 1973"},
		{"smallmouth", "optimum", 26, 0, "Horning & Pearson 1973"},
		{"walleye", "comfort low", 18, 0, "Brooks et al. 2025"},
		{"walleye", "comfort high", 23, 0, "Brooks et al. 2025"},
		{"walleye", "oxygen", 5, 0, "Brooks et al. 2025"},
		{"perch", "comfort low", (55 - 32) / 1.8, 0.05, "common practice"},
		{"perch", "comfort high", (72 - 32) / 1.8, 0.05, "common practice"},
		{"perch", "upper use", 29, 0, "Barans & Tubb 1973"},
		{"perch", "optimum", 21, 0, "Ferguson 1958"},
		{"pike", "comfort low", (50 - 32) / 1.8, 0.05, "common practice"},
		{"pike", "comfort high", (71 - 32) / 1.8, 0.05, "common practice"},
		{"largemouth", "comfort low", 21, 0, "Wyoming review"},
		{"largemouth", "comfort high", 27, 0, "Wyoming review"},
		{"largemouth", "optimum", 27, 0, "Dendy 1948"},
	} {
		g := figure(t, c.key, c.figure)
		if !g.Known || math.Abs(g.Value-c.want) > c.tol || !strings.Contains(g.Source, c.source) {
			t.Errorf("%s, %s: %v (%q), want %v by %s", c.key, c.figure, g.Value, g.Source, c.want, c.source)
		}
	}
}

// TestFromMemory keeps the figures nobody has seen in print from drifting, and from
// passing for more than they are: each must say so in its source. It confirms none.
func TestFromMemory(t *testing.T) {
	for _, c := range []struct {
		key, figure string
		want        float64
		source      string
	}{
		{"brown", "oxygen", 5, "EPA 1986, coldwater"},
		{"brook", "oxygen", 5, "EPA 1986, coldwater"},
		{"cutthroat", "oxygen", 5, "EPA 1986, coldwater"},
		{"kokanee", "oxygen", 5, "EPA 1986, coldwater"},
		{"kokanee", "upper use", 18, "EPA 1976"},
		{"smallmouth", "oxygen", 5, "EPA 1986, non-salmonid"},
		{"walleye", "upper use", 25, "EPA 1976"},
		{"walleye", "optimum", 20, "Christie & Regier 1988"}, // niche 18 to 22
		{"perch", "oxygen", 5, "EPA 1986, non-salmonid"},
		{"pike", "oxygen", 5, "EPA 1986, non-salmonid"},
		{"pike", "upper use", 28, "EPA 1976"},
		{"pike", "optimum", 18, "Christie & Regier 1988"}, // niche 16 to 20
		{"largemouth", "oxygen", 5, "EPA 1986, non-salmonid"},
		{"largemouth", "upper use", 32, "EPA 1976"},
	} {
		g := figure(t, c.key, c.figure)
		if g.Value != c.want || !strings.HasPrefix(g.Source, "from memory ("+c.source) {
			t.Errorf("%s, %s: %v (%q), want %v from memory of %s", c.key, c.figure, g.Value, g.Source, c.want, c.source)
		}
	}
}

// TestAgainstOthers holds the chosen figures to what publications they were not
// taken from found for the same fish.
func TestAgainstOthers(t *testing.T) {
	for _, c := range []struct {
		key, figure string
		low, high   float64
		source      string
	}{
		{"rainbow", "optimum", 13.0, 19.0, "optimum, Nevada draft 2015 citing Brungs & Jones 1977"},
		{"rainbow", "optimum", 12.5, 13.5, "final preferendum 13, Garside & Tait 1958"},
		{"rainbow", "upper use", 18.2, 22.0, "upper optimum, Nevada draft 2015 citing Brungs & Jones 1977"},
		{"rainbow", "upper use", 0, 24.0, "below the lethal limit 24.3 (24.0 to 24.7), Bear et al. 2007"},
		{"rainbow", "comfort high", 8, 19, "angler catch unsatisfactory from 19 to 20 up, McMichael & Kaya 1991"},
		{"brown", "comfort high", 8, 19, "angler catch unsatisfactory from 19 to 20 up, McMichael & Kaya 1991"},
		{"brown", "optimum", 15, 19, "growth optimum 15 or over, Norwegian hatchery study at 63 N"},
		{"brook", "comfort high", 17.5, 18.5, "7.2 to 17.7 in small lakes, brook trout data set wdbrv15jw"},
		{"brook", "upper use", 20, 23, "sub-lethal threshold, Morrison et al. 2020"},
		{"brook", "upper use", 0, 22.1, "mean borne for 21 days, Wehrly et al. 2007"},
		{"cutthroat", "upper use", 0, 22, "acute stress of the Lahontan form, Dunham et al. 2003"},
		{"lake trout", "optimum", 10.1, 12.5, "preferendum to growth optimum, Edsall & Cleland 2000"},
		{"lake trout", "comfort low", 0, 6.9, "mean capture temperature 6.9, juveniles of Lake Ontario"},
		{"lake trout", "comfort high", 12, 13, "92 % caught at 12 or less, juveniles of Lake Ontario; 13, thermoregulation study"},
		{"lake trout", "upper use", 12, 17, "activity maximum 15 to 17, study of lethal temperature and activity of lake trout"},
		{"kokanee", "optimum", 10, 12, "sockeye preferred, Spohn 1996 and Birtwell 1994 as quoted"},
		{"smallmouth", "comfort low", 18, 31, "seasonal choice, Barans & Tubb 1973"},
		{"smallmouth", "comfort high", 26, 35, "growth greatest near 26, negative at 35, Horning & Pearson 1973"},
		{"perch", "optimum", 19.7, 21.2, "field means, Ferguson 1958"},
		{"perch", "comfort low", 10, 29, "seasonal choice, Barans & Tubb 1973"},
		{"perch", "comfort high", 21.2, 24.2, "highest field mean to preferendum of young, Ferguson 1958"},
	} {
		if g := figure(t, c.key, c.figure); g.Value < c.low || g.Value > c.high {
			t.Errorf("%s, %s: %v is outside %v to %v (%s)", c.key, c.figure, g.Value, c.low, c.high, c.source)
		}
	}
}

// TestVent: trout, char, salmon and pike keep the duct from swim bladder to throat;
// perch, walleye and bass lose it (common knowledge of fish anatomy).
func TestVent(t *testing.T) {
	for _, c := range []struct {
		key             string
		vents, salmonid bool
	}{
		{"rainbow", true, true}, {"kokanee", true, true}, {"lake trout", true, true}, {"pike", true, false},
		{"perch", false, false}, {"walleye", false, false}, {"smallmouth", false, false}, {"largemouth", false, false},
	} {
		f, err := Find(c.key)
		if err != nil || f.CanVent != c.vents || f.Salmonid != c.salmonid {
			t.Errorf("%s: CanVent %v, Salmonid %v, %v; want %v, %v", c.key, f.CanVent, f.Salmonid, err, c.vents, c.salmonid)
		}
	}
}

func TestAllIsACopy(t *testing.T) {
	want := All()
	got := All()
	for i := range got {
		for j := range got[i].Aliases {
			got[i].Aliases[j] = "spoilt"
		}
		got[i].Key, got[i].ComfortHighC.Value = "spoilt", 99
	}
	if _ = append(got[:1], Fish{}); !reflect.DeepEqual(All(), want) {
		t.Error("a change to what All returned shows in the next call")
	}
}

func TestKindString(t *testing.T) {
	for k, want := range map[Kind]string{Coldwater: "coldwater", Coolwater: "coolwater", Warmwater: "warmwater", 7: "kind 7", -1: "kind -1"} {
		if got := k.String(); got != want {
			t.Errorf("Kind(%d) is %q, want %q", int(k), got, want)
		}
	}
}
