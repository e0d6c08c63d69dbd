package page

import (
	"github.com/go-echarts/go-echarts/v2/opts"

	"coldseam/chart"
)

// Dark inks on white, for a screen in the sun. Kinds of things differ by dash and
// symbol as well, and are named beside the picture, so that none depends on a colour.
const (
	ink      = "#141e28"
	quiet    = "#45505c" // leaders, the break's bracket
	faint    = "#dde2e7" // grid lines only
	warmth   = "#0a3a6e" // temperature
	ribbon   = "#6f9bc9"
	oxygen   = "#a64500"
	density  = "#45505c"
	bandInk  = "#7d5f00"
	bandFill = "rgba(255,210,60,0.38)"
	mixedInk = "#2f809e"
	mixing   = "rgba(120,190,195,0.22)"
	breaking = "rgba(69,80,92,0.10)"
)

// A symbol is an outline in a box of 12 by 12, drawn alike on the picture and beside
// its name.
type symbol string

const (
	circle   symbol = "M6 0A6 6 0 1 0 6 12A6 6 0 1 0 6 0Z"
	square   symbol = "M1 1H11V11H1Z"
	diamond  symbol = "M6 0L12 6L6 12L0 6Z"
	triangle symbol = "M6 0L12 11H0Z"
	anchor   symbol = "M6 12L12 1H0Z"
	cross    symbol = "M0 2L2 0L6 4L10 0L12 2L8 6L12 10L10 12L6 8L2 12L0 10L4 6Z"
)

func (s symbol) path() string {
	if s == "" {
		return "none"
	}
	return "path://" + string(s)
}

// style is how a line and its points look.
type style struct {
	Color  string
	Dash   string // "solid", "dashed" or "dotted"
	Width  float32
	Symbol symbol
	Filled bool // the symbol; else white within
}

func (s style) line() *opts.LineStyle {
	return &opts.LineStyle{Color: s.Color, Width: s.Width, Type: s.Dash, Opacity: opts.Float(1)}
}

func (s style) item() *opts.ItemStyle {
	fill := "#ffffff"
	if s.Filled {
		fill = s.Color
	}
	return &opts.ItemStyle{Color: fill, BorderColor: s.Color, BorderWidth: 2, Opacity: opts.Float(1)}
}

// Dashes is the pattern of the dash beside its name.
func (s style) Dashes() string {
	switch s.Dash {
	case "dashed":
		return "7 4"
	case "dotted":
		return "2 3"
	}
	return "none"
}

// Fill is the symbol's fill beside its name.
func (s style) Fill() string { return s.item().Color }

var (
	curveStyle    = style{Color: warmth, Dash: "solid", Width: 3}
	assumedStyle  = style{Color: warmth, Dash: "dotted", Width: 3}
	readingStyle  = style{Color: warmth, Symbol: circle}
	oddStyle      = style{Color: warmth, Symbol: triangle, Filled: true}
	leftOutStyle  = style{Color: ink, Symbol: cross, Filled: true}
	oxygenStyle   = style{Color: oxygen, Dash: "dashed", Width: 2, Symbol: diamond, Filled: true}
	densityStyle  = style{Color: density, Dash: "dotted", Width: 2}
	overlayColors = []string{"#0a3a6e", "#b04a00", "#141e28", "#2f809e", "#7b2d6b", "#5b6b00"}
	overlayMarks  = []symbol{circle, square, triangle, diamond, anchor}
	overlayDashes = []string{"solid", "dashed", "dotted"}
)

// overlay gives the look of drop i of n: the last, whose answer stands on the page, is
// drawn heaviest.
func overlay(i, n int) style {
	s := style{
		Color: overlayColors[i%len(overlayColors)], Dash: overlayDashes[i%len(overlayDashes)], Width: 2,
		Symbol: overlayMarks[i%len(overlayMarks)],
	}
	if i == n-1 {
		s.Width, s.Filled = 3.5, true
	}
	return s
}

// zoneLooks and markLooks are how layers and depths are drawn.
var zoneLooks = map[chart.ZoneKind]struct {
	fill string
	rail style
}{
	chart.MixedLayer:  {mixing, style{Color: mixedInk, Dash: "solid", Width: 3}},
	chart.Metalimnion: {breaking, style{Color: quiet, Dash: "dashed", Width: 4}},
	chart.Band:        {bandFill, style{Color: bandInk, Dash: "solid", Width: 7}},
	chart.Unproven:    {"hatched", style{Color: ink, Dash: "dotted", Width: 4}},
}

var markLooks = map[chart.MarkKind]style{
	chart.Thermocline: {Color: quiet, Dash: "dashed", Width: 2},
	chart.Start:       {Color: ink, Dash: "solid", Width: 2.5},
	chart.Water:       {Color: ink, Dash: "dotted", Width: 2.5},
	chart.Bottom:      {Color: ink, Dash: "solid", Width: 6},
}
