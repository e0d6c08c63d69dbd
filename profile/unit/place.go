package unit

import (
	"fmt"
	"math"
	"strings"
)

// Coordinate is one of the two that tell a place on the earth.
type Coordinate struct {
	name           string
	plus, minus    string // the letters of its two sides
	most           float64
	example, other string
}

// Latitude is positive to the north, Longitude to the east.
var (
	Latitude  = Coordinate{"latitude", "N", "S", 90, "46.1 N", "33.5 S"}
	Longitude = Coordinate{"longitude", "E", "W", 180, "89.3 W", "18.4 E"}
)

// Parse reads a coordinate in degrees: "46.1 N", "33.5 S", "-33.5", "46°06'N",
// "46 06 30 N".
func (c Coordinate) Parse(s string) (degrees float64, err error) {
	refused := fmt.Errorf("%q is not a %s: write degrees, e.g. %s or %s", s, c.name, c.example, c.other)
	text, sign := strings.ToUpper(strings.TrimSpace(s)), 1.0
	for _, side := range []string{c.plus, c.minus} {
		rest, behind := strings.CutSuffix(text, side)
		if !behind {
			var before bool
			if rest, before = strings.CutPrefix(text, side); !before {
				continue
			}
		}
		if text = strings.TrimSpace(rest); strings.HasPrefix(text, "-") {
			return 0, refused
		}
		if side == c.minus {
			sign = -1
		}
		break
	}
	if rest, ok := strings.CutPrefix(text, "-"); ok {
		sign, text = -1, rest
	}
	text = strings.NewReplacer("DEG", " ", "°", " ", "º", " ", "'", " ", "′", " ", "’", " ", `"`, " ", "″", " ", "”", " ").Replace(text)
	parts := strings.Fields(text)
	if len(parts) == 0 || len(parts) > 3 {
		return 0, refused
	}
	scale := 1.0
	for i, part := range parts {
		n, rest, ok := ScanNumber(part, true)
		last := i+1 == len(parts)
		if !ok || rest != "" || n.Value < 0 || i > 0 && n.Value >= 60 || !last && n.Value != math.Trunc(n.Value) {
			return 0, refused
		}
		degrees += n.Value / scale
		scale *= 60
	}
	if degrees > c.most {
		return 0, fmt.Errorf("%q: a %s is at most %g degrees", s, c.name, c.most)
	}
	return sign*degrees + 0, nil
}

// Write writes a coordinate as Parse reads it, "46.1 N"; number writes its digits.
func (c Coordinate) Write(degrees float64, number func(float64) string) string {
	if degrees < 0 {
		return number(-degrees) + " " + c.minus
	}
	return number(degrees) + " " + c.plus
}
