package page

import (
	"cmp"

	"github.com/go-echarts/go-echarts/v2/opts"

	"coldseam/chart"
)

// Dark inks on white, for a screen in the sun: those of the still pictures. No area lies
// over another, so that no two colours make a third. Kinds of things differ by dash and
// symbol as well, and are named beside the picture, so that none depends on a colour.
const (
	ink       = "#141e28"
	quiet     = "#45505c" // values beside names, leaders, hatching
	faint     = "#dde2e7" // grid lines only
	warmth    = "#073162" // the curve
	ribbon    = "#c6d8ec" // its doubt
	ribbonInk = "#4d729b"
	oxygen    = "#ae4a00"
	density   = "#45505c"
	bandTint  = "#ffeeb0"
	bandInk   = "#7d5f00"
	mixedTint = "#dfeeee"
	paper     = "#ffffff"
	rising    = "rising" // hatching, which the page's script makes
	falling   = "falling"
	unknown   = "unknown" // of the band, in its own ink
)

// Dashes, px: what is drawn and what is left out in turn.
const (
	solid     = ""
	short     = "4 3"
	dots      = "2 3"
	long      = "12 4"
	longShort = "12 3 2 3"
)

// A symbol is an outline in a box of 12 by 12, drawn alike on the picture and beside
// its name.
type symbol string

const (
	circle    symbol = "M6 0A6 6 0 1 0 6 12A6 6 0 1 0 6 0Z"
	square    symbol = "M1 1H11V11H1Z"
	diamond   symbol = "M6 0L12 6L6 12L0 6Z"
	triangle  symbol = "M6 0L12 11H0Z"
	crossed   symbol = "M6 1.5A4.5 4.5 0 1 0 6 10.5A4.5 4.5 0 1 0 6 1.5ZM0 0L12 12M12 0L0 12"
	warmer    symbol = "M12 6L0 11V1Z" // off the scale at its right
	colder    symbol = "M0 6L12 1V11Z"
	arrowhead symbol = "M0 0L12 6L0 12Z"
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
	Dash   string
	Width  float32
	Symbol symbol
	Filled bool // the symbol; else white within
}

func (s style) line() *opts.LineStyle {
	return &opts.LineStyle{Color: s.Color, Width: s.Width, Type: cmp.Or(s.Dash, "solid"), Opacity: opts.Float(1)}
}

func (s style) item() *opts.ItemStyle {
	fill := paper
	if s.Filled {
		fill = s.Color
	}
	return &opts.ItemStyle{Color: fill, BorderColor: s.Color, BorderWidth: 2, Opacity: opts.Float(1)}
}

// Dashes is the pattern of the dash beside its name.
func (s style) Dashes() string { return cmp.Or(s.Dash, "none") }

// Fill is the symbol's fill beside its name.
func (s style) Fill() string { return s.item().Color }

var (
	curveStyle    = style{Color: warmth, Width: 2.7}
	assumedStyle  = style{Color: warmth, Dash: short, Width: 2.2}
	ribbonStyle   = style{Color: ribbonInk, Width: 1}
	readingStyle  = style{Color: ink, Symbol: circle, Filled: true}
	barStyle      = style{Color: ink, Width: 1.2}
	oddStyle      = style{Color: ink, Symbol: circle}
	leftOutStyle  = style{Color: ink, Symbol: crossed}
	offStyle      = style{Color: ink, Symbol: warmer}
	oxygenStyle   = style{Color: oxygen, Dash: dots, Width: 1.7, Symbol: diamond, Filled: true}
	densityStyle  = style{Color: density, Dash: dots, Width: 2}
	leaderStyle   = style{Color: quiet, Width: 1}
	overlayColors = []string{"#0a3a6e", "#b04a00", "#141e28", "#2f809e"}
	overlayMarks  = []symbol{circle, diamond, square, triangle}
	overlayDashes = []string{solid, "9 3", "3 3", longShort}
)

// overlay gives the look of drop i of n, as in the still picture: dash and symbol change
// from one to the next and come together again after sixteen. The last, whose answer stands
// on the page, is drawn heaviest.
func overlay(i, n int) style {
	s := style{
		Color: overlayColors[i%4], Dash: overlayDashes[i%4], Width: 2.3, Symbol: overlayMarks[(i+i/4)%4], Filled: true,
	}
	if i == n-1 {
		s.Width = 3.5
	}
	return s
}

// A lane is a strip beside the plot for the zones of one kind, so that none hides another.
type lane struct {
	from, to float64 // % of the column
	fill     string
}

var lanes = map[chart.ZoneKind]lane{
	chart.MixedLayer:  {2, 8, mixedTint},
	chart.Metalimnion: {2, 8, rising},
	chart.Band:        {10, 16, bandTint},
	chart.Unproven:    {18, 24, falling},
}

func laneOf(k chart.ZoneKind) lane {
	if l, ok := lanes[k]; ok {
		return l
	}
	return lanes[chart.Metalimnion]
}

func markLook(k chart.MarkKind) style {
	switch k {
	case chart.Thermocline:
		return style{Color: ink, Dash: long, Width: 1.8}
	case chart.Water:
		return style{Color: ink, Dash: longShort, Width: 1.8}
	case chart.Secchi, chart.Weeds:
		return style{Color: quiet, Dash: "2 4", Width: 1.2}
	case chart.Bottom:
		return style{Color: ink, Width: 3.2}
	}
	return style{Color: ink, Width: 1.8}
}
