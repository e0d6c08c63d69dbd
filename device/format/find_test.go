package format

import (
	"strings"
	"testing"
)

func linesOf(text string) (lines [][]byte) {
	for _, s := range strings.SplitAfter(text, "\n") {
		lines = append(lines, []byte(s))
	}
	return lines
}

func texts(l []Layout) string {
	var s []string
	for _, x := range l {
		s = append(s, x.String())
	}
	return strings.Join(s, " | ")
}

// One meaning only: nothing is asked.
func TestFindKnown(t *testing.T) {
	for _, c := range []struct{ text, layout, why string }{
		// Names and units.
		{"depth_m,temp_c\n12.4,18.31\n", "depth m, temp C", "header row"},
		{"Temp (F);Depth (ft)\n64,5;12,4\n", "temp F, depth ft", "header row"},
		{"Depth,Temp\n12.4 ft,64.5 F\n12.5 ft,64.4 F\n", "depth ft, temp F", "header row"},
		{"Timestamp,Depth_m,Temp_C\n2024-07-01 12:00:05,12.4,18.31\n", "skip, depth m, temp C", "header row"},
		{"ms,depth_cm,temp\n1000,420,18.3\n2000,430,18.2\n", "time ms, depth cm, temp C", "up to 18.3, can only be in C"},
		{"tempF\tdepthM\n64.5\t4.2\n", "temp F, depth m", "header row"},
		{"date\ttime\tbaro hPa\tdepth mm\ttemp C\n1/7/24\t3:05\t1013\t4200\t18\n", "skip, skip, skip, depth mm, temp C", "header row"},
		{"Temp: 18.31 C, Depth: 4.2 m\nTemp: 18.31 C, Depth: 4.2 m\n", "Temp: temp C, Depth: depth m", "name their values"},
		{"T=18.3 D=4.2m\nT=18.3 D=4.2m\n", "T: temp C, D: depth m", "name their values"},
		{"18.31 C,4.2 m\n18.31 C,4.2 m\n", "temp C, depth m", "units on the lines"},
		{"18.31,C,4.2,m\n18.31,C,4.2,m\n", "temp C, depth m", "units on the lines"},
		{"Pressure = 1413.2hPa  depth = 4120mm\nTemp = 18.3\nPressure = 1413.2hPa  depth = 4120mm\nTemp = 18.3\n", "depth: depth mm, Temp: temp C", "name"},
		{`{"t":18.3,"depth_m":4.2}` + "\n" + `{"t":18.3,"depth_m":4.2}`, "t: temp C, depth_m: depth m", "name"},
		{`{"t":12345,"probe":{"temp_c":"18.3","depth_m":4.2}}` + "\n" + `{"t":12445,"probe":{"temp_c":"18.3","depth_m":4.2}}`, "probe.temp_c: temp C, probe.depth_m: depth m", "name"},
		{"airtemp=25 watertemp=18.3 h=50\nairtemp=25 watertemp=18.3 h=50\n", "watertemp: temp C", "name"},
		{"Temp: 18.3\xb0C batt: 3.7V\nTemp: 18.3\xb0C batt: 3.7V\n", "Temp: temp C", "name"},
		{"Depth (m):\n4.20\nTemp:\n18.3\n-----\nDepth (m):\n4.20\nTemp:\n18.3\n", "Depth: depth m, Temp: temp C", "name"},
		// Numbers that can be one thing only.
		{"18.31\n18.25\n", "temp C", "one number a line is a temperature"},
		{"<18.31>\n<18.25>\n", "temp C", "one number"},
		{"64.5\n65.0\n", "temp F", "up to 65, can only be in F"},
		{"2024-07-01 12:00:05,18.31\n2024-07-01 12:00:06,18.31\n", "skip, temp C", "one way only"},
		{"2024-07-01\t12:00:05\t18.31\n2024-07-01\t12:00:06\t18.31\n", "skip, skip, temp C", "one way only"},
		{"1720000000,18.3\n1720000001,18.3\n", "time s, temp C", "counts up"},
		{"bufferTemp 1834;\nbufferTemp 1835;\n", "bufferTemp: temp C/100", "1834 is read as 18.34"},
		{"T1834\nT1835\n", "T: temp C/100", "1834 is read as 18.34"},
		{"temp_f: 6450\ntemp_f: 6440\n", "temp_f: temp F/100", "6450 is read as 64.5"},
		{"0191\n01A0\n", "word", "hexadecimal"},
		{"91 01 4B 46 7F FF 0F 10 25\n91 01 4B 46 7F FF 0F 10 25\n", "word", "hexadecimal"},
		{"R=12490\nR=12480\n", "R: ohms", "name"},
		{"P:1.0123\nT:18.3\nP:1.0123\nT:18.3\n", "P: pressure bar, T: temp C", "near the air's, so absolute"},
		{"pressure_hpa,temp_c\n1009,18.3\n1013,18.3\n1110,18\n", "pressure hPa, temp C", "absolute"},
		{"pressure_bar,temp_c\n0.002,18.3\n0.1,18.2\n", "gauge bar, temp C", "near zero"},
		{"gauge_bar,temp_c\n0.5,18.3\n", "gauge bar, temp C", "header row"},
		{"1001,1001,18 C,4 m\n1002,1001,18 C,4 m\n1003,1002,18 C,4 m\n", "skip, skip, temp C, depth m", "units on the lines"},
		{"uptime,temp,depth_m\n61,18.3,4\n62,18.3,4\n", "skip, temp C, depth m", "header row"},
		{"t,temp,depth_m\n1000,18.3,4\n2000,18.3,4\n3000,18.3,4\n", "time ms, temp C, depth m", "header row"},
		{"Temperature of sensor 1 (index 0) is: 18.31\nTemperature of sensor 1 (index 0) is: 18.25\n", "Temperature of sensor 1 (index 0) is: temp C", "name"},
		{"Temp: 18.31 *C Depth: 4.2 m\nTemp: 18.31 *C Depth: 4.2 m\n", "Temp: temp C, Depth: depth m", "name"},
		{"presshPa=1009 temp=18\npresshPa=1010 temp=18\n", "presshPa: pressure hPa, temp: temp C", "absolute"},
		{"log: 18.3 C, 4.2 m\nlog: 18.2 C, 4.2 m\n", "log: temp C, depth m", "units on the lines"},
		// Noise decides nothing.
		{"8.3\n18.31,4.2 m\n18.31,4.2 m\n", "temp C, depth m", "one way only"},
		{"\x00\xff\xfe\nets Jun  8 2016 00:22:57\nrst:0x1 (POWERON_RESET),boot:0x13\nReady: 1\n18.31\n18.25\n", "temp C", "one number"},
		{"4.2,18\n18.31\n18.25\n18.2\n", "temp C", "one number"},
		{"# depth_m,temp_c\n18.31\n18.25\n", "temp C", "one number"},
		{"185.00\n64.40\n64.35\n-196.60\n64.31\n", "temp F", "up to 64.4"}, // the same two faults in F
		{"-127.00\n85.00\n18.31\nERROR\n18.25\n", "temp C", "up to 18.31"},
		{"18.31,\n18.25,\n", "temp C", "one number"},
		{"$YXMTW,17.9,C*1D\n$YXMTW,17.9,C*1D\n", "nmea", "NMEA"},
		{"$YXMTW,17.9,C*1D\n18.31\n$YXMTW,17.9,C*1D\n18.2\n", "temp C", "one number"},
	} {
		f := Find(linesOf(c.text))
		if !f.Known || f.Layout.String() != c.layout || len(f.Choices) > 0 || !strings.Contains(f.Why, c.why) {
			t.Errorf("%q: known %v as %v, why %q, choices %v", c.text, f.Known, f.Layout, f.Why, texts(f.Choices))
		}
		if f.NMEA != strings.Contains(c.text, "$") {
			t.Errorf("%q: NMEA %v", c.text, f.NMEA)
		}
	}
}

// More than one meaning: all that is offered has its units, and nothing is chosen.
func TestFindChoices(t *testing.T) {
	for _, c := range []struct{ text, choices, why string }{
		{"12.4,18.31\n12.5,18.2\n", "depth m, temp C | temp C, depth m | depth ft, temp C | temp C, depth ft | depth cm, temp C | temp C, depth cm", "which value is the depth"},
		{"<4.2,18.31>\n<4.2,18.31>\n", "depth m, temp C | temp C, depth m | depth ft, temp C | temp C, depth ft | depth cm, temp C | temp C, depth cm", "which value is the depth"},
		{"T=18.3 D=4.2\nT=18.4 D=4.3\n", "T: temp C, D: depth m | T: temp C, D: depth ft | T: temp C, D: depth cm", "the unit of the depth"},
		{"depth,temp_c\n4.2,18.3\n", "depth m, temp C | depth ft, temp C | depth cm, temp C", "the unit of the depth"},
		{"D,4.21\nT,18.3\nD,NaN\nT,18.3\nD,4.3\nT,18.2\n", "D: depth m, T: temp C | D: depth ft, T: temp C | D: depth cm, T: temp C", "the unit of the depth"},
		{"1000,4.2,18.3\n2000,4.2,18.3\n3001,4.4,18.2\n", "time ms, depth m, temp C | time ms, temp C, depth m | time ms, depth ft, temp C | time ms, temp C, depth ft | time ms, depth cm, temp C | time ms, temp C, depth cm", "which value"},
		{"1000,18.3\n2000,18.4\n3000,18.2\n", "time ms, temp C | depth cm, temp C | depth mm, temp C", "which value is the depth"},
		{"250,18.3\n251,18.4\n", "depth cm, temp C | depth mm, temp C | depth ft, temp C", "the unit of the depth"},
		{"34.5\n33.1\n", "temp C | temp F", "the unit of the temperature"},
		{"1834\n1835\n", "temp C/100 | ohms", "the unit of the temperature"},
		{"183\n184\n", "temp C/100 | temp C/10 | temp C/16", "the unit of the temperature"},
		{"0191\n0190\n", "word | temp C/100 | temp C/10 | temp C/16", "the unit of the temperature"},
		{"temp1=18 temp2=19\ntemp1=18 temp2=19\n", "temp1: temp C | temp2: temp C", "which value is the temperature"},
		{"18.31 C,4.2\n18.31 C,4.3\n", "temp C, depth m | temp C, depth ft | temp C, depth cm | temp C, skip", "which value is the depth"},
		{"pressure_hpa,temp_c\n1413,18.3\n", "pressure hPa, temp C | gauge hPa, temp C", "whether the pressure holds the air's"},
		{"P=270.5 temp=211\nP=271.5 temp=212\n", "P: gauge hPa, temp: temp C/100 | P: gauge hPa, temp: temp C/10 | P: gauge hPa, temp: temp C/16 | P: pressure kPa, temp: temp C/100 | P: pressure kPa, temp: temp C/10 | P: pressure kPa, temp: temp C/16", "whether the pressure holds the air's"},
		{"1013.2,18.3\n1014.2,18.3\n", "depth cm, temp C | depth mm, temp C | pressure hPa, temp C", "the unit of the depth"},
		{"log: 4.2, 18.3\nlog: 4.3, 18.3\n", "log: depth m, temp C | log: temp C, depth m | log: depth ft, temp C | log: temp C, depth ft | log: depth cm, temp C | log: temp C, depth cm", "which value"},
		{"Sensor 1: 18.31\nSensor 1: 18.25\n", "Sensor 1: temp C", "the name does not say"},
		{"Temp C: 18.31 Temp F: 64.96\nTemp C: 18.31 Temp F: 64.96\n", "Temp C: temp C | Temp F: temp F", "which value is the temperature"},
		{"1001,4.2,18.3\n1002,4.2,18.3\n1003,4.2,18.3\n", "skip, depth m, temp C | skip, temp C, depth m | skip, depth ft, temp C | skip, temp C, depth ft | skip, depth cm, temp C | skip, temp C, depth cm", "which value"},
		{"temp: 6450\ntemp: 6440\n", "temp: temp F/100 | temp: temp C/1000", "the unit of the temperature"},
		{"D,NaN\nT,18.3\nD,NaN\nT,18.3\n", "T: temp C", "a fault on every line"},
		{"4.2,-127.00\n4.3,-127.00\n", "temp C, skip", "a fault on every line"},
		{"12001,4 m,71.7 F\n12501,5 m,71.6 F\n13001,6 m,127.5\n", "temp C/1000, depth m, skip", "by its name or unit cannot be that of water"},
		{"18.31,OK,250\n18.31,OK,251\n", "temp C, depth cm | temp C, depth mm | temp C, depth ft", "the unit of the depth"},
	} {
		f := Find(linesOf(c.text))
		if f.Known || texts(f.Choices) != c.choices || !strings.Contains(f.Why, c.why) {
			t.Errorf("%q: known %v as %v, why %q, choices\n%v", c.text, f.Known, f.Layout, f.Why, texts(f.Choices))
		}
	}
}

// Nothing that could be read: nothing is offered, and why is said.
func TestFindNothing(t *testing.T) {
	for _, c := range []struct{ text, why string }{
		{"", "no two lines agree"}, {"18.31\n", "no two lines agree"}, {"18.31\n4.2,18.3\n", "no two lines agree"},
		{"-127.00\n-127.00\n", "no value that can be a temperature"}, {"1013.2\n1013.1\n", "no value that can be a temperature"},
		{"Pressure = 1413.2hPa  depth = 4120mm\nPressure = 1413.2hPa  depth = 4120mm\n", "no value that can be a temperature"},
		{"hello\nworld\n", "no two lines agree"}, {"\xff\x00\x12\n\xff\x00\x12\n", "no two lines agree"},
		{"depth_m,temp_c\n", "no two lines agree"}, {"XMTW,17.9,C*1D\n", "no two lines agree"},
		{"Battery: 3.7\nBattery: 3.7\n", "no value that can be a temperature"},
		{"air temp: 18.3\nair temp: 18.3\n", "no value that can be a temperature"},
	} {
		f := Find(linesOf(c.text))
		if f.Known || len(f.Choices) > 0 || !strings.Contains(f.Why, c.why) {
			t.Errorf("%q: known %v as %v, why %q, choices %v", c.text, f.Known, f.Layout, f.Why, texts(f.Choices))
		}
	}
}

func BenchmarkFind(b *testing.B) {
	for _, c := range []struct{ name, text string }{
		{"one number", "18.31\n18.25\n"},
		{"named", "Temp: 18.31 C, Depth: 4.2 m\nTemp: 18.31 C, Depth: 4.2 m\n"},
		{"many columns", strings.Repeat("12 13 14 15 16 17 18 19 20 21 22 23 24 25 26 27 28 29 30\n", 2)},
	} {
		b.Run(c.name, func(b *testing.B) {
			lines := linesOf(strings.Repeat(c.text, 25))
			for b.Loop() {
				Find(lines)
			}
		})
	}
}
