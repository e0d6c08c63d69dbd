package settings

import (
	"fmt"

	"coldseam/profile/fish"
	"coldseam/profile/light"
	"coldseam/profile/unit"
)

// file is the TOML file. Quantities are texts with their unit, each of a type that reads
// it; what is not written keeps its value.
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
	Prefer               string
	Book                 string
	TimeZone             string `toml:"time_zone"`
	Project              string
	Latitude, Longitude  string
	Clearance            clearance
	LongestLeader        longest `toml:"longest_leader"`
	Rod                  rod
	Flies                *int
	SinkRate             sinkRate `toml:"sink_rate"`
	Stock                []stock
	Fly                  []fly
	Touched              []touched
	Water                []water
	Fish                 []fish.Entry
	Probe                probe
}

type stock struct {
	Kind, Name, Material string
	Length               pieceLength
	Diameter             diameter
	X                    *float64
}

// fly is a fly of the box.
type fly struct {
	Name, Weight string
	Density      *float64 // kg/m3, of the whole
}

// touched is a bottom touched.
type touched struct {
	Rig   string
	Depth waterDepth
	After wait
}

type water struct {
	Name        string
	MaxLeader   maxLeader `toml:"max_leader"`
	MaxFlies    int       `toml:"max_flies"`
	AddedWeight *bool     `toml:"added_weight"`
	Indicator   *bool
	Checked     string
	Note        string
	Latitude    string
	Longitude   string
	Length      lakeLength
	Secchi      secchi
	Depths      []contour
	Site        string
}

type probe struct {
	Port, Parity, Layout string
	Air                  airPressure
	Baud                 *int
	DataBits             *int `toml:"data_bits"`
	Thermistor           []float64
}

// The quantities, lengths in metres.
type (
	clearance   float64
	longest     float64 // leader
	rod         float64
	sinkRate    float64 // m/s
	pieceLength float64
	diameter    float64
	waterDepth  float64
	wait        float64 // s
	maxLeader   float64
	airPressure float64 // Pa
	lakeLength  float64
	secchi      float64
)

// Each is read from a text with its unit, within what is likely. A line that sinks does so
// at a quarter of an inch a second, a hovering line, up to 8, the fastest (common
// practice), and some beyond.

func (q *clearance) UnmarshalText(b []byte) error   { return within(b, length, 0.15, 1.5, q) }
func (q *longest) UnmarshalText(b []byte) error     { return within(b, length, 1, 30, q) }
func (q *rod) UnmarshalText(b []byte) error         { return within(b, length, 1, 10, q) }
func (q *sinkRate) UnmarshalText(b []byte) error    { return within(b, unit.ParseSpeed, 0.005, 0.3, q) }
func (q *pieceLength) UnmarshalText(b []byte) error { return within(b, length, 0.3, 100, q) }
func (q *diameter) UnmarshalText(b []byte) error    { return within(b, length, 0.00005, 0.003, q) }
func (q *waterDepth) UnmarshalText(b []byte) error  { return within(b, length, 1, 30, q) }
func (q *wait) UnmarshalText(b []byte) error        { return within(b, unit.ParseDuration, 3, 600, q) }
func (q *maxLeader) UnmarshalText(b []byte) error   { return within(b, length, 0.5, 30, q) }
func (q *lakeLength) UnmarshalText(b []byte) error  { return within(b, length, 10, 1e6, q) }
func (q *secchi) UnmarshalText(b []byte) error {
	return within(b, length, light.MinSecchiM, light.MaxSecchiM, q)
}
func (q *airPressure) UnmarshalText(b []byte) error {
	return within(b, unit.ParsePressure, 40000, 110000, q)
}

// within reads a quantity between low and high, in SI; an empty text leaves it as it is.
func within[Q ~float64](text []byte, parse func(string) (float64, error), low, high float64, q *Q) error {
	if len(text) == 0 {
		return nil
	}
	v, err := parse(string(text))
	if err == nil && !(v >= low && v <= high) {
		err = fmt.Errorf("%q is not a likely value", text)
	}
	*q = Q(v)
	return err
}

func length(text string) (m float64, err error) {
	m, _, err = unit.ParseLength(text)
	return m, err
}
