package format

import "coldseam/profile/unit"

import "testing"

func TestMeaning(t *testing.T) {
	for _, c := range []struct {
		name string
		what Quantity
		sure uint8
		unit unit.Unit
	}{
		{"depth", Depth, 2, unit.None}, {"Depth_m", Depth, 2, unit.Metre}, {"Depth (ft)", Depth, 2, unit.Foot}, {"depthM", Depth, 2, unit.Metre},
		{"DEPTHFT", Depth, 2, unit.Foot}, {"dep", Depth, 2, unit.None}, {"d", Depth, 1, unit.None}, {"z [cm]", Depth, 1, unit.Centimetre}, {"m", Depth, 1, unit.Metre},
		{"temp", Temp, 2, unit.None}, {"bufferTemp", Temp, 2, unit.None}, {"Temp_C", Temp, 2, unit.Celsius}, {"tempF", Temp, 2, unit.Fahrenheit},
		{"temp \xc2\xb0F", Temp, 2, unit.Fahrenheit}, {"T1", Temp, 1, unit.None}, {"t_c", Temp, 1, unit.Celsius}, {"Temperature of sensor 1 is", Temp, 2, unit.None},
		{"DS18B20", Temp, 2, unit.None}, {"C", Temp, 1, unit.Celsius}, {"water.temp", Temp, 2, unit.None},
		{"pressure", Pressure, 2, unit.None}, {"P_hPa", Pressure, 1, unit.Hectopascal}, {"presshPa", Pressure, 2, unit.Hectopascal}, {"pressureKPa", Pressure, 2, unit.Kilopascal},
		{"mbar", Pressure, 1, unit.Millibar}, {"gauge_bar", Gauge, 2, unit.Bar}, {"depth pressure", Gauge, 2, unit.None},
		{"R", Ohms, 1, unit.None}, {"resistance_ohm", Ohms, 2, unit.Ohm},
		{"Timestamp", Time, 2, unit.None}, {"ms", Time, 1, unit.Millisecond}, {"t_ms", Time, 1, unit.Millisecond}, {"millis", Time, 1, unit.Millisecond}, {"uptime_s", Time, 2, unit.Second},
		{"temp_m", Temp, 2, unit.None}, // the unit does not belong
		{"airTemp", Skip, 2, unit.None}, {"baro hPa", Skip, 2, unit.None}, {"battery", Skip, 2, unit.None}, {"bottom depth", Skip, 2, unit.None},
		{"h", Skip, 0, unit.None}, {"", Skip, 0, unit.None}, {"attempt", Skip, 0, unit.None}, {"depth temp", Skip, 0, unit.None}, {"Tiefe", Skip, 0, unit.None},
	} {
		m := meaningOf([]byte(c.name))
		if m.quantity != c.what || m.sure != c.sure || !m.beside && m.unit != c.unit {
			t.Errorf("%q: %v, sure %d, in %q", c.name, m.quantity, m.sure, m.unit.String())
		}
	}
}

// A unit is the size that its definition says.
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		u       unit.Unit
		v, want float64
	}{
		{unit.Foot, 10, 3.048}, {unit.Inch, 100, 2.54}, {unit.Centimetre, 412, 4.12}, {unit.Millimetre, 4120, 4.12}, // yard and pound agreement of 1959
		{unit.Fahrenheit, 212, 100}, {unit.Kelvin, 273.15, 0},
		{unit.Bar, 1, 1e5}, {unit.Hectopascal, 1, 100}, {unit.Kilopascal, 1, 1000}, {unit.PSI, 1, 6894.757293168361}, // NIST SP 811, table B.8: 6.894 757 E+03 (from memory)
		{unit.Kilohm, 12.5, 12500}, {unit.Millisecond, 1500, 1.5}, {unit.Microsecond, 1500, 0.0015}, {unit.Minute, 2, 120},
	} {
		if got := c.u.SI(c.v); got < c.want-1e-9 || got > c.want+1e-9 {
			t.Errorf("%v %s: %v, want %v", c.v, c.u.String(), got, c.want)
		}
	}
}
