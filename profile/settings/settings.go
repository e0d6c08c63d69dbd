// Package settings reads what an angler has settled once: units, the thermometer's
// error, the usual fish, fishes of their own, the box of leader material, fly weights, and the rules of
// each water with the date they were checked. It is a TOML file in the user's
// configuration directory; every key is optional, and a key or a value that is not
// understood is an error that names its line.
package settings

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/rig/weight"
)

// Settings are what the file says, with the defaults where it says nothing.
type Settings struct {
	Headers    []notebook.Header // keys of the notebook, as defaults for a page
	ClearanceM float64
	rig.Tackle
	Box    []weight.Weight // each with its name as the text
	Usual  weight.Weight   // the fly of fly_weight, zero where none is named
	Waters []rig.Rules
	Lakes  []Lake // what else is noted of them: LakeFor
	// Latitude and Longitude are of the home water, degrees, positive to the north and to the east.
	Latitude, Longitude profile.Optional
	Fish                []fish.Fish // the angler's own, which win over the table's: fish.FindIn
	Book                string      // the folder of saved drops, "" for the usual one
	Probe               Probe

	Zone    *time.Location // of the angler's clock, nil where it is not said
	Project string         // of an agency, for which drops are exported
}

// Default is what holds without a file.
func Default() Settings {
	return Settings{ClearanceM: plan.ClearanceM, Tackle: rig.DefaultTackle()}
}

// RulesFor gives the rules noted for a water, the zero Rules when there are none.
// Names are compared without case.
func (s Settings) RulesFor(water string) rig.Rules {
	for _, w := range s.Waters {
		if water != "" && strings.EqualFold(strings.TrimSpace(water), strings.TrimSpace(w.Water)) {
			return w
		}
	}
	return rig.Rules{}
}

// WaterNames lists the waters whose rules are noted.
func (s Settings) WaterNames() []string {
	var names []string
	for _, w := range s.Waters {
		names = append(names, w.Water)
	}
	return names
}

// Path is where the file is looked for, os.UserConfigDir()/coldseam/settings.toml, which
// must not depend on where the program is started.
func Path() (string, error) {
	dir, err := os.UserConfigDir()
	if err == nil && !filepath.IsAbs(dir) {
		err = fmt.Errorf("%s: the home folder's path is not complete", dir)
	}
	if err != nil {
		return "", err
	}
	return filepath.Join(dir, "coldseam", "settings.toml"), nil
}

// Load reads the user's file; a missing one gives the defaults.
func Load() (Settings, error) {
	path, err := Path()
	if err != nil { // no home directory: nothing was settled
		return Default(), nil
	}
	data, err := read(path)
	if err != nil || data == nil {
		return Default(), err
	}
	return Parse(path, data)
}

// Parse reads a settings file; name is for messages. An error is one line that names
// the file, the line and what to do.
func Parse(name string, data []byte) (Settings, error) {
	data = bytes.TrimPrefix(data, []byte("\uFEFF")) // some editors begin a file with it
	if err := bounded(name, data); err != nil {
		return Settings{}, err
	}
	d := Default()
	f := file{Clearance: clearance(d.ClearanceM), LongestLeader: longest(d.LongestM), Rod: rod(d.RodM)}
	p := &parser{name: name, contents: walk(data), s: d}
	if err := decode(name, p.contents, &f); err != nil {
		return Settings{}, err
	}
	p.s.ClearanceM, p.s.LongestM, p.s.RodM, p.s.SinkMps = float64(f.Clearance), float64(f.LongestLeader), float64(f.Rod), float64(f.SinkRate)
	p.box(f.Fly)
	p.usual(&f.FlyWeight)
	p.headers(f)
	p.s.Latitude, p.s.Longitude = p.place("latitude", f.Latitude, "longitude", f.Longitude)
	p.tied(f.Flies)
	p.prefer(f.Prefer)
	p.stock(f.Stock)
	p.touched(f.Touched)
	p.waters(f.Water)
	p.fishes(f.Fish)
	p.book(f.Book)
	p.zone(f.TimeZone)
	p.s.Project = strings.TrimSpace(f.Project)
	p.probe(f.Probe)
	if p.err != nil {
		return Settings{}, p.err
	}
	return p.s, nil
}

// parser turns texts into values and keeps the first error.
type parser struct {
	name     string
	contents *contents
	s        Settings
	err      error
}

// fail records an error at the line of a key.
func (p *parser) fail(path string, err error) {
	if p.err == nil {
		p.err = &Error{Name: p.name, Line: p.contents.line(path), Key: keyOf(path), Err: err}
	}
}

// headers takes the settings that are keys of the notebook too.
func (p *parser) headers(f file) {
	for _, h := range []struct{ key, value string }{
		{"units", f.Units}, {"thermometer", f.Thermometer}, {"thermometer precision", f.ThermometerPrecision}, {"marks at", f.MarksAt},
		{"bulb below zero", f.BulbBelowZero}, {"oxygen", f.Oxygen}, {"for", f.For}, {"fly weight", f.FlyWeight}, {"retrieve", f.Retrieve},
	} {
		if h.value == "" {
			continue
		}
		if err := notebook.Check(h.key, h.value); err != nil {
			p.fail(strings.ReplaceAll(h.key, " ", "_"), err)
		}
		p.s.Headers = append(p.s.Headers, notebook.Header{Key: h.key, Value: h.value, From: "settings"})
	}
}

// bookElsewhere holds in a browser, whose book is its own: a folder of a computer, from a
// file that is pasted there, is left alone.
var bookElsewhere = runtime.GOOS == "js"

// book takes the folder of saved drops, which must not depend on where the program
// is started.
func (p *parser) book(dir string) {
	if dir == "" || bookElsewhere {
		return
	}
	if home, err := os.UserHomeDir(); err == nil && strings.HasPrefix(dir, "~/") {
		dir = filepath.Join(home, dir[2:])
	}
	if !filepath.IsAbs(dir) {
		p.fail("book", fmt.Errorf("%q: write the full path of the folder", dir))
	}
	p.s.Book = dir
}
