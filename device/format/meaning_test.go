package format

import "testing"

func TestMeaning(t *testing.T) {
	for _, c := range []struct {
		name string
		what Quantity
		sure uint8
		unit unitID
	}{
		{"depth", Depth, 2, noUnit}, {"Depth_m", Depth, 2, metre}, {"Depth (ft)", Depth, 2, foot}, {"depthM", Depth, 2, metre},
		{"DEPTHFT", Depth, 2, foot}, {"dep", Depth, 2, noUnit}, {"d", Depth, 1, noUnit}, {"z [cm]", Depth, 1, centimetre}, {"m", Depth, 1, metre},
		{"temp", Temp, 2, noUnit}, {"bufferTemp", Temp, 2, noUnit}, {"Temp_C", Temp, 2, celsius}, {"tempF", Temp, 2, fahrenheit},
		{"temp \xc2\xb0F", Temp, 2, fahrenheit}, {"T1", Temp, 1, noUnit}, {"t_c", Temp, 1, celsius}, {"Temperature of sensor 1 is", Temp, 2, noUnit},
		{"DS18B20", Temp, 2, noUnit}, {"C", Temp, 1, celsius}, {"water.temp", Temp, 2, noUnit},
		{"pressure", Pressure, 2, noUnit}, {"P_hPa", Pressure, 1, hectopascal}, {"presshPa", Pressure, 2, hectopascal}, {"pressureKPa", Pressure, 2, kilopascal},
		{"mbar", Pressure, 1, millibar}, {"gauge_bar", Gauge, 2, bar}, {"depth pressure", Gauge, 2, noUnit},
		{"R", Ohms, 1, noUnit}, {"resistance_ohm", Ohms, 2, ohm},
		{"Timestamp", Time, 2, noUnit}, {"ms", Time, 1, millisecond}, {"t_ms", Time, 1, millisecond}, {"millis", Time, 1, millisecond}, {"uptime_s", Time, 2, second},
		{"temp_m", Temp, 2, noUnit}, // the unit does not belong
		{"airTemp", Skip, 2, noUnit}, {"baro hPa", Skip, 2, noUnit}, {"battery", Skip, 2, noUnit}, {"bottom depth", Skip, 2, noUnit},
		{"h", Skip, 0, noUnit}, {"", Skip, 0, noUnit}, {"attempt", Skip, 0, noUnit}, {"depth temp", Skip, 0, noUnit}, {"Tiefe", Skip, 0, noUnit},
	} {
		m := meaningOf([]byte(c.name))
		if m.quantity != c.what || m.sure != c.sure || !m.beside && m.unit != c.unit {
			t.Errorf("%q: %v, sure %d, in %q", c.name, m.quantity, m.sure, units[m.unit].symbol)
		}
	}
}

// A unit is the size that its definition says.
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		u       unitID
		v, want float64
	}{
		{foot, 10, 3.048}, {inch, 100, 2.54}, {centimetre, 412, 4.12}, {millimetre, 4120, 4.12}, // yard and pound agreement of 1959
		{fahrenheit, 212, 100}, {kelvin, 273.15, 0},
		{bar, 1, 1e5}, {hectopascal, 1, 100}, {kilopascal, 1, 1000}, {psi, 1, 6894.757293168361}, // NIST SP 811, table B.8: 6.894 757 E+03 (from memory)
		{kilohm, 12.5, 12500}, {millisecond, 1500, 1.5}, {microsecond, 1500, 0.0015}, {minute, 2, 120},
	} {
		if got := c.u.si(c.v); got < c.want-1e-9 || got > c.want+1e-9 {
			t.Errorf("%v %s: %v, want %v", c.v, units[c.u].symbol, got, c.want)
		}
	}
}
