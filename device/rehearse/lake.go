package rehearse

import (
	"fmt"
	"strings"
)

// Lake is still water of known temperature at every depth; every one is invented. The
// zero Lake holds no water: have one from Kettle or Named.
type Lake struct {
	key, name     string
	bottomM, airC float64
	points        []point // from the surface down
}

type point struct{ depthM, tempC float64 }

var lakes = []Lake{
	{"alder-kettle", "Alder Kettle", 9.4488, 24, []point{
		{0, 23}, {0.6096, 22.889}, {1.524, 22.722}, {3.048, 22.389}, {3.9624, 21.167},
		{4.572, 19.111}, {5.1816, 16.611}, {6.096, 14.222}, {7.62, 11.389}, {8.8392, 10.389},
	}},
	{"thimble-flat", "Thimble Flat", 3.6, 24, []point{{0, 20.1}, {2, 20}, {3.6, 19.9}}},
	{"tinder-pan", "Tinder Pan", 7.2, -2, []point{
		{0, 0.3}, {0.5, 1.2}, {1.5, 2.4}, {3, 3.2}, {5, 3.7}, {7.2, 3.9},
	}},
}

// Kettle is Alder Kettle off the reed point in July: layered, 31 ft (9.45 m) deep. Its
// temperatures are those of the demo page, as corrected for the page's thermometer.
func Kettle() Lake { return lakes[0] }

// Names lists what Named takes: alder-kettle, layered; thimble-flat, one mixed layer of
// 20 C over 3.6 m; tinder-pan, under ice, coldest at the top, 7.2 m deep.
func Names() []string {
	names := make([]string, len(lakes))
	for i, l := range lakes {
		names[i] = l.key
	}
	return names
}

// Named gives the lake of a name out of Names, in any case; its error names them all.
func Named(name string) (Lake, error) {
	for _, l := range lakes {
		if strings.EqualFold(l.key, name) {
			return l, nil
		}
	}
	return Lake{}, fmt.Errorf("no lake %q to rehearse on: use one of %s", name, strings.Join(Names(), ", "))
}

// Name is the lake's name as one writes it.
func (l Lake) Name() string { return l.name }

// BottomM is the depth of the bottom under the boat, m.
func (l Lake) BottomM() float64 { return l.bottomM }

// TempC is the temperature of the water, C, at depthM metres: linear between the known
// depths, that of the surface above it, and that of the deepest one below it and for NaN.
func (l Lake) TempC(depthM float64) float64 {
	var above point
	for i, p := range l.points {
		if depthM <= p.depthM {
			if i == 0 {
				return p.tempC
			}
			return above.tempC + (p.tempC-above.tempC)*(depthM-above.depthM)/(p.depthM-above.depthM)
		}
		above = p
	}
	return above.tempC
}

// bend is the depth nearest to fromM on the way to toM at which the water's gradient
// changes, or toM where none lies between.
func (l Lake) bend(fromM, toM float64) float64 {
	for _, p := range l.points {
		if p.depthM > fromM && p.depthM < toM || p.depthM < fromM && p.depthM > toM {
			toM = p.depthM
		}
	}
	return toM
}
