// Package settings reads what an angler has settled once: units, the thermometer's
// error, the usual fish, the box of leader material, fly weights, and the rules of
// each water with the date they were checked. It is a TOML file in the user's
// configuration directory; every key is optional, and a key or a value that is not
// understood is an error that names its line.
package settings

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// Settings are what the file says, with the defaults where it says nothing.
type Settings struct {
	Headers    []notebook.Header // keys of the notebook, as defaults for a page
	ClearanceM float64
	LongestM   float64
	RodM       float64
	Stock      []rig.Piece
	Flies      []Fly
	Waters     []rig.Rules
}

// Fly is a fly of the box and its mass, weighed dry.
type Fly struct {
	Name   string
	MassKg float64
}

// Default is what holds without a file.
func Default() Settings {
	return Settings{ClearanceM: plan.ClearanceM, LongestM: rig.LongestM, RodM: rig.RodM, Stock: rig.DefaultStock()}
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

// Path is where the file is looked for, os.UserConfigDir()/coldseam/settings.toml.
func Path() (string, error) {
	dir, err := os.UserConfigDir()
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
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return Default(), nil
	}
	if err != nil {
		return Settings{}, err
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
	Clearance            string
	LongestLeader        string `toml:"longest_leader"`
	Rod                  string
	Stock                []stock
	Fly                  []fly
	Water                []water
}

type stock struct {
	Kind, Name, Length, Diameter, Material string
	X                                      *float64
}

type fly struct{ Name, Weight string }

type water struct {
	Name        string
	MaxLeader   string `toml:"max_leader"`
	MaxFlies    int    `toml:"max_flies"`
	AddedWeight *bool  `toml:"added_weight"`
	Indicator   *bool
	Checked     string
	Note        string
}

// Parse reads a settings file; name is for messages.
func Parse(name string, data []byte) (Settings, error) {
	var f file
	d := toml.NewDecoder(bytes.NewReader(data)).DisallowUnknownFields()
	if err := d.Decode(&f); err != nil {
		return Settings{}, decodeError(name, err)
	}
	p := &parser{name: name, data: string(data), s: Default()}
	p.headers(f)
	p.length("clearance", 0, f.Clearance, 0.15, 1.5, &p.s.ClearanceM)
	p.length("longest_leader", 0, f.LongestLeader, 1, 30, &p.s.LongestM)
	p.length("rod", 0, f.Rod, 1, 10, &p.s.RodM)
	p.stock(f.Stock)
	p.flies(f.Fly)
	p.waters(f.Water)
	return p.s, p.err
}

// decodeError names the line of what TOML could not take.
func decodeError(name string, err error) error {
	var strict *toml.StrictMissingError
	if errors.As(err, &strict) && len(strict.Errors) > 0 {
		row, _ := strict.Errors[0].Position()
		return fmt.Errorf("%s:%d: there is no setting %q; see `coldseam plan --help` or the README for the names", name, row, strings.Join(strict.Errors[0].Key(), "."))
	}
	var decode *toml.DecodeError
	if errors.As(err, &decode) {
		row, _ := decode.Position()
		return fmt.Errorf("%s:%d: %s", name, row, strings.TrimPrefix(decode.Error(), "toml: "))
	}
	return fmt.Errorf("%s: %w", name, err)
}

// parser turns texts into values and keeps the first error.
type parser struct {
	name, data string
	s          Settings
	err        error
}

// fail records an error at the n-th line that sets a key (from 0).
func (p *parser) fail(key string, n int, err error) {
	if p.err != nil {
		return
	}
	line := 1
	found := regexp.MustCompile(`(?m)^[ \t]*["']?`+regexp.QuoteMeta(key)+`["']?[ \t]*=`).FindAllStringIndex(p.data, -1)
	if n < len(found) {
		line += strings.Count(p.data[:found[n][0]], "\n")
	}
	p.err = fmt.Errorf("%s:%d: %s: %w", p.name, line, key, err)
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
			p.fail(strings.ReplaceAll(h.key, " ", "_"), 0, err)
		}
		p.s.Headers = append(p.s.Headers, notebook.Header{Key: h.key, Value: h.value, From: "settings"})
	}
}

// length reads a length between low and high metres, where one is given.
func (p *parser) length(key string, n int, text string, low, high float64, to *float64) {
	if text == "" {
		return
	}
	m, _, err := unit.ParseLength(text)
	if err == nil && (m < low || m > high) {
		err = fmt.Errorf("%q is not a likely value", text)
	}
	if err != nil {
		p.fail(key, n, err)
		return
	}
	*to = m
}

func (p *parser) stock(list []stock) {
	if len(list) == 0 {
		return
	}
	p.s.Stock = nil
	lengths, diameters := 0, 0
	for i, t := range list {
		piece := rig.Piece{Name: t.Name, Material: t.Material}
		switch t.Kind {
		case "butt":
			piece.Kind = rig.Butt
		case "tapered", "tapered leader":
			piece.Kind = rig.Tapered
			if t.Length == "" {
				p.fail("kind", i, errors.New("a tapered leader needs its length, e.g. length = \"12 ft\""))
			}
		case "tippet":
			piece.Kind = rig.Tippet
		default:
			p.fail("kind", i, fmt.Errorf("%q: write butt, tapered or tippet", t.Kind))
		}
		switch t.Material {
		case "", "nylon", "fluorocarbon":
		default:
			p.fail("material", 0, fmt.Errorf("%q: write nylon or fluorocarbon", t.Material))
		}
		if t.Length != "" {
			p.length("length", lengths, t.Length, 0.3, 100, &piece.LengthM)
			lengths++
		}
		if t.X != nil {
			if *t.X < 0 || *t.X > 8 {
				p.fail("x", 0, fmt.Errorf("%v: tippet goes from 0X to 8X", *t.X))
			}
			piece.DiameterMM = rig.TippetMM(*t.X)
		}
		if t.Diameter != "" {
			var m float64
			p.length("diameter", diameters, t.Diameter, 0.00005, 0.003, &m)
			piece.DiameterMM = m * 1000
			diameters++
		}
		p.s.Stock = append(p.s.Stock, piece)
	}
}

func (p *parser) flies(list []fly) {
	for i, f := range list {
		kg, err := unit.ParseMass(f.Weight)
		if err == nil && (kg <= 0 || kg > 0.05) {
			err = fmt.Errorf("%q is not a likely weight for a fly", f.Weight)
		}
		if err != nil {
			p.fail("weight", i, err)
		}
		p.s.Flies = append(p.s.Flies, Fly{f.Name, kg})
	}
}

func (p *parser) waters(list []water) {
	leaders := 0
	for i, w := range list {
		r := rig.Rules{Water: w.Name, MaxFlies: w.MaxFlies, Checked: w.Checked, Note: w.Note}
		if w.Name == "" {
			p.fail("name", i, errors.New("each [[water]] needs its name"))
		}
		if w.MaxFlies < 0 {
			p.fail("max_flies", 0, fmt.Errorf("%d is not a number of flies", w.MaxFlies))
		}
		if w.MaxLeader != "" {
			p.length("max_leader", leaders, w.MaxLeader, 0.5, 30, &r.MaxLeaderM)
			leaders++
		}
		r.NoAddedWeight = w.AddedWeight != nil && !*w.AddedWeight
		r.NoIndicator = w.Indicator != nil && !*w.Indicator
		p.s.Waters = append(p.s.Waters, r)
	}
}
