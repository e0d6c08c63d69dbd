package fish

import (
	"reflect"
	"strings"
	"testing"
)

func TestTableFigures(t *testing.T) {
	for _, f := range All() {
		for _, g := range f.Figures() {
			top := 40.0
			if strings.HasSuffix(g.Name, "_mgl") {
				top = 12
			}
			switch {
			case !g.Known && g.Figure != Figure{}:
				t.Errorf("%s, %s: not known, but %+v", f.Key, g.Name, g.Figure)
			case g.Known && (strings.TrimSpace(g.Source) == "" || len(g.Source) >= 70):
				t.Errorf("%s, %s: source %q has %d characters, want 1 to 69", f.Key, g.Name, g.Source, len(g.Source))
			case g.Known && !(g.Value > 0 && g.Value <= top):
				t.Errorf("%s, %s: %v is outside 0 to %v", f.Key, g.Name, g.Value, top)
			}
			if g.Name == Lethal && strings.Contains(g.Source, "common practice") {
				t.Errorf("%s: what kills is not a matter of practice", f.Key)
			}
		}
		if !f.ComfortLowC.Known || !f.ComfortHighC.Known || !f.OxygenMgL.Known {
			t.Errorf("%s: comfort range and oxygen must be known", f.Key)
		}
		// The order, written out apart from Misplaced.
		for _, c := range []struct {
			below, above Figure
			differ       bool
		}{
			{f.LowerUseC, f.ComfortLowC, false}, {f.ComfortLowC, f.ComfortHighC, true}, {f.ComfortLowC, f.OptimumC, false}, {f.OptimumC, f.ComfortHighC, false},
			{f.ComfortHighC, f.UpperUseC, false}, {f.ComfortHighC, f.LethalC, true}, {f.UpperUseC, f.LethalC, false}, {f.OxygenLeastMgL, f.OxygenMgL, false},
		} {
			if c.below.Known && c.above.Known && (c.below.Value > c.above.Value || c.differ && c.below.Value == c.above.Value) {
				t.Errorf("%s: %+v is not under %+v", f.Key, c.below, c.above)
			}
		}
		if a, b, ok := f.Misplaced(); ok {
			t.Errorf("%s: %+v and %+v are misplaced", f.Key, a, b)
		}
	}
}

// TestWeakSaysSo: a fish whose comfort range and optimum nobody published says in its
// note why they are weak.
func TestWeakSaysSo(t *testing.T) {
	unseen := func(g Figure) bool {
		return !g.Known || g.Source == "common practice" || strings.HasPrefix(g.Source, "from memory")
	}
	for _, f := range All() {
		weak := unseen(f.ComfortLowC) && unseen(f.ComfortHighC) && unseen(f.OptimumC)
		says := strings.HasPrefix(f.Note, "Weak: ") || strings.HasPrefix(f.Note, "No figure for this fish was seen in print")
		if weak != says {
			t.Errorf("%s: weak is %v, the note says %q", f.Key, weak, f.Note)
		}
	}
}

// TestMisplaced puts each two neighbours in the wrong order.
func TestMisplaced(t *testing.T) {
	at := func(v float64) Figure { return Figure{Value: v, Known: true, Source: "s"} }
	whole := func() Fish {
		return Fish{LowerUseC: at(5), ComfortLowC: at(10), OptimumC: at(13), ComfortHighC: at(16), UpperUseC: at(20), LethalC: at(24), OxygenLeastMgL: at(3), OxygenMgL: at(5)}
	}
	for _, c := range []struct {
		change        func(*Fish)
		first, second string
	}{
		{func(*Fish) {}, "", ""},
		{func(f *Fish) { *f = Fish{} }, "", ""},
		{func(f *Fish) { f.LowerUseC = at(10); f.OptimumC = at(16); f.UpperUseC = at(16); f.LethalC = at(16) }, "", ""},
		{func(f *Fish) { f.LowerUseC = at(11) }, UseLow, ComfortLow},
		{func(f *Fish) { f.ComfortLowC = at(17) }, ComfortLow, ComfortHigh},
		{func(f *Fish) { f.ComfortLowC = at(16) }, ComfortLow, ComfortHigh},
		{func(f *Fish) { f.OptimumC = at(9) }, ComfortLow, Optimum},
		{func(f *Fish) { f.OptimumC = at(17) }, Optimum, ComfortHigh},
		{func(f *Fish) { f.UpperUseC = at(15) }, ComfortHigh, UseHigh},
		{func(f *Fish) { f.LethalC = at(19) }, UseHigh, Lethal},
		{func(f *Fish) { f.UpperUseC = Figure{}; f.LethalC = at(15) }, ComfortHigh, Lethal},
		{func(f *Fish) { f.OxygenLeastMgL = at(6) }, OxygenLeast, Oxygen},
		{func(f *Fish) { f.OxygenLeastMgL = at(5) }, "", ""},
	} {
		f := whole()
		c.change(&f)
		a, b, ok := f.Misplaced()
		if a.Name != c.first || b.Name != c.second || ok != (c.first != "") {
			t.Errorf("%+v: %q, %q, %v; want %q, %q", f, a.Name, b.Name, ok, c.first, c.second)
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
	for _, want := range []string{
		"rainbow", "brown", "brook", "cutthroat", "lake trout", "tiger trout", "bull trout", "splake", "arctic char", "grayling", "kokanee",
		"landlocked salmon", "lake whitefish", "mountain whitefish", "cisco", "walleye", "smallmouth", "largemouth", "perch", "pike", "muskellunge", "crappie", "bluegill",
	} {
		if !keys[want] {
			t.Errorf("%q is missing", want)
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
		{"rainbow", true, true}, {"kokanee", true, true}, {"lake trout", true, true}, {"pike", true, false}, {"muskellunge", true, false},
		{"grayling", true, true}, {"cisco", true, true}, {"lake whitefish", true, true}, {"splake", true, true},
		{"perch", false, false}, {"walleye", false, false}, {"smallmouth", false, false}, {"largemouth", false, false},
		{"crappie", false, false}, {"bluegill", false, false},
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

// TestAllWithOwn: an own fish takes the place of the table's, or comes last of its kind.
func TestAllWithOwn(t *testing.T) {
	plain := All()
	own := []Fish{{Key: "brown", Kind: Coldwater}, {Key: "new cool", Kind: Coolwater}, {Key: "new cold", Kind: Coldwater}}
	got := All(own...)
	if len(got) != len(plain)+2 {
		t.Fatalf("%d fishes, want %d and 2", len(got), len(plain))
	}
	for i, f := range got {
		last := i+1 == len(got) || got[i+1].Kind != f.Kind
		switch f.Key {
		case "brown":
			if i != 1 || f.Name != "" {
				t.Errorf("brown is %+v at %d", f, i)
			}
		case "new cool", "new cold":
			if !last {
				t.Errorf("%s is not the last of its kind", f.Key)
			}
		}
	}
	if !reflect.DeepEqual(All(), plain) {
		t.Error("own fishes stay in the table")
	}
}

func TestKindString(t *testing.T) {
	for k, want := range map[Kind]string{Coldwater: "coldwater", Coolwater: "coolwater", Warmwater: "warmwater", 7: "kind 7", -1: "kind -1"} {
		if got := k.String(); got != want {
			t.Errorf("Kind(%d) is %q, want %q", int(k), got, want)
		}
	}
}

// Every fish has a usual fly: of trout 0.1 to 0.15 g, heavier for perch, bass, walleye and
// pike; pike and muskellunge alone have teeth that cut tippet (common practice).
func TestUsualFly(t *testing.T) {
	for _, f := range All() {
		if !f.FlyG.Known || f.FlyG.Source == "" {
			t.Errorf("%s: no usual fly", f.Key)
		}
		if f.Salmonid && !(f.FlyG.Value >= 0.1 && f.FlyG.Value <= 0.15) {
			t.Errorf("%s: a fly of %v g", f.Key, f.FlyG.Value)
		}
		switch f.Key {
		case "perch", "smallmouth", "largemouth", "walleye", "pike", "muskellunge":
			if f.FlyG.Value < 0.25 {
				t.Errorf("%s: a fly of %v g", f.Key, f.FlyG.Value)
			}
		}
		if f.Teeth != (f.Key == "pike" || f.Key == "muskellunge") {
			t.Errorf("%s: teeth %v", f.Key, f.Teeth)
		}
	}
}
