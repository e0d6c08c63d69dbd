package settings

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coldseam/profile/rig"
)

// prefer takes the rig to take wherever it reaches the depth.
func (p *parser) prefer(text string) {
	if p.s.Prefer = rig.Kind(text); text != "" && !slices.Contains([]rig.Kind{rig.LongLeader, rig.Hung, rig.Sinking}, p.s.Prefer) {
		p.fail("prefer", fmt.Errorf("%q: write long-leader, hung or sinking", text))
	}
}

func (p *parser) stock(list []stock) {
	if len(list) == 0 {
		return
	}
	p.s.Stock = nil
	for i, t := range list {
		at := func(key string) string { return in("stock", i, key) }
		piece := rig.Piece{Name: t.Name, Material: t.Material, LengthM: float64(t.Length)}
		switch t.Kind {
		case "butt":
			piece.Kind = rig.Butt
		case "tapered", "tapered leader":
			piece.Kind = rig.Tapered
			if t.Length == 0 {
				p.fail(at("kind"), errors.New("a tapered leader needs its length, e.g. length = \"12 ft\""))
			}
		case "tippet":
			piece.Kind = rig.Tippet
		case "bite", "bite tippet":
			piece.Kind = rig.Bite
		default:
			p.fail(at("kind"), fmt.Errorf("%q: write butt, tapered, tippet or bite", t.Kind))
		}
		switch t.Material {
		case "", "nylon", "fluorocarbon":
		case "wire":
			if piece.Kind != rig.Bite {
				p.fail(at("material"), errors.New("\"wire\": only a bite tippet is of wire; write nylon or fluorocarbon"))
			}
		default:
			p.fail(at("material"), fmt.Errorf("%q: write nylon or fluorocarbon, or wire for a bite tippet", t.Material))
		}
		if t.X != nil {
			if !(*t.X >= 0 && *t.X <= 8) {
				p.fail(at("x"), fmt.Errorf("%v: tippet goes from 0X to 8X", *t.X))
			}
			piece.DiameterMM = rig.TippetMM(*t.X)
		}
		if t.Diameter > 0 {
			piece.DiameterMM = float64(t.Diameter) * 1000
		}
		p.s.Stock = append(p.s.Stock, piece)
	}
}

func (p *parser) waters(list []water) {
	for i, w := range list {
		at := func(key string) string { return in("water", i, key) }
		r := rig.Rules{Water: w.Name, MaxFlies: w.MaxFlies, MaxLeaderM: float64(w.MaxLeader), Checked: w.Checked, Note: w.Note}
		if strings.TrimSpace(w.Name) == "" {
			p.fail(at("name"), errors.New("a water needs its name"))
		}
		if w.MaxFlies < 0 {
			p.fail(at("max_flies"), fmt.Errorf("%d is not a number of flies", w.MaxFlies))
		}
		r.NoAddedWeight = w.AddedWeight != nil && !*w.AddedWeight
		r.NoIndicator = w.Indicator != nil && !*w.Indicator
		p.s.Waters = append(p.s.Waters, r)
		p.lake(i, w)
	}
}
