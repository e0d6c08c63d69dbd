// Package settings reads what an angler has settled once: units, the thermometer's
// error, the usual fish, fishes of their own, the box of leader material, fly weights, and the rules of
// each water with the date they were checked. It is a TOML file in the user's
// configuration directory; every key is optional, and a key or a value that is not
// understood is an error that names its line.
package settings

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/rig/weight"
	"coldseam/profile/unit"
)

// Settings are what the file says, with the defaults where it says nothing.
type Settings struct {
	Headers        []notebook.Header // keys of the notebook, as defaults for a page
	ClearanceM     float64
	LongestM       float64
	RodM           float64
	Stock          []rig.Piece
	Box            []Fly
	Usual          weight.Weight       // the fly of fly_weight, zero where none is named
	Flies          int                 // how many are tied on, 1 to 3
	SinkMps        float64             // rate of the sinking line, m/s; 0 where it is not known
	BottomContacts []rig.BottomContact // bottoms touched, which correct the waits
	Waters         []rig.Rules
	Fish           []fish.Fish // the angler's own, which win over the table's: fish.FindIn
	Book           string      // the folder of saved drops, "" for the usual one
	Probe          Probe
}

// Fly is a fly of the box, its mass when dry and the density in kg/m3 of hook, bead
// and dressing together (weight.AnyFly where it is not known).
type Fly struct {
	Name    string
	MassKg  float64
	Density float64
}

// Default is what holds without a file.
func Default() Settings {
	return Settings{ClearanceM: plan.ClearanceM, LongestM: rig.LongestM, RodM: rig.RodM, Stock: rig.DefaultStock(), Flies: 1}
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
		err = fmt.Errorf("%s: the home folder's path is not whole", dir)
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

// file is the TOML file. Quantities are texts with their unit.
type file struct {
	Units                string
	Thermometer          string
	ThermometerPrecision string `toml:"thermometer_precision"`
	MarksAt              string `toml:"marks_at"`
	BulbBelowZero        string `toml:"bulb_below_zero"`
	Oxygen               string
	For                  string
	FlyWeight            string `toml:"fly_weight"`
	Retrieve             string
	Book                 string
	Clearance            string
	LongestLeader        string `toml:"longest_leader"`
	Rod                  string
	Flies                *int
	SinkRate             string `toml:"sink_rate"`
	Stock                []stock
	Fly                  []fly
	Touched              []touched
	Water                []water
	Fish                 []ownFish
	Probe                probe
}

type stock struct {
	Kind, Name, Length, Diameter, Material string
	X                                      *float64
}

type water struct {
	Name        string
	MaxLeader   string `toml:"max_leader"`
	MaxFlies    int    `toml:"max_flies"`
	AddedWeight *bool  `toml:"added_weight"`
	Indicator   *bool
	Checked     string
	Note        string
}

// Parse reads a settings file; name is for messages. An error is one line that names
// the file, the line and what to do.
func Parse(name string, data []byte) (Settings, error) {
	var f file
	data = bytes.TrimPrefix(data, []byte("\uFEFF")) // some editors begin a file with it
	if err := bounded(name, data); err != nil {
		return Settings{}, err
	}
	d := toml.NewDecoder(bytes.NewReader(data)).DisallowUnknownFields()
	if err := d.Decode(&f); err != nil {
		return Settings{}, decodeError(name, err)
	}
	p := &parser{name: name, data: string(data), s: Default()}
	if p.lengths(f); p.err != nil {
		return Settings{}, p.err
	}
	p.box(f.Fly)
	p.usual(&f.FlyWeight)
	p.headers(f)
	p.length(place{key: "clearance"}, f.Clearance, 0.15, 1.5, &p.s.ClearanceM)
	p.length(place{key: "longest_leader"}, f.LongestLeader, 1, 30, &p.s.LongestM)
	p.length(place{key: "rod"}, f.Rod, 1, 10, &p.s.RodM)
	p.tied(f.Flies)
	p.sinkRate(f.SinkRate)
	p.stock(f.Stock)
	p.touched(f.Touched)
	p.waters(f.Water)
	p.fishes(f.Fish)
	p.book(f.Book)
	p.probe(f.Probe)
	if p.err != nil {
		return Settings{}, p.err
	}
	return p.s, nil
}

// parser turns texts into values and keeps the first error.
type parser struct {
	name, data string
	s          Settings
	err        error
}

// fail records an error at the line of a place.
func (p *parser) fail(at place, err error) {
	if p.err == nil {
		p.err = fmt.Errorf("%s:%d: %s: %w", p.name, at.line(p.data), at.key, err)
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
			p.fail(place{key: strings.ReplaceAll(h.key, " ", "_")}, err)
		}
		p.s.Headers = append(p.s.Headers, notebook.Header{Key: h.key, Value: h.value, From: "settings"})
	}
}

// book takes the folder of saved drops, which must not depend on where the program
// is started.
func (p *parser) book(dir string) {
	if dir == "" {
		return
	}
	if home, err := os.UserHomeDir(); err == nil && strings.HasPrefix(dir, "~/") {
		dir = filepath.Join(home, dir[2:])
	}
	if !filepath.IsAbs(dir) {
		p.fail(place{key: "book"}, fmt.Errorf("%q: write the whole path of the folder", dir))
	}
	p.s.Book = dir
}

// length reads a length between low and high metres, where one is given.
func (p *parser) length(at place, text string, low, high float64, to *float64) {
	if text == "" {
		return
	}
	m, _, err := unit.ParseLength(text)
	if err == nil && (m < low || m > high) {
		err = fmt.Errorf("%q is not a likely value", text)
	}
	if err != nil {
		p.fail(at, err)
		return
	}
	*to = m
}

func (p *parser) stock(list []stock) {
	if len(list) == 0 {
		return
	}
	p.s.Stock = nil
	for i, t := range list {
		at := func(key string) place { return place{"stock", i, key} }
		piece := rig.Piece{Name: t.Name, Material: t.Material}
		switch t.Kind {
		case "butt":
			piece.Kind = rig.Butt
		case "tapered", "tapered leader":
			piece.Kind = rig.Tapered
			if t.Length == "" {
				p.fail(at("kind"), errors.New("a tapered leader needs its length, e.g. length = \"12 ft\""))
			}
		case "tippet":
			piece.Kind = rig.Tippet
		default:
			p.fail(at("kind"), fmt.Errorf("%q: write butt, tapered or tippet", t.Kind))
		}
		switch t.Material {
		case "", "nylon", "fluorocarbon":
		default:
			p.fail(at("material"), fmt.Errorf("%q: write nylon or fluorocarbon", t.Material))
		}
		p.length(at("length"), t.Length, 0.3, 100, &piece.LengthM)
		if t.X != nil {
			if !(*t.X >= 0 && *t.X <= 8) {
				p.fail(at("x"), fmt.Errorf("%v: tippet goes from 0X to 8X", *t.X))
			}
			piece.DiameterMM = rig.TippetMM(*t.X)
		}
		if t.Diameter != "" {
			var m float64
			p.length(at("diameter"), t.Diameter, 0.00005, 0.003, &m)
			piece.DiameterMM = m * 1000
		}
		p.s.Stock = append(p.s.Stock, piece)
	}
}

func (p *parser) waters(list []water) {
	for i, w := range list {
		at := func(key string) place { return place{"water", i, key} }
		r := rig.Rules{Water: w.Name, MaxFlies: w.MaxFlies, Checked: w.Checked, Note: w.Note}
		if strings.TrimSpace(w.Name) == "" {
			p.fail(at("name"), errors.New("each [[water]] needs its name"))
		}
		if w.MaxFlies < 0 {
			p.fail(at("max_flies"), fmt.Errorf("%d is not a number of flies", w.MaxFlies))
		}
		p.length(at("max_leader"), w.MaxLeader, 0.5, 30, &r.MaxLeaderM)
		r.NoAddedWeight = w.AddedWeight != nil && !*w.AddedWeight
		r.NoIndicator = w.Indicator != nil && !*w.Indicator
		p.s.Waters = append(p.s.Waters, r)
	}
}
