package unit

import (
	"math"
	"strings"
	"testing"
)

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		in   string
		want float64 // metres, by 1 ft = 0.3048 m exactly
	}{
		{"15ft", 4.572}, {"15 ft", 4.572}, {"15'", 4.572}, {"12'6\"", 3.81}, {"12 ft 6 in", 3.81},
		{"12 1/2 ft", 3.81}, {"6 in", 0.1524}, {"4.5 m", 4.5}, {"4,5m", 4.5}, {"250 cm", 2.5},
		{"2 fathoms", 3.6576}, {"1900ft", 579.12}, {"-3 ft", -0.9144}, {"3/4 in", 0.01905}, {"1 yd", 0.9144},
	} {
		got, _, err := ParseLength(c.in)
		if err != nil || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("ParseLength(%q) = %v, %v; want %v", c.in, got, err, c.want)
		}
	}
	for _, bad := range []string{"0 74", "", "15", "ft", "15 furlongs", "NaN ft", "inf m", "0x10 ft", "1e3 m", "12 ft 14 in", "12 ft 6", "1_000 ft", "15 F"} {
		if got, _, err := ParseLength(bad); err == nil {
			t.Errorf("ParseLength(%q) = %v, want an error", bad, got)
		} else if strings.Contains(err.Error(), `""`) && bad != "" {
			t.Errorf("ParseLength(%q): %v: names nothing", bad, err)
		}
	}
}

func TestParseTemperature(t *testing.T) {
	for _, c := range []struct {
		in   string
		want float64
	}{{"32 F", 0}, {"212F", 100}, {"66°F", 18.888888888888889}, {"18,5 C", 18.5}, {"-0.5 °C", -0.5}, {"70 deg F", 21.11111111111111}} {
		got, _, err := ParseTemperature(c.in)
		if err != nil || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("ParseTemperature(%q) = %v, %v; want %v", c.in, got, err, c.want)
		}
	}
	for _, bad := range []string{"", "66", "66 K", "warm", "nan C"} {
		if got, _, err := ParseTemperature(bad); err == nil {
			t.Errorf("ParseTemperature(%q) = %v, want an error", bad, got)
		}
	}
	if d, _, err := ParseTemperatureDiff("0.5 F"); err != nil || math.Abs(d-0.2777777778) > 1e-9 {
		t.Errorf("a difference of 0.5 F = %v C, %v; want 0.2778", d, err)
	}
}

func TestParseScaled(t *testing.T) {
	type parse func(string) (float64, error)
	for _, c := range []struct {
		name string
		f    parse
		in   string
		want float64
	}{
		{"speed", ParseSpeed, "2in/s", 0.0508}, {"speed", ParseSpeed, "10 mph", 4.4704}, {"speed", ParseSpeed, "0.05 m/s", 0.05},
		{"speed", ParseSpeed, "10 kn", 5.144444444}, {"mass", ParseMass, "0.25g", 0.00025}, {"mass", ParseMass, "1/32 oz", 0.000885923},
		{"mass", ParseMass, "7000 gr", 0.45359237}, {"time", ParseDuration, "2 min", 120}, {"angle", ParseAngle, "20°", 20}, {"angle", ParseAngle, "20", 20},
	} {
		got, err := c.f(c.in)
		if err != nil || math.Abs(got-c.want) > 1e-8 {
			t.Errorf("%s %q = %v, %v; want %v", c.name, c.in, got, err, c.want)
		}
	}
	for _, c := range []struct {
		f  parse
		in string
	}{{ParseSpeed, "2"}, {ParseSpeed, "2 ft"}, {ParseMass, "0.25"}, {ParseMass, "1 lb/s"}, {ParseDuration, "90"}, {ParseAngle, "20 ft"}, {ParseAngle, ""}} {
		if got, err := c.f(c.in); err == nil {
			t.Errorf("%q = %v, want an error", c.in, got)
		}
	}
}

func TestSystem(t *testing.T) {
	feet, err := ParseSystem("ft F")
	if err != nil {
		t.Fatal(err)
	}
	metric, err := ParseSystem("C, m")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ got, want string }{
		{feet.Length(4.572), "15 ft"}, {feet.Span(4.2672, 6.096), "14 to 20 ft"}, {feet.Span(4.572, 4.6), "15 ft"},
		{feet.Degrees(18.9), "66 F"}, {feet.Piece(5.7912), "19 ft"}, {feet.Piece(0.9), "3 ft"}, {feet.Length(-0.01), "0 ft"},
		{metric.Marked(4.75), "4.75 m"}, {metric.Marked(5.2500001), "5.25 m"}, {metric.Marked(4.7), "4.7 m"}, {metric.Marked(4.93), "4.9 m"}, {feet.Marked(4.572), "15 ft"}, {feet.Marked(4.75), "16 ft"},
		{metric.Length(4.572), "4.6 m"}, {metric.Degrees(18.9), "19 C"}, {metric.Span(4, 6.5), "4 to 6.5 m"}, {metric.String(), "m C"},
		{Exact(73.9), "73.9"}, {Exact(math.Copysign(0, -1)), "0"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
	for _, bad := range []string{"", "ft m", "F C", "ft K", "15 ft"} {
		if s, err := ParseSystem(bad); err == nil {
			t.Errorf("ParseSystem(%q) = %v, want an error", bad, s)
		}
	}
}
