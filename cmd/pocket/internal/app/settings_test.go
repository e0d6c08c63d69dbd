package app

import (
	"errors"
	"os"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"coldseam/profile/settings"
)

// file gives the settings file.
func (p *phone) file() string {
	p.t.Helper()
	data, err := os.ReadFile(p.o.Settings)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		p.t.Fatal(err)
	}
	return string(data)
}

// put writes the settings file as a terminal's user may have it.
func (p *phone) put(text string) {
	p.t.Helper()
	if err := os.WriteFile(p.o.Settings, []byte(text), 0o600); err != nil {
		p.t.Fatal(err)
	}
	p.do("start", "")
}

// value is what a field of the form shows.
func (p *phone) value(key string) string {
	p.t.Helper()
	if m := regexp.MustCompile(`name="` + key + `"[^>]* value="([^"]*)"`).FindStringSubmatch(p.show.Main); m != nil {
		return m[1]
	}
	m := regexp.MustCompile(`(?s)<select[^>]* name="` + key + `"[^>]*>.*?</select>`).FindString(p.show.Main)
	if m := regexp.MustCompile(`value="([^"]*)" selected`).FindStringSubmatch(m); m != nil {
		return m[1]
	}
	return ""
}

const ofTerminal = "# mine\r\nunits = 'm C' # always\r\nfor = \"brook trout\"\r\nthermometer = \"reads 0.4 C in ice water\"\r\nmarks_at = \"gunwale 0.5 m\"\r\nbook = \"/home/someone/drops\"\r\n\r\n[probe]\r\nport = \"/dev/ttyUSB0\"\r\n\r\n[[water]]\r\nname = \"Alder Kettle\" # ours\r\nmax_flies = 2\r\ndepths = [\r\n \"0 m 10 ha\", # top\r\n \"12 m 0\",\r\n]\r\n"

// The form shows what the file says, and changes what was changed alone.
func TestSettingsForm(t *testing.T) {
	p := newPhone(t)
	p.put(ofTerminal)
	p.do("settings", "")
	want := map[string]string{"units": "m C", "for": "brook trout", "thermometer": "0.4 C", "marks_at": "0.5 m", "longest_leader": "", "fly_weight": "", "flies": ""}
	for key, v := range want {
		if got := p.value(key); got != v {
			t.Errorf("%s shows %q, want %q", key, got, v)
		}
	}
	p.has("e.g. 7.5 m", "Rules of a water (1)", "Box of flies", "Leader material")
	form := func(changes ...string) []string {
		var fields []string
		for key, v := range want {
			for i := 0; i < len(changes); i += 2 {
				if changes[i] == key {
					v = changes[i+1]
				}
			}
			fields = append(fields, key, v)
		}
		return fields
	}
	p.do("settings-save", "", form()...)
	if p.file() != ofTerminal {
		t.Errorf("nothing was changed, and the file is %q", p.file())
	}
	p.has("Saved.")
	p.do("settings-save", "", form("longest_leader", " 6 m ", "thermometer", "0.6 C", "marks_at", "", "for", "perch", "units", "ft F")...)
	line := strings.NewReplacer("'m C'", `"ft F"`, `"brook trout"`, `"perch"`, "reads 0.4 C", "reads 0.6 C", "marks_at = \"gunwale 0.5 m\"\r\n", "", "drops\"\r\n", "drops\"\r\nlongest_leader = \"6 m\"\r\n")
	if got, want := p.file(), line.Replace(ofTerminal); got != want {
		t.Errorf("%q\nwant\n%q", got, want)
	}
	if p.set.LongestM != 6 || !p.show.Persist {
		t.Errorf("the new settings are not used: %+v", p.set)
	}
	p.has("e.g. 25 ft")
}

// What is refused is said at its field; what was typed stays, and nothing is saved.
func TestSettingsRefused(t *testing.T) {
	for _, c := range []struct{ key, value, says string }{
		{"longest_leader", "long", `"long"`},
		{"longest_leader", "300 ft", "not a likely value"},
		{"fly_weight", "no such fly", "no such"},
		{"thermometer", "60 F", "ice water"},
		{"marks_at", "2", "gunwale"},
		{"units", "spans", "spans"},
		{"flies", "4", "1 to 3"},
		{"flies", "two flies", "not a number"},
		{"longest_leader", hostile, "alert"},
	} {
		p := newPhone(t)
		p.put("# mine\nfor = \"perch\"\n")
		p.do("settings", "")
		p.do("settings-save", "", "for", "pike", c.key, c.value)
		p.has("Not saved: ", c.says)
		if p.file() != "# mine\nfor = \"perch\"\n" || p.value("for") != "pike" {
			t.Errorf("%s = %q: %q, the form has %q", c.key, c.value, p.file(), p.value("for"))
		}
		if p.show.Say != "Not saved." || strings.Contains(p.show.Main, "settings:") || strings.Contains(p.show.Say, "settings:") {
			t.Errorf("%s = %q: said %q\n%s", c.key, c.value, p.show.Say, p.show.Main)
		}
		if field := "set-" + c.key; c.value != "two flies" && (p.show.Focus != field || !strings.Contains(p.show.Main, `aria-describedby="`+field+`-error"`)) {
			t.Errorf("%s = %q: focus %q\n%s", c.key, c.value, p.show.Focus, p.show.Main)
		}
		p.do("settings-save", "", "for", "pike", c.key, "")
		if p.file() != "# mine\nfor = \"pike\"\n" {
			t.Errorf("%s put right: %q", c.key, p.file())
		}
	}
}

// The file of a terminal can be pasted; a faulty one is told with its line, and kept as text.
func TestSettingsFile(t *testing.T) {
	p := newPhone(t)
	p.do("settings", "")
	p.do("settings-file", "")
	p.do("settings-write", "", "text", ofTerminal)
	p.has("Saved.")
	unix := strings.ReplaceAll(ofTerminal, "\r\n", "\n")
	if p.file() != unix || p.set.RulesFor("alder kettle").MaxFlies != 2 {
		t.Errorf("%q, %+v", p.file(), p.set)
	}
	for text, says := range map[string]string{
		"units = \"m C\"\nrod = \"long\"\n": "Not saved: line 2: rod: ",
		"units = \n":                        "Not saved: line 1: ",
		"# x\nrods = \"9 ft\"\n":            `line 2: there is no setting "rods"`,
		"x = \"" + hostile + "\"\n":         "line 1: ",
		strings.Repeat("# x\n", 3000):       "more than 2000 lines",
	} {
		p.do("settings-write", "", "text", text)
		p.has(says)
		if p.file() != unix {
			t.Fatalf("%q was saved", text)
		}
		if area := regexp.MustCompile(`(?s)<textarea[^>]*>\n(.*?)</textarea>`).FindStringSubmatch(p.show.Main); area == nil || words(area[1]) != words(text) && !strings.Contains(text, "<") {
			t.Errorf("%q is not kept:\n%s", text, p.show.Main)
		}
	}
	p.do("settings-write", "", "text", "")
	if p.file() != "" || !reflect.DeepEqual(p.set, settings.Default()) {
		t.Errorf("%q, %+v", p.file(), p.set)
	}
}

// A file that is changed in another window meanwhile is not written over unasked.
func TestSettingsChangedElsewhere(t *testing.T) {
	p := newPhone(t)
	p.put("for = \"perch\"\n")
	p.do("settings", "")
	p.do("settings-file", "")
	if err := os.WriteFile(p.o.Settings, []byte("for = \"pike\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	p.do("settings-write", "", "text", "for = \"walleye\"\n")
	p.has("changed in another window")
	if p.file() != "for = \"pike\"\n" {
		t.Errorf("%q", p.file())
	}
	p.do("settings-write", "", "text", "for = \"walleye\"\n")
	if p.file() != "for = \"walleye\"\n" {
		t.Errorf("%q", p.file())
	}
}

// A file that cannot be read is said, and can be put right; nothing else is offered.
func TestSettingsBroken(t *testing.T) {
	p := newPhone(t)
	p.put("rod = \"9 ft\"\nfor = \n")
	p.do("settings", "")
	p.has("The settings are not used: line 2")
	p.hasNot("Units")
	p.do("settings-save", "", "for", "perch")
	if p.file() != "rod = \"9 ft\"\nfor = \n" {
		t.Errorf("%q", p.file())
	}
	p.do("settings-file", "")
	p.has("line 2")
	p.do("settings-write", "", "text", "rod = \"9 ft\"\n")
	p.do("back", "")
	p.has("Units")
}

// Flies, leader material and the rules of a water are added, changed and removed.
func TestSettingsLists(t *testing.T) {
	p := newPhone(t)
	p.put(ofTerminal)
	p.do("settings", "")
	p.do("settings-list", "fly")
	p.do("settings-entry", "new")
	p.do("settings-keep", "", "name", "black midge", "weight", "")
	p.has("Not saved", "weight")
	if p.value("name") != "black midge" || strings.Contains(p.file(), "[[fly]]") {
		t.Errorf("%s\n%s", p.file(), p.show.Main)
	}
	p.do("settings-keep", "", "name", "black midge", "weight", "0.2 g")
	p.has("Saved.", "black midge, 0.2 g")
	if !strings.HasSuffix(p.file(), "]\r\n\r\n[[fly]]\r\nname = \"black midge\"\r\nweight = \"0.2 g\"\r\n") || len(p.set.Box) != 1 {
		t.Errorf("%q", p.file())
	}
	p.do("settings-entry", "0")
	p.do("settings-keep", "", "name", "grey midge", "weight", "0.2 g")
	p.has("grey midge, 0.2 g")
	p.do("settings-entry", "0")
	p.do("settings-remove", "")
	if p.file() != ofTerminal+"\r\n" || len(p.set.Box) != 0 {
		t.Errorf("%q", p.file())
	}
	p.do("back", "")
	p.do("settings-list", "stock")
	for _, fields := range [][]string{{"kind", "tippet", "x", "4", "name", "4X"}, {"kind", "tapered", "length", "2.7 m"}, {"kind", "bite", "material", "wire"}} {
		p.do("settings-entry", "new")
		p.do("settings-keep", "", fields...)
		p.has("Saved.")
	}
	p.has("tippet, 4X, 4X", "tapered, 2.7 m", "bite, wire")
	p.do("settings-entry", "new")
	p.do("settings-keep", "", "kind", "tapered", "length", "")
	p.has("Not saved", "length")
	p.do("back", "")
	p.do("back", "")
	p.do("settings-list", "water")
	p.has("Alder Kettle, flies: 2")
	p.do("settings-entry", "0")
	if p.value("max_flies") != "2" || p.value("name") != "Alder Kettle" {
		t.Error(p.show.Main)
	}
	p.do("settings-keep", "", "name", "Alder Kettle", "max_leader", "5 m", "max_flies", "", "added_weight", "false", "indicator", "true", "checked", "2026-05-01", "note", hostile)
	p.has("Alder Kettle, leader up to 5 m, no added weight, indicator allowed, looked up 2026-05-01")
	r := p.set.RulesFor("Alder Kettle")
	if r.MaxLeaderM != 5 || r.MaxFlies != 0 || !r.NoAddedWeight || r.NoIndicator || r.Checked != "2026-05-01" || r.Note != hostile || p.set.Lakes[0].Basin == nil {
		t.Errorf("%+v", r)
	}
	if !strings.Contains(p.file(), "name = \"Alder Kettle\" # ours\r\n") || !strings.Contains(p.file(), " \"0 m 10 ha\", # top\r\n") {
		t.Errorf("%q", p.file())
	}
	p.do("settings-entry", "new")
	p.do("settings-keep", "", "name", "", "max_flies", "1")
	p.has("Not saved", "name")
	p.do("settings-keep", "", "name", "Sedge Mere", "max_flies", "1")
	p.has("Sedge Mere, flies: 1")
	if p.set.RulesFor("sedge mere").MaxFlies != 1 {
		t.Errorf("%+v", p.set.Waters)
	}
	for _, value := range []string{"", "2", "-1", "x"} {
		p.do("settings-entry", value)
		p.has("Another water")
	}
	p.do("settings-list", "nothing")
	p.has("Another water")
}
