package main

import (
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"
)

// TestDemoWaters: the invented waters of testdata are the cases that anglers meet, and
// each gets the advice that a careful guide would give. Depths in metres; a band of 0 is
// none.
func TestDemoWaters(t *testing.T) {
	noSettings(t)
	for _, c := range []struct {
		page         string
		structure    string
		top, bottom  float64 // of the band, within half a metre
		says, unsaid []string
		cautions     string
	}{
		{"marl-hole-july", "layered", 3.5, 5.5, // fertile: a band two metres thick
			[]string{"no catch and release", "cool enough, too little oxygen", "weeds grow to about 2.5 m"}, []string{"unknown"}, "warm-70 cold anchors rules"},
		{"long-scar-july", "layered", 9.6, 22, // clear and deep, oxygen to the bottom
			[]string{"deeper than common practice", "Class 4 sinking line", "can let the gas out"}, []string{"unknown", "too little oxygen"}, "warm-68 pressure cold anchors rules"},
		{"duck-puddle-august", "layered", 0, 0, // nothing both cool and safe
			[]string{"No water here is both cool and safe", "too warm above, no oxygen below", "Leave these fish alone"}, []string{"Fish should hold", "Floating line"}, "warm-70 cold rules"},
		{"thimble-flat-june", "mixed", 0, 3.7,
			[]string{"One layer, top to bottom: no thermocline", "Low sun brings fish up"}, []string{"WARM WATER", "unknown"}, "cold anchors rules"},
		{"alder-kettle-october", "mixed", 0, 9.4, // after turnover
			[]string{"One layer, top to bottom", "start over the shelf"}, []string{"unknown", "WARM WATER"}, "cold anchors rules"},
		{"alder-kettle-january", "inverse", 0, 9, // under ice
			[]string{"a winter column", "late in winter oxygen fails there first", "ice picks"}, []string{"WARM WATER", "Two anchors"}, "ice rules"},
		{"sedge-mere-august", "layered", 3.6, 5.3,
			[]string{"no catch and release"}, []string{"unknown"}, "warm-70 cold anchors rules"},
		{"alder-kettle-july", "layered", 4.4, 9.4,
			[]string{"best bet 15 to 20 ft: below that oxygen is unknown and may be too low", "warmer than ideal, but more likely to hold oxygen"}, nil, "warm-70 cold anchors rules"},
	} {
		page := filepath.Join("..", "..", "testdata", c.page+".txt")
		status, text, errOut := runWith(t, "", "plan", "--full", page)
		if status != 0 || errOut != "" {
			t.Errorf("%s: status %d, %s", c.page, status, errOut)
			continue
		}
		flat := strings.Join(strings.Fields(text), " ")
		for _, s := range c.says {
			if !strings.Contains(flat, s) {
				t.Errorf("%s does not say %q:\n%s", c.page, s, text)
			}
		}
		for _, s := range c.unsaid {
			if strings.Contains(flat, s) {
				t.Errorf("%s says %q:\n%s", c.page, s, text)
			}
		}
		_, out, _ := runWith(t, "", "plan", "--json", page)
		var p struct {
			Layers struct{ Structure string }
			Band   struct {
				Found  bool
				Top    struct{ Best float64 } `json:"top_m"`
				Bottom struct{ Best float64 } `json:"bottom_m"`
			}
			Cautions []struct{ Code, Text, Source string }
		}
		if err := json.Unmarshal([]byte(out), &p); err != nil {
			t.Fatal(err)
		}
		if p.Layers.Structure != c.structure || p.Band.Found != (c.bottom > 0) ||
			p.Band.Found && (abs(p.Band.Top.Best-c.top) > 0.5 || abs(p.Band.Bottom.Best-c.bottom) > 0.5) {
			t.Errorf("%s: %s, band %+v", c.page, p.Layers.Structure, p.Band)
		}
		var codes []string
		for _, x := range p.Cautions {
			codes = append(codes, x.Code)
			if x.Text == "" || x.Source == "" {
				t.Errorf("%s: caution %+v lacks its text or source", c.page, x)
			}
		}
		if got := strings.Join(codes, " "); got != c.cautions {
			t.Errorf("%s: cautions %q, want %q", c.page, got, c.cautions)
		}
	}
}

func abs(v float64) float64 { return max(v, -v) }

// TestSkyWords: what is noted of the sky brings the cautions that it asks for.
func TestSkyWords(t *testing.T) {
	noSettings(t)
	for _, c := range []struct{ sky, want string }{
		{"thunder in the west", "THUNDER: off the water"},
		{"whitecaps", "WIND of 15 mph"},
		{"no whitecaps", ""},
		{"no thunder", ""},
		{"clear", ""},
	} {
		_, out, errOut := runWith(t, "units: ft F\nsky: "+c.sky+"\n0 74\n5 73\n10 70\n15 62\n20 55\n", "plan", "--full")
		has := strings.Contains(out, "THUNDER") || strings.Contains(out, "WIND of")
		if has != (c.want != "") || !strings.Contains(out, c.want) {
			t.Errorf("%q: %s%.300s", c.sky, errOut, out)
		}
	}
}
