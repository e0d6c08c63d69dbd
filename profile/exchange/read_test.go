package exchange

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coldseam/profile/notebook"
)

// files are tables as people make them, the pages that their drops make, and what is told
// of them. The names of columns are those of ordinary spreadsheets and of the US exchange
// (handbook/angling-practice.md 6), the decimal commas of its section 2.
var files = []struct {
	name, csv string
	pages     []string
	notes     string
}{
	{"long", "depth_m,temp_c\n0,23.1\n1,22.5\n", []string{"units: m C\n0 m: 23.1 C\n1 m: 22.5 C\n"}, ""},
	{"remarks", "depth_m,temp_c,Remarks\n0,23.1,windy\n1,22.5,\n", []string{"units: m C\nnote: windy\n0 m: 23.1 C\n1 m: 22.5 C\n"}, ""},
	{"long, of a spreadsheet", "\ufefflake;site;date;time;Depth (ft);Temp F;do_mgl;secchi_m;comments\r\n" +
		"Alder Kettle;reed point;2026-07-18;14:20;0;73,9;8,1;3,2;\"windy; cold\"\r\n" +
		"Alder Kettle;reed point;2026-07-18;14:20;5;73,4;;3,2;\"a gust\r\nthen calm\"\r\n" +
		"Alder Kettle;reed point;2026-08-01;;0;75;;;\r\n", []string{
		"water: Alder Kettle\nspot: reed point\ndate: 2026-07-18 14:20\nunits: ft F\nsecchi: 3.2 m\nnote: windy; cold\nnote: a gust\nnote: then calm\n0 ft: 73.9 F  DO 8.1 mg/L\n5 ft: 73.4 F\n",
		"water: Alder Kettle\nspot: reed point\ndate: 2026-08-01\nunits: ft F\n0 ft: 75 F\n",
	}, ""},
	{"tabs, in the names' own units", "Depth (m)\tTemp (°C)\tDO (% sat)\taltitude_m\n1,5\t20,25\t100\t570\n", []string{"units: m C\naltitude: 570 m\n1.5 m: 20.25 C  DO 8.439 mg/L\n"},
		"2 oxygen in percent is turned into mg/L at the lake's altitude"},
	{"one-byte degree sign", "depth_ft,Temp (\xb0F)\n5,73.4\n", []string{"units: ft F\n5 ft: 73.4 F\n"}, ""},
	{"units under the names", "depth,temp\nm,C\n0,23\n", []string{"units: m C\n0 m: 23 C\n"}, ""},
	{"units in the cells", "depth,temp\n5 ft,73 F\n1.5 m,22.5 C\n", []string{"units: ft F\n1.5 m: 22.5 C\n5 ft: 73 F\n"}, ""},
	{"units in columns", "depth,depth_unit,temp,temp_unit\n5,ft,73,F\n2,m,22.5,C\n", []string{"units: ft F\n5 ft: 73 F\n2 m: 22.5 C\n"}, ""},
	{"scale by the warmest", "depth_ft,temp\n0,74\n20,39\n", []string{"units: ft F\n0 ft: 74 F\n20 ft: 39 F\n"}, "temperatures read as Fahrenheit: the warmest is 74"},
	{"titles above", "Readings of Alder Kettle, 2026\n\ndepth_m;temp_c;ph\n0;23,5;7\n", []string{"units: m C\n0 m: 23.5 C\n"}, "1 \"Readings of Alder Kettle, 2026\" stands above the columns' names: passed over\n3 column \"ph\" is not known: passed over"},
	{"more decimal commas than semicolons", "depth_m;temp_c;\"do, mg/L\"\n0,5;23,5;8,1\n", []string{"units: m C\n0.5 m: 23.5 C  DO 8.1 mg/L\n"}, ""},
	{"sep=", "sep=;\ndepth_m;temp_c\n0;23\n", []string{"units: m C\n0 m: 23 C\n"}, ""},
	{"unknown, twice, blank", "depth_m,temp_c,temp_f,ph,,bottom\n0,23,73.4,7,,9\n\n,,,,,\n1,NA,,,,\n2,,,,,\n", []string{"units: m C\nbottom: 9 m\n0 m: 23 C\n"},
		"1 column \"temp_f\" is passed over: \"temp_c\" stands before it\n1 column \"ph\" is not known: passed over\n5 a depth without a temperature is passed over, and the oxygen there (and 1 row more)"},
	{"what stands above holds on", "lake,date,depth_ft,temp_f\nAlder Kettle,2026-07-18,0,74\n,,5,73\nMarl Hole,18 July 2026,0,70\n", []string{
		"water: Alder Kettle\ndate: 2026-07-18\nunits: ft F\n0 ft: 74 F\n5 ft: 73 F\n",
		"water: Marl Hole\ndate: 2026-07-18\nunits: ft F\n0 ft: 70 F\n"}, ""},
	{"profiles", "profile,depth_m,temp_c\nP1,0,20\nP2,0,21\nP1,1,19\n", []string{"water: P1\nunits: m C\n0 m: 20 C\n1 m: 19 C\n", "water: P2\nunits: m C\n0 m: 21 C\n"},
		"no column names the lake: the profile's name is taken as the water's"},
	{"a logger", "datetime,depth_m,temp_c\n2026-07-18 14:20:05,0,20\n2026-07-18 14:20:35,1,19\n2026-07-18 14:21:05,2,18\n", []string{"date: 2026-07-18 14:20\nunits: m C\n0 m: 20 C\n1 m: 19 C\n2 m: 18 C\n"},
		"2 rows have times of their own: what goes on downward within 15 minutes is read as one drop"},
	{"two times of a day", "date,time,depth_m,temp_c\n2026-07-18,06:00,0,20\n2026-07-18,06:00,1,19\n2026-07-18,18:00,0,22\n", []string{
		"date: 2026-07-18 06:00\nunits: m C\n0 m: 20 C\n1 m: 19 C\n", "date: 2026-07-18 18:00\nunits: m C\n0 m: 22 C\n"}, ""},
	{"an hour later, further down", "datetime,depth_m,temp_c\n2026-07-18 14:20,0,20\n2026-07-18 15:20,1,19\n", []string{"date: 2026-07-18 14:20\nunits: m C\n0 m: 20 C\n", "date: 2026-07-18 15:20\nunits: m C\n1 m: 19 C\n"}, ""},
	{"at the top again", "datetime,depth_m,temp_c\n2026-07-18 14:20,1,20\n2026-07-18 14:22,0,19\n", []string{"date: 2026-07-18 14:20\nunits: m C\n1 m: 20 C\n", "date: 2026-07-18 14:22\nunits: m C\n0 m: 19 C\n"}, ""},
	{"keys of a page", "depth_ft,temp_f,wind_mph,line_angle,thermometer,for,marks_at\n5,73,8,20,reads 32.5 F in ice water,rainbow,gunwale 1.5 ft\n",
		[]string{"units: ft F\nwind: 8 mph\nline angle: 20\nmarks at: gunwale 1.5 ft\nthermometer: reads 32.5 F in ice water\nfor: rainbow\n5 ft: 73 F\n"}, ""},
	{"restored", "lake,depth_ft,temp_f\n'=1+1 Pond,5,-0.3\n", []string{"water: =1+1 Pond\nunits: ft F\n5 ft: -0.3 F\n"}, ""},
	{"wide, a column a depth", "date,lake,units,0,5,10 ft\n2026-07-18,Alder Kettle,ft F,74,73,70\n2026-08-18,Alder Kettle,ft F,74,,\n", []string{
		"water: Alder Kettle\ndate: 2026-07-18\nunits: ft F\n0 ft: 74 F\n5 ft: 73 F\n10 ft: 70 F\n",
		"water: Alder Kettle\ndate: 2026-08-18\nunits: ft F\n0 ft: 74 F\n"}, ""},
	{"wide, with oxygen", "date,temp_c_0m,temp_c_1.5m,do_mgl_1.5m,do_mgl_3m\n2026-07-18,24,23.5,8,2\n", []string{"date: 2026-07-18\nunits: m C\n0 m: 24 C\n1.5 m: 23.5 C  DO 8 mg/L\n"},
		"2 oxygen at a depth without a temperature is passed over"},
	{"wide, a column a date", "depth_m,2026-07-18,1 August 2026\n0,22,23\n1,21,\n", []string{"date: 2026-07-18\nunits: m C\n0 m: 22 C\n1 m: 21 C\n", "date: 2026-08-01\nunits: m C\n0 m: 23 C\n"},
		"temperatures read as Celsius: the warmest is 23"},
	{"exchange", "Activity ID,Monitoring Location ID,Activity Start Date,Activity Start Time,Activity Start Time Zone,Activity Depth/Height Measure,Activity Depth/Height Unit,Characteristic Name,Result Value,Result Unit,Result Comment\n" +
		"A1,AK1,2026-07-18,14:20,CDT,5,ft,\"Temperature, water\",73.4,deg F,\n" +
		"A1,AK1,2026-07-18,14:20,CDT,5,ft,\"Temperature, water\",73.2,deg F,read again\n" +
		"A1,AK1,2026-07-18,14:20,CDT,5,ft,Dissolved oxygen (DO),8.1,mg/l,\n" +
		"A1,AK1,2026-07-18,14:20,CDT,5,ft,pH,7,None,\n" +
		"A2,AK1,2026-07-18,14:20,CDT,,,\"Depth, Secchi disk depth\",9,ft,\n", []string{"spot: AK1\ndate: 2026-07-18 14:20\nunits: ft F\nsecchi: 9 ft\nnote: 5 ft: read again\n5 ft: 73.4 F  DO 8.1 mg/L\n5 ft: 73.2 F\n"},
		"1 column \"Activity ID\" is passed over: a drop has no place for it\n1 column \"Activity Start Time Zone\" is passed over: a drop has no place for it\n5 results of \"pH\" are passed over"},
	{"exchange, as the portal spells it", "MonitoringLocationIdentifier,ActivityStartDate,ActivityStartTime/Time,ActivityDepthHeightMeasure/MeasureValue,ActivityDepthHeightMeasure/MeasureUnitCode,CharacteristicName,ResultMeasureValue,ResultMeasure/MeasureUnitCode\n" +
		"AK1,2026-07-18,14:20:00,2,m,Dissolved oxygen saturation,100,%\nAK1,2026-07-18,14:20:00,2,m,\"Temperature, water\",20,deg C\n", []string{"spot: AK1\ndate: 2026-07-18 14:20\nunits: m C\n2 m: 20 C  DO 9.092 mg/L\n"},
		"2 oxygen in percent is turned into mg/L at sea level: add a column altitude_m for a high lake"},
}

func TestReadCSV(t *testing.T) {
	for _, f := range files {
		t.Run(f.name, func(t *testing.T) {
			drops, notes, err := ReadCSV("x.csv", strings.NewReader(f.csv))
			if err != nil {
				t.Fatal(err)
			}
			var pages, told []string
			for _, d := range drops {
				pages = append(pages, notebook.Write(d))
			}
			for _, n := range notes {
				told = append(told, strings.TrimPrefix(fmt.Sprint(n.Line, " ", n.Text), "0 "))
			}
			if diff := cmp.Diff(f.pages, pages); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if got := strings.Join(told, "\n"); got != f.notes {
				t.Errorf("told %s\nwant %s", got, f.notes)
			}
		})
	}
}

// What cannot be read is refused by its line, and what has two meanings with both.
func TestReadCSVRefuses(t *testing.T) {
	for csv, want := range map[string]string{
		"":                                      "x.csv: is empty: a first row with the names of the columns is wanted, such as date,depth_ft,temp_f",
		"a,b\n":                                 `x.csv:1: no column is named for the depth: name it depth_ft or depth_m; the row has "a, b"`,
		strings.Repeat("a,", 2001) + "b\n":      "x.csv:1: has more than 2000 columns: is it a table of drops?",
		"depth_m,b\n":                           `x.csv:1: no column is named for the temperature: name it temp_f or temp_c; the row has "depth_m, b"`,
		"depth_m,temp_c\n":                      "x.csv: has no row with a reading under its columns' names",
		"depth_m,temp_c\n1,2O.1\n2,\n-1,4":      `x.csv:2: temp_c: "2O.1" is not a temperature (and 1 row more)`,
		"depth_m,temp_c\n\n-1,4\n":              `x.csv:3: depth_m: "-1": a depth cannot be negative`,
		"depth_m,temp_c\n1001,4\n":              "x.csv:2: depth_m: 1001 m is deeper than any lake that is fished",
		"depth_m,temp_c\n\"1,5\",4\n":           `x.csv:2: depth_m: "1,5" is not a depth`,
		"depth_m,temp_c\n,4\n":                  "x.csv:2: the row has a temperature and no depth",
		"depth_m,temp_c\n5\n":                   "x.csv:2: the row has 1 cell, the row of names has 2",
		"depth_m,temp_c\n5,4,3\n":               "x.csv:2: the row has 3 cells, the row of names has 2",
		"depth_m,temp_c\n1,4\n\"5,3\n6,7":       "x.csv:3: the row is not CSV: a quote stands within a cell, or is not closed",
		"depth,temp_c\n5,4\n":                   "x.csv:2: depth: the depths' unit is not stated: name the column depth_ft or depth_m",
		"0,5\n70,60\n":                          `x.csv:2: the unit of the depth "0" is not stated: name the columns temp_f_5ft or temp_c_1.5m`,
		"depth_m,temp\n5,35\n":                  "x.csv:2: the temperatures' scale is not stated, and the warmest, 35, may be Fahrenheit or Celsius: name the column temp_f or temp_c",
		"date,depth_m,temp_c\n7/8/2026,0,20\n":  `x.csv:2: "7/8/2026" may be 2026-07-08 or 2026-08-07: write one of these; in a spreadsheet, show the whole column so`,
		"depth_m,7/8/2026\n0,20\n":              `x.csv:1: "7/8/2026" may be 2026-07-08 or 2026-08-07: write one of these`,
		"date,depth_m,temp_c\nlast week,0,20\n": `x.csv:2: "last week" is not a date: write e.g. 2026-07-18 14:20`,
		"time,depth_m,temp_c\n14:20,0,20\n":     `x.csv:2: the time "14:20" stands without a date`,
		"date,time,depth_m,temp_c\n2026-07-18,noonish,0,20\n":         `x.csv:2: "noonish" is not a time of day: write e.g. 14:20`,
		"date,time,depth_m,temp_c\n2026-07-18 6:00,14:20,0,20\n":      `x.csv:2: the date "2026-07-18 6:00" has a time, and so has its row: "14:20"`,
		"lake,secchi_m,depth_m,temp_c\nA,3,0,20\nA,4,1,19\n":          `x.csv:3: secchi_m: "4 m" here and "3 m" on line 2, in one drop: give each drop a date, time or site of its own`,
		"drop,date,depth_m,temp_c\nA,2026-07-18,0,20\nA,,1,19\n":      `x.csv:3: the drop "A" is of no date here and of 2026-07-18 on line 2`,
		"secchi_m,depth_m,temp_c\ndeep,0,20\n":                        `x.csv:2: secchi_m: "deep" is not a length: write a length with its unit, e.g. 15 ft or 4.5 m`,
		"depth_m,temp_c,do_mgl\n0,20,95\n":                            "x.csv:2: 95 mg/L of oxygen is more than water holds: name the column do_pct if it is percent",
		"depth_m,temp_c,do_pct\n0,20,950\n":                           "x.csv:2: 950 % of oxygen is more than water holds",
		"depth_m,temp_c,do_pct\n0,0,390\n":                            "x.csv:2: 390 % of oxygen in water of 0 C is more than water holds",
		"depth_m,temp_c,do_mgl\n0,20,-1\n":                            `x.csv:2: do_mgl: "-1" is not an amount of oxygen`,
		"depth_m,temp_c,temp_step\n0,20,-1\n":                         `x.csv:2: "-1" is no error of a temperature`,
		"Characteristic Name,Result Value\n\"Temperature, water\",20": "x.csv:2: the result has no depth",
		"\xff\xfed\x00":  "x.csv: is UTF-16 text: save it as UTF-8 or plain text",
		"PK\x03\x04\x00": "x.csv: is not text",
		"lake,depth_m,temp_c\n" + strings.Repeat("x", 401) + ",0,20": `x.csv:2: lake: "` + strings.Repeat("x", 60) + `..." is longer than 400 letters: shorten it`,
	} {
		drops, _, err := ReadCSV("x.csv", strings.NewReader(csv))
		if err == nil || err.Error() != want || drops != nil {
			t.Errorf("%.60q: %v %v\nwant %s", csv, drops, err, want)
		}
	}
}

// FuzzReadCSV: no table makes it panic, and every drop that is read is one that its page
// holds.
func FuzzReadCSV(f *testing.F) {
	for _, file := range files {
		f.Add(file.csv)
	}
	f.Fuzz(func(t *testing.T, text string) {
		drops, _, err := ReadCSV("x.csv", strings.NewReader(text))
		if err != nil && (drops != nil || strings.ContainsAny(err.Error(), "\n\r")) {
			t.Fatalf("%v: %q", drops, err)
		}
		for _, d := range drops {
			page := notebook.Write(d)
			sheets, err := notebook.Read([]byte(page), notebook.Options{Name: "page", Unread: true})
			if err != nil || len(sheets) != 1 || len(sheets[0].Drop.Readings) != len(d.Readings) {
				t.Fatalf("%v: %d\n%s", err, len(sheets), page)
			}
		}
	})
}
