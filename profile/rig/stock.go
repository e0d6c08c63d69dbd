package rig

// PieceKind is what a piece of leader is.
type PieceKind string

// The kinds of piece.
const (
	Butt    PieceKind = "butt"
	Tapered PieceKind = "tapered leader"
	Tippet  PieceKind = "tippet"
	Bite    PieceKind = "bite tippet" // against teeth
)

// Piece is something the angler cuts leaders from.
type Piece struct {
	Kind       PieceKind
	Name       string  // as printed, "4X fluorocarbon"; may be empty
	LengthM    float64 // of a tapered leader as bought; 0 for a spool
	DiameterMM float64 // at its thin end; 0 when not known
	Material   string  // "nylon", "fluorocarbon", "wire" or ""
}

// TippetMM turns a tippet's X number into millimetres by the rule of eleven:
// thousandths of an inch are eleven less X (common practice). X lies between 0
// and 8.
func TippetMM(x float64) float64 { return (11 - x) * 0.0254 }

// DefaultStock is what is assumed to be in the box when the settings name nothing:
// a spool of butt, tapered leaders of 9 and 12 ft and spools of tippet for light and
// for heavy flies (common
// practice for stillwaters).
func DefaultStock() []Piece {
	return []Piece{
		{Kind: Butt, Name: "0.020 in nylon", DiameterMM: 0.51, Material: "nylon"},
		{Kind: Tapered, Name: "9 ft to 3X", LengthM: 2.7432, DiameterMM: TippetMM(3), Material: "nylon"},
		{Kind: Tapered, Name: "12 ft to 3X", LengthM: 3.6576, DiameterMM: TippetMM(3), Material: "nylon"},
		{Kind: Tippet, Name: "4X fluorocarbon", DiameterMM: TippetMM(4), Material: "fluorocarbon"},
		{Kind: Tippet, Name: "1X fluorocarbon", DiameterMM: TippetMM(1), Material: "fluorocarbon"},
	}
}

// Rules are what the law or the fishery allows on a water. The zero value allows
// everything.
type Rules struct {
	Water         string
	MaxLeaderM    float64 // 0: no limit known
	MaxFlies      int     // 0: no limit known
	NoAddedWeight bool
	NoIndicator   bool
	Checked       string // date on which the angler checked them, "2026-05-01"
	Note          string
}
