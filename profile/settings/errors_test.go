package settings

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// page joins lines into a file.
func page(lines ...string) string { return strings.Join(lines, "\n") + "\n" }

// An error names the file, the line, the key, and what is wrong, in one line.
func TestErrorsNameTheLine(t *testing.T) {
	for _, c := range []struct {
		name, text string
		line       string
		has        []string
	}{
		{"wrong key", page(`units = "ft F"`, `rods = "9 ft"`), "2", []string{`"rods"`}},
		{"wrong key in a table", page(`[[water]]`, `name = "a"`, `max_leeder = "18 ft"`), "3", []string{"max_leeder"}},
		{"wrong key in the second table", page(`[[water]]`, `name = "a"`, ``, `[[water]]`, `name = "b"`, `max_leeder = "18 ft"`), "6", []string{"max_leeder"}},
		{"wrong table", page(`rod = "9 ft"`, `[[lake]]`, `name = "a"`), "2", []string{"lake"}},
		{"wrong value", page(`units = "ft F"`, ``, `rod = "long"`), "3", []string{"rod", `"long"`}},
		{"a book of a part of a path", page(`rod = "9 ft"`, `book = "drops"`), "2", []string{"book", `"drops"`, "full path"}},
		{"no zone", page(`rod = "9 ft"`, `time_zone = "Chicago"`), "2", []string{"time_zone", `"Chicago"`, "America/Chicago"}},
		{"no unit", page(`# mine`, `clearance = "1"`), "2", []string{"clearance", "no unit"}},
		{"not likely", page(`longest_leader = "300 ft"`), "1", []string{"longest_leader", "300 ft"}},
		{"a notebook's key", page(`for = "rainbow"`, `marks_at = "the boat"`), "2", []string{"marks_at"}},
		{"a key in capitals", page(`units = "ft F"`, `ROD = "long"`), "2", []string{"rod"}},
		{"a quoted key", page(`units = "ft F"`, `"rod" = "long"`), "2", []string{"rod"}},
		{"a comment is no key", page(`# rod = "long"`, `rod = "long"`), "2", []string{"rod"}},

		{"first of two tables", page(`[[water]]`, `name = "a"`, `max_leader = "x"`, `[[water]]`, `name = "b"`, `max_leader = "18 ft"`), "3", []string{"max_leader"}},
		{"second of two tables", page(`[[water]]`, `name = "a"`, `max_leader = "18 ft"`, `[[water]]`, `name = "b"`, `max_leader = "x"`), "6", []string{"max_leader"}},
		{"second, the first has none", page(`[[water]]`, `name = "a"`, `[[water]]`, `name = "b"`, `max_leader = "x"`), "5", []string{"max_leader"}},
		{"second number of flies", page(`[[water]]`, `name = "a"`, `max_flies = 2`, `[[water]]`, `name = "b"`, `max_flies = -2`), "6", []string{"max_flies", "-2"}},
		{"no name: its table", page(`[[water]]`, `name = "a"`, `[[water]]`, `max_flies = 2`), "3", []string{"name"}},
		{"names elsewhere do not count", page(`[[stock]]`, `kind = "butt"`, `name = "n"`, `[[fly]]`, `name = "f"`, `weight = "0.2 g"`, `[[water]]`, `name = " "`), "8", []string{"name"}},
		{"second material", page(`[[stock]]`, `kind = "butt"`, `material = "nylon"`, `[[stock]]`, `kind = "tippet"`, `material = "wire"`), "6", []string{"material", "wire"}},
		{"second x", page(`[[stock]]`, `kind = "tippet"`, `x = 3`, `[[stock]]`, `kind = "tippet"`, `x = 12`), "6", []string{"x", "12"}},
		{"a rig that is none", page(`rod = "9 ft"`, `prefer = "trolled"`), "2", []string{"prefer", "trolled", "long-leader, hung or sinking"}},
		{"a rig for the ice", page(`prefer = "jig"`), "1", []string{"prefer", "jig"}},
		{"a material of no kind", page(`[[stock]]`, `kind = "bite"`, `material = "rope"`), "3", []string{"material", "rope", "wire for a bite tippet"}},
		{"a fly of a pound", page(`[[fish]]`, `name = "pike"`, `fly_weight = "1 oz"`), "3", []string{"fly_weight", "1 oz", "not a likely weight"}},
		{"teeth in words", page(`[[fish]]`, `name = "pike"`, `teeth = "many"`), "3", []string{"teeth", "true or false"}},
		{"x that is no number", page(`[[stock]]`, `kind = "tippet"`, `x = nan`), "3", []string{"x"}},
		{"second diameter", page(`[[stock]]`, `kind = "butt"`, `[[stock]]`, `kind = "tippet"`, `diameter = "1 ft"`), "5", []string{"diameter"}},
		{"kind", page(`[[stock]]`, `kind = "butt"`, `[[stock]]`, `kind = "rope"`), "4", []string{"kind", "rope"}},
		{"no kind: its table", page(`[[stock]]`, `kind = "butt"`, `[[stock]]`, `name = "n"`), "3", []string{"kind"}},
		{"tapered without length", page(`[[stock]]`, `name = "n"`, `kind = "tapered"`), "3", []string{"length"}},
		{"weight of the second fly", page(`[[fly]]`, `weight = "0.2 g"`, `[[fly]]`, `name = "f"`, `weight = "2 lb"`), "5", []string{"weight"}},
		{"fly without weight: its table", page(`[[fly]]`, `weight = "0.2 g"`, `[[fly]]`, `name = "f"`), "3", []string{"weight"}},
		{"fly of no weight", page(`[[fly]]`, `weight = "0 g"`), "2", []string{"weight"}},
		{"a bead that is none", page(`[[fly]]`, `name = "f"`, `weight = "3.3 mm tungstn"`), "3", []string{"weight", "tungstn", "e.g."}},
		{"a density in other units", page(`[[fly]]`, `weight = "0.2 g"`, `[[fly]]`, `weight = "0.2 g"`, `density = 8.5`), "5", []string{"density", "8.5", "kg/m3"}},
		{"density as a text", page(`[[fly]]`, `weight = "0.2 g"`, `density = "8500"`), "3", []string{"density", "a number"}},
		{"a usual fly that is none", page(`units = "ft F"`, `fly_weight = "black midge"`), "2", []string{"fly_weight", "black"}},
		{"a usual fly of no weight", page(`fly_weight = "0 g"`), "1", []string{"fly_weight", "not a likely weight"}},
		{"no flies", page(`rod = "9 ft"`, `flies = 0`), "2", []string{"flies", "1 to 3"}},
		{"four flies", page(`flies = 4`), "1", []string{"flies", "4"}},
		{"flies in words", page(`flies = "two"`), "1", []string{"flies", "whole number"}},
		{"sink rate without unit", page(`rod = "9 ft"`, `sink_rate = "3"`), "2", []string{"sink_rate", "no unit"}},
		{"sink rate too fast", page(`sink_rate = "3 ft/s"`), "1", []string{"sink_rate", "3 ft/s"}},
		{"sink rate of nothing", page(`sink_rate = "0 in/s"`), "1", []string{"sink_rate", "0 in/s"}},
		{"touched without a rig: its table", page(`[[touched]]`, `depth = "12 ft"`, `after = "52 s"`), "1", []string{"rig", "long-leader"}},
		{"touched without a depth", page(`[[touched]]`, `rig = "hung"`, `after = "52 s"`), "1", []string{"depth", "12 ft"}},
		{"the second touched has no time", page(`[[touched]]`, `rig = "hung"`, `depth = "12 ft"`, `after = "52 s"`, `[[touched]]`, `rig = "hung"`, `depth = "12 ft"`), "5", []string{"after", "52 s"}},
		{"touched on another rig", page(`[[touched]]`, `depth = "12 ft"`, `after = "52 s"`, `rig = "sinking"`), "4", []string{"rig", "sinking", "long-leader or hung"}},
		{"touched too deep", page(`[[touched]]`, `rig = "hung"`, `depth = "31 m"`, `after = "52 s"`), "3", []string{"depth", "31 m"}},
		{"touched too shallow", page(`[[touched]]`, `rig = "hung"`, `depth = "2 ft"`, `after = "52 s"`), "3", []string{"depth", "2 ft"}},
		{"touched too soon", page(`[[touched]]`, `rig = "hung"`, `depth = "12 ft"`, `after = "2 s"`), "4", []string{"after", "2 s"}},
		{"touched too late", page(`[[touched]]`, `rig = "hung"`, `depth = "12 ft"`, `after = "11 min"`), "4", []string{"after", "11 min"}},
		{"a time without unit", page(`[[touched]]`, `rig = "hung"`, `depth = "12 ft"`, `after = "52"`), "4", []string{"after", "no unit"}},
		{"wrong key in touched", page(`[[touched]]`, `rig = "hung"`, `deep = "12 ft"`), "3", []string{"deep"}},
		{"the head's key after a table of the same", page(`rod = "x"`, `[[water]]`, `name = "rod"`), "1", []string{"rod"}},
		{"blanks in a table's brackets", page(`[[ water ]]`, `name = "a"`, `max_leader = "x"`), "3", []string{"max_leader"}},
		{"a text of several lines", page(`[[water]]`, `name = "a"`, `note = """`, `max_leader = "18 ft"`, `[[water]]`, `"""`, `max_leader = "x"`), "7", []string{"max_leader"}},
		{"tables in one line", page(`rod = "9 ft"`, `stock = [{kind = "rope"}]`), "2", []string{"kind", "rope"}},
		{"a length of tables in one line", page(`rod = "9 ft"`, `stock = [{kind = "butt"}, {kind = "butt", length = "9"}]`), "2", []string{": length: ", "no unit"}},
		{"tables of several lines", page(`stock = [`, `  {kind = "butt"},`, `  {kind = "rope"},`, `]`), "3", []string{": kind: ", "rope"}},
		{"a number for a length of a table", page(`[[water]]`, `name = "a"`, `max_leader = 5`), "3", []string{"max_leader", "quotes"}},
		{"true for a length", page(`units = "ft F"`, `rod = true`), "2", []string{"rod", "quotes"}},
		{"a date for a length", page(`rod = 2026-05-01`), "1", []string{": rod: ", "quotes"}},
		{"a table for a length", page(`flies = 1`, `[rod]`), "2", []string{"table"}},
		{"numbers for a length", page(`flies = 1`, `rod = [1]`), "2", []string{": rod: ", "quotes"}},
		{"a latitude of words", page(`units = "ft F"`, `latitude = "north"`), "2", []string{"latitude", "46.1 N"}},
		{"a longitude alone", page(`units = "ft F"`, `longitude = "89.3 W"`), "2", []string{"longitude", "latitude"}},
		{"a water's longitude", page(`[[water]]`, `name = "a"`, `latitude = "46 N"`, `longitude = "46 N"`), "4", []string{"longitude", "89.3 W"}},
		{"a lake of a mile's depth of sight", page(`[[water]]`, `name = "a"`, `secchi = "1 mi"`), "3", []string{"secchi"}},
		{"a lake of no length", page(`[[water]]`, `name = "a"`, `length = "1 m"`), "3", []string{"length", "1 m"}},
		{"a row without its area", page(`[[water]]`, `name = "a"`, `depths = [`, ` "0 ft 24 acres",`, ` "10 ft",`, `]`), "5", []string{"depths", "10 ft 17 acres"}},
		{"a row without units", page(`[[water]]`, `name = "a"`, `depths = ["0 24", "10 17"]`), "3", []string{"depths", "10 ft 17 acres"}},
		{"more water below", page(`[[water]]`, `name = "a"`, `depths = [`, ` "0 ft 24 acres",`, ` "10 ft 27 acres",`, `]`), "5", []string{": depths: ", "row 2", "area falls with depth"}},
		{"no surface", page(`[[water]]`, `name = "a"`, `depths = [`, ` "1 ft 24 acres",`, ` "10 ft 17 acres",`, `]`), "4", []string{": depths: ", "row 1", "depth of 0"}},
		{"depths as tables", page(`[[water]]`, `name = "a"`, `depths = [{depth = "0 ft"}]`), "3", []string{"water.depth"}},
		{"depths as a text", page(`[[water]]`, `name = "a"`, `depths = "0 ft 24 acres"`), "3", []string{"depths", `["0 ft 24 acres", "10 ft 17 acres", ...]`}},
		{"depths as numbers", page(`[[water]]`, `name = "a"`, `depths = [0, 24]`), "3", []string{"depths"}},
		{"a number for tables", page(`stock = 3`), "1", []string{": stock: ", "tables"}},
		{"a number for the probe", page(`probe = 3`), "1", []string{": probe: ", "[probe]"}},
		{"a key of the probe with a dot", page(`flies = 1`, `probe.air = "8 hPa"`), "2", []string{": air: ", "8 hPa"}},
		{"Windows line ends", "units = \"ft F\"\r\nrod = \"long\"\r\n", "2", []string{"rod"}},

		{"a text is not closed", page(`rod = "9 ft"`, `units = "ft F`), "2", nil},
		{"no value", page(`rod =`), "1", nil},
		{"twice the same", page(`rod = "9 ft"`, `rod = "10 ft"`), "2", []string{"rod"}},
		{"a number for a text", page(`units = "ft F"`, `rod = 9`), "2", []string{"rod", "quotes"}},
		{"a text for a number", page(`[[water]]`, `name = "a"`, `max_flies = "two"`), "3", []string{"max_flies", "whole number"}},
		{"a text for yes or no", page(`[[water]]`, `name = "a"`, `indicator = "no"`), "3", []string{"indicator", "true or false"}},
		{"a bare date", page(`[[water]]`, `name = "a"`, `checked = 2026-05-01`), "3", []string{"checked", "quotes"}},
	} {
		_, err := Parse("my settings.toml", []byte(c.text))
		if err == nil {
			t.Errorf("%s: no error", c.name)
			continue
		}
		msg := err.Error()
		if !strings.HasPrefix(msg, "my settings.toml:"+c.line+": ") {
			t.Errorf("%s: %s\nwant line %s", c.name, msg, c.line)
		}
		for _, w := range c.has {
			if !strings.Contains(msg, w) {
				t.Errorf("%s: %s\nwant %s in it", c.name, msg, w)
			}
		}
		if strings.Contains(msg, "\n") || strings.Contains(msg, "Go ") || strings.Contains(msg, "struct") {
			t.Errorf("%s: not in one plain line: %s", c.name, msg)
		}
	}
}

// Nothing of a file that was refused is used.
func TestRefusedGivesNothing(t *testing.T) {
	s, err := Parse("s", []byte(page(`rod = "9 ft"`, `clearance = "x"`)))
	if err == nil || s.RodM != 0 || s.Stock != nil {
		t.Errorf("%+v, %v", s, err)
	}
}

// Whatever the bytes, Parse gives settings or an error of one line.
func TestParseNeverPanics(t *testing.T) {
	pieces := []string{"[[water]]\n", "[[stock]]\n", "[[fly]]\n", "[water]\n", "name = ", "kind = ", "x = ", "weight = ", "rod = ", "flies = ", "sink_rate = ", "[[touched]]\n", "rig = ", "after = ", "fly_weight = ", "density = ", `"9 ft"`, `"2 mm tin"`, `"x"`, "3", "\n", `"""`, "'''", "=", "#", "\r\n", "stock = [{}]\n"}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.OneOf(rapid.SampledFrom(pieces), rapid.StringN(0, 4, -1)), 0, 14).Draw(t, "pieces"), "")
		_, err := Parse("s", []byte(text))
		if err != nil && (!strings.HasPrefix(err.Error(), "s:") || strings.Contains(err.Error(), "\n")) {
			t.Fatalf("%q: %q", text, err)
		}
	})
}
