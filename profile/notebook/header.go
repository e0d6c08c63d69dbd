package notebook

import (
	"fmt"
	"math"
	"strings"
	"unicode"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// Header is one "key: value" of a page, a flag or the settings.
type Header struct {
	Key, Value string
	Line       int    // of the page; 0 when it came from elsewhere
	From       string // where from, when not from the page: "--bottom", "settings"
	soft       bool   // read from a line of words: a line with the key wins over it
}

// key is one thing that can be noted at the top of a page: how it is read into a
// drop and how it is written out.
type key struct {
	name string
	help string
	set  func(d *profile.Drop, value string, bare unit.System) error
	get  func(d *profile.Drop) string // "" when not noted
}

// take reads a value into the drop.
func (k *key) take(d *profile.Drop, value string, bare unit.System) error {
	most := maxValue
	switch k.name {
	case "note":
		most = maxNote
	case "water", "spot", "for", "weight", "sky", "colour", "anchor", "caught":
		most = maxText
	}
	if len(value) > most {
		return fmt.Errorf("%s is longer than %d letters: shorten it", shown(value), most)
	}
	return k.set(d, value, bare)
}

// set reads the value of a key into the drop; bare are the units of bare numbers.
func set(d *profile.Drop, name, value string, bare unit.System) error {
	k := find(name)
	if k == nil {
		return fmt.Errorf("%q is not a key", name)
	}
	return k.take(d, value, bare)
}

// Keys are the names of the header keys, in the order in which they are written.
func Keys() []string {
	var names []string
	for _, k := range keys {
		names = append(names, k.name)
	}
	return names
}

// Help says in a line what a header key holds.
func Help(name string) string {
	if k := find(name); k != nil {
		return k.help
	}
	return ""
}

func find(name string) *key {
	for i := range keys {
		if keys[i].name == name {
			return &keys[i]
		}
	}
	return nil
}

// keys is the one table of header keys; flags and settings use the same names.
var keys = []key{
	text("water", "the lake's name", func(d *profile.Drop) *string { return &d.Water }),
	text("spot", "where on it", func(d *profile.Drop) *string { return &d.Spot }),
	{"date", "date and time, 2026-07-18 14:20", func(d *profile.Drop, v string, _ unit.System) (err error) {
		d.Date, err = parseDate(v)
		return err
	}, func(d *profile.Drop) string { return d.Date }},
	{"units", `units of depth and temperature, "ft F" or "m C"`, func(d *profile.Drop, v string, _ unit.System) error {
		s, err := unit.ParseSystem(v)
		if s.Depth != unit.NoLength {
			d.Units.Depth = s.Depth
		}
		if s.Temp != unit.NoTemperature {
			d.Units.Temp = s.Temp
		}
		return err
	}, func(d *profile.Drop) string { return d.Units.String() }},
	length("bottom", "depth of the bottom under the boat, 31 ft", 0, 2000, func(d *profile.Drop) *profile.Optional { return &d.Bottom }),
	length("deepest", "the lake's deepest known water, 40 ft", 0, 2000, func(d *profile.Drop) *profile.Optional { return &d.Deepest }),
	length("secchi", "Secchi depth, 9 ft", 0, 100, func(d *profile.Drop) *profile.Optional { return &d.Secchi }),
	length("altitude", "height above the sea, 1900 ft", -500, 6000, func(d *profile.Drop) *profile.Optional { return &d.Altitude }),
	lakeLength("lake length", "length of the lake, 800 m or 1.5 mi", func(d *profile.Drop) *profile.Optional { return &d.LakeLength }),
	coordinate("latitude", "of the water, 46.1 N: gives the length of the day", unit.Latitude, func(d *profile.Drop) *profile.Optional { return &d.Latitude }),
	coordinate("longitude", "of the water, 89.3 W", unit.Longitude, func(d *profile.Drop) *profile.Optional { return &d.Longitude }),
	{"wind", "SW 8 mph, light S; or calm, breeze, chop, whitecaps", setWind, getWind},
	quantity("line angle", "degrees of the line from the vertical", 0, 60, lineAngle, plainly(""), func(d *profile.Drop) *profile.Optional { return &d.LineAngle }),
	{"marks at", `marks counted at: "water" or "gunwale 1.5 ft"`, setMarks, getMarks},
	length("bulb below zero", "how far the bulb hangs below the line's zero, 6 in", 0, 3, func(d *profile.Drop) *profile.Optional { return &d.BulbBelow }),
	{"thermometer", `its ice-point check, "reads 32.5 F in ice water"`, setIcePoint, func(d *profile.Drop) string {
		if !d.IcePoint.Known {
			return ""
		}
		return "reads " + written(d.IcePoint, d.Units.Temp, unit.Celsius) + " in ice water"
	}},
	quantity("thermometer precision", "the thermometer's random error, 0.5 F", 0, 5, precision, plainly(" C"), func(d *profile.Drop) *profile.Optional { return &d.Precision }),
	quantity("wait", "time the thermometer was left at each depth, 2 min", 0, 3600, stated(unit.ParseDuration), plainly(" s"), func(d *profile.Drop) *profile.Optional { return &d.Wait }),
	quantity("time constant", "the thermometer's time constant, 20 s", 0, 3600, stated(unit.ParseDuration), plainly(" s"), func(d *profile.Drop) *profile.Optional { return &d.TimeConst }),
	{"oxygen", "unit of the oxygen column, mg/L or %", func(d *profile.Drop, v string, _ unit.System) error {
		switch strings.ToLower(strings.TrimSpace(v)) {
		case "mg/l", "ppm", "mgl":
			d.OxygenUnit = "mg/L"
		case "%", "percent", "% sat", "% saturation":
			d.OxygenUnit = "%"
		default:
			return fmt.Errorf("%q is not a unit of dissolved oxygen: write mg/L or %%", v)
		}
		return nil
	}, func(d *profile.Drop) string { return d.OxygenUnit }},
	text("for", "the fish you are after, rainbow", func(d *profile.Drop) *string { return &d.For }),
	text("weight", "the weight on the line", func(d *profile.Drop) *string { return &d.Weight }),
	quantity("fly weight", "mass of the fly, weighed dry, 0.25 g", 0, 0.05, stated(unit.ParseMass), grams, func(d *profile.Drop) *profile.Optional { return &d.FlyWeight }),
	quantity("retrieve", "line recovered, 2 in/s over pauses; or slow, crawl", 0, 5, stated(RetrieveMps), retrieved, func(d *profile.Drop) *profile.Optional { return &d.Retrieve }),
	text("sky", "clear, cloud, dusk...", func(d *profile.Drop) *string { return &d.Sky }),
	text("colour", "of the water: clear, stained, green", func(d *profile.Drop) *string { return &d.Colour }),
	text("anchor", "what came up on it: clean, black, smells", func(d *profile.Drop) *string { return &d.Anchor }),
	{"note", "anything else", func(d *profile.Drop, v string, _ unit.System) error {
		v, err := kept(v)
		if len(d.Notes) >= maxNotes {
			return fmt.Errorf("more than %d notes in one drop: leave some out", maxNotes)
		}
		if v != "" {
			d.Notes = append(d.Notes, v)
		}
		return err
	}, nil},
	{"caught", "a fish, 18:10 rainbow 16 ft black midge", addCatch, nil},
}

// text is a key whose value is kept as it stands.
func text(name, help string, field func(*profile.Drop) *string) key {
	return key{name, help, func(d *profile.Drop, v string, _ unit.System) error {
		v, err := kept(v)
		*field(d) = v
		return err
	}, func(d *profile.Drop) string { return *field(d) }}
}

// Limits of what is noted beside the readings: a name and a note are short, and a page
// of many notes and catches stays under MaxPage. The first three are bytes of a value.
const (
	maxValue = 100
	maxText  = 400
	maxNote  = MaxLine
	maxNotes = 200 // and as many catches
)

// kept is a text as it stays when it is written out and read back: on one line, its
// outer blanks gone. A control character is refused.
func kept(v string) (string, error) {
	v = strings.TrimSpace(strings.ReplaceAll(strings.ToValidUTF8(v, "\ufffd"), "\t", " "))
	if strings.ContainsFunc(v, unicode.IsControl) {
		return v, fmt.Errorf("%s holds a control character: write it on one line, in letters and signs", shown(v))
	}
	return v, nil
}

// inUnits writes a length in the angler's unit where that loses nothing, else in metres.
func inUnits(o profile.Optional, u unit.System) string { return written(o, u.Depth, unit.Metre) }

// written writes a value in SI in the first of some units in which it is a short number that
// reads back as the same value, else in the last, which is that of SI.
func written(o profile.Optional, units ...unit.Unit) string {
	if !o.Known {
		return ""
	}
	for _, u := range units[:len(units)-1] {
		if u == unit.None {
			continue
		}
		x := math.Round(u.From(o.Value)*1e6) / 1e6
		if text := exact(x) + " " + u.String(); rounded(u.SI(x)) == o.Value && len(text) <= longestNice {
			return text
		}
	}
	si := units[len(units)-1]
	return exact(o.Value) + " " + si.String()
}

// longestNice: a number of more digits is nobody's measure, but a sum of others.
const longestNice = 12

// plainly writes a value as it is kept, with the name of its unit.
func plainly(suffix string) func(profile.Optional, unit.System) string {
	return func(o profile.Optional, _ unit.System) string { return optional(o, suffix) }
}

func grams(o profile.Optional, _ unit.System) string { return written(o, unit.Gram, unit.Kilogram) }

func retrieved(o profile.Optional, u unit.System) string {
	if u.Depth != unit.Foot {
		return written(o, unit.CentimetrePerSecond, unit.MetrePerSecond)
	}
	return written(o, unit.InchPerSecond, unit.CentimetrePerSecond, unit.MetrePerSecond)
}

// quantity is a key that holds a value between low and high, in SI.
func quantity(name, help string, low, high float64, parse func(v string, bare unit.System) (float64, error), write func(profile.Optional, unit.System) string, field func(*profile.Drop) *profile.Optional) key {
	return key{name, help, func(d *profile.Drop, v string, bare unit.System) error {
		x, err := parse(v, bare)
		if err == nil && (x < low || x > high) {
			err = fmt.Errorf("%q is not a likely value", v)
		}
		*field(d) = profile.Some(rounded(x))
		return err
	}, func(d *profile.Drop) string { return write(*field(d), d.Units) }}
}

// length is a quantity in metres, which is written in the drop's unit where it can be. On a
// page whose depth unit is stated a bare number is in that unit.
func length(name, help string, low, high float64, field func(*profile.Drop) *profile.Optional) key {
	return quantity(name, help, low, high, bareLength, inUnits, field)
}

// coordinate is a latitude or a longitude in degrees.
func coordinate(name, help string, c unit.Coordinate, field func(*profile.Drop) *profile.Optional) key {
	return key{name, help, func(d *profile.Drop, v string, _ unit.System) error {
		degrees, err := c.Parse(v)
		*field(d) = profile.Some(rounded(degrees))
		return err
	}, func(d *profile.Drop) string {
		if o := *field(d); o.Known {
			return c.Write(o.Value, exact)
		}
		return ""
	}}
}

// lakeLength is a length that may be written in kilometres or miles too.
func lakeLength(name, help string, field func(*profile.Drop) *profile.Optional) key {
	const most = 1e6
	k := length(name, help, 0, most, field)
	plain := k.set
	k.set = func(d *profile.Drop, v string, bare unit.System) error {
		n, far, ok := unit.ScanNumber(clean(v), true)
		m, ok2 := map[string]float64{"km": 1000, "mi": 1609.344, "mile": 1609.344, "miles": 1609.344}[strings.TrimSpace(far)]
		if !ok || !ok2 {
			return plain(d, v, bare)
		}
		return plain(d, exact(math.Min(n.Value*m, 2*most))+" m", bare)
	}
	return k
}

// stated parses a value that has its unit.
func stated(parse func(string) (float64, error)) func(string, unit.System) (float64, error) {
	return func(v string, _ unit.System) (float64, error) { return parse(clean(v)) }
}

func lineAngle(v string, _ unit.System) (float64, error) {
	deg, err := unit.ParseAngle(v)
	if err == nil && (deg < 0 || deg > 60) {
		err = fmt.Errorf("%q: an angle from the vertical lies between 0 and 60 degrees", v)
	}
	return deg, err
}

func precision(v string, _ unit.System) (float64, error) {
	c, _, err := unit.ParseTemperatureDiff(strings.TrimPrefix(clean(v), "+-"))
	if err == nil && (c <= 0 || c > 5) {
		err = fmt.Errorf("%q: a thermometer's precision lies between 0 and 5 C (9 F)", v)
	}
	return c, err
}

// bareLength reads a length, which may lack its unit where the page has one.
func bareLength(v string, bare unit.System) (float64, error) {
	s := clean(v)
	m, _, err := unit.ParseLength(s)
	if n, rest, ok := unit.ScanNumber(s, true); err != nil && ok && rest == "" && bare.Depth != unit.NoLength {
		return bare.Depth.Metres(n.Value), nil
	}
	return m, err
}

func optional(o profile.Optional, suffix string) string {
	if !o.Known {
		return ""
	}
	return exact(o.Value) + suffix
}

func setMarks(d *profile.Drop, v string, bare unit.System) error {
	where, height, _ := strings.Cut(clean(v), " ")
	switch where {
	case "water", "surface":
		d.Marks, d.FreeboardM = profile.MarksAtWater, 0
		return nil
	case "gunwale", "rail", "gunnel":
		m, err := bareLength(height, bare)
		if err != nil || m < 0 || m > 3 {
			return fmt.Errorf("%q: write how far the gunwale is above the water, e.g. gunwale 1.5 ft", v)
		}
		d.Marks, d.FreeboardM = profile.MarksAtGunwale, rounded(m)
		return nil
	}
	return fmt.Errorf("%q: write \"water\" or e.g. \"gunwale 1.5 ft\"", v)
}

func getMarks(d *profile.Drop) string {
	switch d.Marks {
	case profile.MarksAtWater:
		return "water"
	case profile.MarksAtGunwale:
		return "gunwale " + inUnits(profile.Some(d.FreeboardM), d.Units)
	}
	return ""
}

func setIcePoint(d *profile.Drop, v string, _ unit.System) error {
	s := strings.TrimSpace(clean(v))
	s = strings.TrimPrefix(s, "reads ")
	for _, end := range []string{"in ice water", "in ice", "in icewater", "at the ice point"} {
		s = strings.TrimSuffix(s, end)
	}
	c, _, err := unit.ParseTemperature(strings.TrimSpace(s))
	if err != nil || c < -5 || c > 5 {
		return fmt.Errorf("%q: write what it reads in ice water, e.g. reads 32.5 F in ice water", v)
	}
	d.IcePoint = profile.Some(rounded(c))
	return nil
}

// Check reports whether a value can be read for a header key, without units to
// fall back on.
func Check(name, value string) error {
	var d profile.Drop
	return set(&d, name, value, unit.System{})
}
