package unit

import (
	"math"
	"strings"
	"testing"
)

// A unit is found by its symbol and by each of its names, and by no other unit's.
func TestNames(t *testing.T) {
	seen := map[string]Unit{}
	for i, d := range table {
		u := Unit(i)
		if u == None {
			continue
		}
		if d.quantity == NoQuantity || d.symbol == "" || d.mul == 0 || d.div == 0 {
			t.Errorf("%d: %+v", i, d)
		}
		for _, name := range strings.Fields(d.names + " " + d.byPeople + " " + d.byDevices) {
			if other, ok := seen[name]; ok {
				t.Errorf("%q is %v and %v", name, other, u)
			}
			seen[name] = u
			if len(name) > longestPrinted && !strings.Contains(d.byPeople, name) {
				t.Errorf("%q is too long for Printed", name)
			}
		}
		people, devices := strings.Fields(d.names+" "+d.byPeople), strings.Fields(d.names+" "+d.byDevices)
		for _, name := range people {
			if got, ok := Named(strings.ToUpper(name), d.quantity); !ok || got != u {
				t.Errorf("Named %q: %v, %v", name, got, ok)
			}
			if got, ok := Named(name, OfOther); ok && d.quantity != OfOther {
				t.Errorf("%q measures another quantity, %v", name, got)
			}
		}
		for _, name := range devices {
			if got := Printed([]byte(name)); got != u && name != "k" {
				t.Errorf("Printed %q: %v", name, got)
			}
		}
	}
	if Printed([]byte("k")) != Kilohm || Printed([]byte("K")) != Kelvin || Printed([]byte("fathom")) != None || Printed([]byte(strings.Repeat("m", 99))) != None || Printed(nil) != None {
		t.Error("kilohm, kelvin or none")
	}
	if u, ok := Named("K", OfTemperature); ok {
		t.Errorf("people write no %v", u)
	}
	word := []byte("Fahrenheit")
	if n := testing.AllocsPerRun(10, func() { Printed(word) }); n > 0 {
		t.Errorf("%v allocations", n)
	}
}

// By hand: 1 fathom is 6 ft, 1 kn is 1852 m in an hour, 14.6959 psi and 1.01325 bar are one
// atmosphere, 300 K are 26.85 C.
func TestSI(t *testing.T) {
	for _, c := range []struct {
		u    Unit
		v    float64
		want float64
	}{
		{Metre, 3, 3}, {Centimetre, 7, 0.07}, {Millimetre, 5, 0.005}, {Foot, 10, 3.048}, {Inch, 12, 0.3048}, {Yard, 1, 0.9144}, {Fathom, 1, 6 * 0.3048},
		{Celsius, -3, -3}, {Fahrenheit, 212, 100}, {Kelvin, 300, 26.85}, {MilePerHour, 60, 26.8224}, {Knot, 3600, 1852}, {KilometrePerHour, 36, 10},
		{Ounce, 16, 0.45359237}, {Grain, 7000, 0.45359237}, {Milligram, 1e6, 1}, {PSI, 14.695949, 101325}, {Bar, 1.01325, 101325}, {Millibar, 1013.25, 101325},
		{Minute, 2, 120}, {Hour, 1, 3600}, {Millisecond, 500, 0.5}, {Microsecond, 1e6, 1}, {Kilohm, 12.49, 12490}, {None, 7, 7}, {Unit(200), 7, 7},
	} {
		if got := c.u.SI(c.v); math.Abs(got-c.want) > 1e-7*math.Abs(c.want) {
			t.Errorf("%v %v is %v, want %v", c.v, c.u, got, c.want)
		}
		if back := c.u.From(c.want); math.Abs(back-c.v) > 1e-6*math.Abs(c.v) {
			t.Errorf("%v is %v %v, want %v", c.want, back, c.u, c.v)
		}
	}
	if Unit(200).String() != "?" || None.String() != "?" {
		t.Error("a unit that is not stated has a symbol")
	}
}
