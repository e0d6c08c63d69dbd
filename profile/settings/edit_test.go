package settings

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// What Set changes, and that all else stands as it stood.
func TestSet(t *testing.T) {
	for _, c := range []struct{ name, text, path, value, want string }{
		{"nothing there", "", "units", "ft F", "units = \"ft F\"\n"},
		{"only comments", "# mine\n", "units", "ft F", "units = \"ft F\"\n\n# mine\n"},
		{"one that is there", "# mine\nrod =  '9 ft' # the long one\nflies = 2\n", "rod", "10 ft", "# mine\nrod =  \"10 ft\" # the long one\nflies = 2\n"},
		{"a number", "flies = 2\n", "flies", "3", "flies = 3\n"},
		{"behind the last above the tables", "rod = \"9 ft\" # long\n\n[[water]]\nname = \"a\"\n", "for", "perch", "rod = \"9 ft\" # long\nfor = \"perch\"\n\n[[water]]\nname = \"a\"\n"},
		{"above the first table", "[[water]]\nname = \"a\"\n", "for", "perch", "for = \"perch\"\n\n[[water]]\nname = \"a\"\n"},
		{"no line end", "rod = \"9 ft\"", "for", "perch", "rod = \"9 ft\"\nfor = \"perch\"\n"},
		{"Windows line ends", "rod = \"9 ft\"\r\n\r\n[probe]\r\nbaud = 9600\r\n", "for", "perch", "rod = \"9 ft\"\r\nfor = \"perch\"\r\n\r\n[probe]\r\nbaud = 9600\r\n"},
		{"a byte order mark", "\uFEFFrod = \"9 ft\"\n", "rod", "10 ft", "rod = \"10 ft\"\n"},
		{"taken out", "rod = \"9 ft\"\nfor = \"perch\"\n", "rod", "", "for = \"perch\"\n"},
		{"taken out beside a comment", "rod = \"9 ft\" # long\nfor = \"perch\"\n", "rod", "", " # long\nfor = \"perch\"\n"},
		{"taken out where it is not", "for = \"perch\"\n", "rod", "", "for = \"perch\"\n"},
		{"the same name in a table", "[[stock]]\nkind = \"butt\"\nlength = \"9 ft\"\n", "length", "3 ft", "length = \"3 ft\"\n\n[[stock]]\nkind = \"butt\"\nlength = \"9 ft\"\n"},
		{"in capitals and in quotes", "\"ROD\" = \"9 ft\"\n", "rod", "10 ft", "\"ROD\" = \"10 ft\"\n"},
		{"over several lines", "for = \"\"\"per\\\n  ch\"\"\"\nrod = \"9 ft\"\n", "for", "pike", "for = \"pike\"\nrod = \"9 ft\"\n"},
		{"hostile", "", "for", "a\"\\\n[[fly]] # \x7f\x01é", "for = \"a\\\"\\\\\\u000A[[fly]] # \\u007F\\u0001é\"\n"},
		{"no key in a comment or a text", "# rod = \"1\"\nnote = '''\nrod = \"1\"\n'''\n", "rod", "9 ft", "# rod = \"1\"\nnote = '''\nrod = \"1\"\n'''\nrod = \"9 ft\"\n"},
		{"a key with a dot", "probe.baud = 9600\n", "rod", "9 ft", "probe.baud = 9600\nrod = \"9 ft\"\n"},

		{"of the second table", "[[water]]\nname = \"a\"\nmax_flies = 1\n[[water]]\nname = \"b\"\nmax_flies = 2 # law\n", "water.1.max_flies", "3", "[[water]]\nname = \"a\"\nmax_flies = 1\n[[water]]\nname = \"b\"\nmax_flies = 3 # law\n"},
		{"one more of the first table", "[[water]]\nname = \"a\"\n\n# b\n[[water]]\nname = \"b\"\n", "water.0.indicator", "false", "[[water]]\nname = \"a\"\nindicator = false\n\n# b\n[[water]]\nname = \"b\"\n"},
		{"of a table with parts", "[[fish]]\nname = \"a\"\n[fish.comfort]\nlow = \"1 C\"\n", "fish.0.teeth", "true", "[[fish]]\nname = \"a\"\nteeth = true\n[fish.comfort]\nlow = \"1 C\"\n"},
		{"of an empty table", "[[water]]", "water.0.name", "a", "[[water]]\nname = \"a\"\n"},
		{"within braces", "water = [{name = \"a\"}, {name = \"b\"}]\n", "water.1.name", "c", "water = [{name = \"a\"}, {name = \"c\"}]\n"},
	} {
		got, err := Set(c.text, c.path, c.value)
		if err != nil || got != c.want {
			t.Errorf("%s:\n%q, %v, want\n%q", c.name, got, err, c.want)
		}
	}
}

func TestAppend(t *testing.T) {
	touch := []Value{{"rig", "hung"}, {"depth", "12 ft"}, {"after", "52 s"}, {"note", ""}}
	const table = "[[touched]]\nrig = \"hung\"\ndepth = \"12 ft\"\nafter = \"52 s\"\n"
	for _, c := range []struct{ text, want string }{
		{"", table},
		{"rod = \"9 ft\"\n", "rod = \"9 ft\"\n\n" + table},
		{"rod = \"9 ft\"", "rod = \"9 ft\"\n\n" + table},
		{"[probe]\r\nbaud = 9600\r\n", "[probe]\r\nbaud = 9600\r\n\r\n" + strings.ReplaceAll(table, "\n", "\r\n")},
		{table + "# more\n", table + "# more\n\n" + table},
	} {
		got, err := Append(c.text, "touched", touch...)
		if err != nil || got != c.want {
			t.Errorf("%q:\n%q, %v, want\n%q", c.text, got, err, c.want)
		}
		if set, err := Parse("s", []byte(got)); err != nil || len(set.BottomContacts) != strings.Count(c.want, "[[") && !strings.Contains(c.text, "probe") {
			t.Errorf("%q: %+v, %v", got, set.BottomContacts, err)
		}
	}
}

func TestRemove(t *testing.T) {
	const text = "rod = \"9 ft\"\n\n[[fly]] # x\nname = \"a\"\n# why\nweight = \"0.1 g\"\n\n# the next\n[[fly]]\nweight = \"0.2 g\"\n\n[[fish]]\nname = \"p\"\n[fish.comfort]\nlow = \"1 C\"\n"
	for _, c := range []struct {
		table string
		n     int
		want  string
	}{
		{"fly", 0, "rod = \"9 ft\"\n\n# why\n\n# the next\n[[fly]]\nweight = \"0.2 g\"\n\n[[fish]]\nname = \"p\"\n[fish.comfort]\nlow = \"1 C\"\n"},
		{"fly", 1, "rod = \"9 ft\"\n\n[[fly]] # x\nname = \"a\"\n# why\nweight = \"0.1 g\"\n\n# the next\n\n[[fish]]\nname = \"p\"\n[fish.comfort]\nlow = \"1 C\"\n"},
		{"fish", 0, "rod = \"9 ft\"\n\n[[fly]] # x\nname = \"a\"\n# why\nweight = \"0.1 g\"\n\n# the next\n[[fly]]\nweight = \"0.2 g\"\n\n"},
	} {
		got, err := Remove(text, c.table, c.n)
		if err != nil || got != c.want {
			t.Errorf("%s %d:\n%q, %v, want\n%q", c.table, c.n, got, err, c.want)
		}
	}
	if got, err := Remove("[[fly]]\nweight = \"1 g\"\n\n[[fly]]\nweight = \"2 g\"\n", "fly", 0); got != "[[fly]]\nweight = \"2 g\"\n" || err != nil {
		t.Errorf("the first of all: %q, %v", got, err)
	}
}

// What cannot be changed is refused in one line, and nothing is given.
func TestEditRefused(t *testing.T) {
	for name, edit := range map[string]func() (string, error){
		"no TOML":                func() (string, error) { return Set("rod = \n", "rod", "9 ft") },
		"append to no TOML":      func() (string, error) { return Append("rod = \n", "fly", Value{"weight", "1 g"}) },
		"remove from no TOML":    func() (string, error) { return Remove("rod = \n", "fly", 0) },
		"no number":              func() (string, error) { return Set("", "flies", "2\nrod = 1") },
		"append no number":       func() (string, error) { return Append("", "fly", Value{"density", "1 # x"}) },
		"append beside braces":   func() (string, error) { return Append("fly = [{weight = \"1 g\"}]\n", "fly", Value{"weight", "2 g"}) },
		"take out of braces":     func() (string, error) { return Set("water = [{name = \"a\", note = \"n\"}]\n", "water.0.note", "") },
		"add into braces":        func() (string, error) { return Set("water = [{name = \"a\"}]\n", "water.0.note", "n") },
		"a table of braces":      func() (string, error) { return Remove("water = [{name = \"a\"}]\n", "water", 0) },
		"a table that is not":    func() (string, error) { return Remove("[[fly]]\nweight = \"1 g\"\n", "fly", 1) },
		"a key of no such table": func() (string, error) { return Set("[[fly]]\nweight = \"1 g\"\n", "fly.1.name", "a") },
	} {
		if got, err := edit(); err == nil || got != "" || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %q, %v", name, got, err)
		}
	}
}

// Whatever a file holds, after Set it says what was asked, and all else as before.
func TestSetChangesOneKey(t *testing.T) {
	keys := []struct {
		path   string
		values []string
	}{
		{"units", []string{"ft F", "m C", ""}}, {"for", []string{"perch", "zander", `a "b" \ c`, ""}}, {"fly_weight", []string{"0.25 g", "1/32 oz", ""}},
		{"longest_leader", []string{"20 ft", "6 m", ""}}, {"flies", []string{"1", "3", ""}}, {"thermometer", []string{"reads 32.5 F in ice water", "reads 0.4 C in ice water", ""}},
		{"marks_at", []string{"gunwale 1.5 ft", "water", ""}}, {"rod", []string{"2.7 m", ""}}, {"water.0.max_leader", []string{"18 ft", ""}}, {"water.0.indicator", []string{"false", "true", ""}}, {"water.0.note", []string{"n # \"", ""}},
	}
	tables := []string{"[[water]]\nname = \"Alder Kettle\"\nmax_flies = 2 # law\n", "[[fly]]\nname = \"f\" # \"\nweight = '0.2 g'\n", "[probe]\nbaud = 9600\n", "# for = \"x\"\n", "[[fish]]\nname = \"zander\"\nlike = \"walleye\"\n", "[[water]]\nname = \"Sedge Mere\"\ndepths = [\n \"0 ft 24 acres\", # top\n \"38 ft 0\",\n]\n", "\n", "[[stock]]\nkind = \"butt\"\n"}
	rapid.Check(t, func(t *rapid.T) {
		text := ""
		for _, k := range keys[:8] {
			if v := rapid.SampledFrom(k.values).Draw(t, "before"); v != "" && rapid.Bool().Draw(t, "there") {
				quoted, _ := literal(k.path, v)
				text += rapid.SampledFrom([]string{"", "# " + k.path + "\n", "\n"}).Draw(t, "above") + k.path + " = " + quoted + rapid.SampledFrom([]string{"", " # mine", "  "}).Draw(t, "beside") + "\n"
			}
		}
		if strings.Contains(text, "perch") { // twice [probe] is no TOML
			text += tables[2]
		}
		text += tables[0] + strings.Join(rapid.SliceOfN(rapid.SampledFrom(append(tables[:2:2], tables[3:]...)), 0, 5).Draw(t, "tables"), "")
		text = strings.ReplaceAll(text, "\n", rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "end"))
		if rapid.Bool().Draw(t, "cut") {
			text = strings.TrimRight(text, "\r\n")
		}
		k := rapid.SampledFrom(keys).Draw(t, "key")
		value := rapid.SampledFrom(k.values).Draw(t, "value")
		checkSet(t, text, k.path, value)
	})
}

// On a file that says all it can, a change of one value changes that alone of what is parsed.
func TestSetInTheFullFile(t *testing.T) {
	was, err := Parse("s", []byte(full))
	if err != nil {
		t.Fatal(err)
	}
	for path, c := range map[string]struct {
		value string
		set   func(s *Settings)
	}{
		"flies":             {"3", func(s *Settings) { s.Flies = 3 }},
		"longest_leader":    {"6 m", func(s *Settings) { s.LongestM = 6 }},
		"project":           {"", func(s *Settings) { s.Project = "" }},
		"units":             {"m C", func(s *Settings) { s.Headers[0].Value = "m C" }},
		"for":               {"perch", func(s *Settings) { s.Headers[6].Value = "perch" }},
		"water.0.note":      {"open", func(s *Settings) { s.Waters[0].Note = "open" }},
		"water.1.indicator": {"false", func(s *Settings) { s.Waters[1].NoIndicator = true }},
		"stock.0.name":      {"", func(s *Settings) { s.Stock[0].Name = "" }},
	} {
		text, err := Set(full, path, c.value)
		if err != nil {
			t.Fatal(path, err)
		}
		got, err := Parse("s", []byte(text))
		if err != nil {
			t.Fatal(path, err)
		}
		want, _ := Parse("s", []byte(full))
		if c.set(&want); reflect.DeepEqual(want, was) || !reflect.DeepEqual(got, want) {
			t.Errorf("%s:\ngot  %+v\nwant %+v", path, got, want)
		}
	}
}

// checkSet compares a file before and after, key by key.
func checkSet(t *rapid.T, text, path, value string) {
	before := values(text)
	after, err := Set(text, path, value)
	if err != nil {
		t.Fatalf("%q: %s = %q: %v", text, path, value, err)
	}
	want := map[string]string{}
	for k, v := range before {
		want[k] = v
	}
	if want[path], _ = literal(keyOf(path), value); value == "" {
		delete(want, path)
	}
	if got := values(after); !reflect.DeepEqual(got, want) {
		t.Fatalf("%s = %q:\n%q\n%q\ngot  %v\nwant %v", path, value, text, after, got, want)
	}
	if strings.Count(after, "#") < strings.Count(text, "#")-strings.Count(before[path], "#") {
		t.Fatalf("%s = %q: a comment is lost:\n%q\n%q", path, value, text, after)
	}
	if _, err := Parse("s", []byte(after)); err != nil {
		if _, was := Parse("s", []byte(text)); was == nil {
			t.Fatalf("%s = %q: %v\n%s", path, value, err, after)
		}
	}
}

// values are the keys of a file, each with what is written for it.
func values(text string) map[string]string {
	out := map[string]string{}
	c := walk([]byte(text))
	for _, f := range c.found {
		if !f.table && !f.element {
			for n := 0; ; n++ {
				name := f.path
				if n > 0 {
					name = fmt.Sprintf("%s (%d)", f.path, n)
				}
				if _, twice := out[name]; !twice {
					out[name] = strings.ReplaceAll(string(c.data[f.value:f.end]), "\r\n", "\n")
					break
				}
			}
		}
	}
	return out
}
