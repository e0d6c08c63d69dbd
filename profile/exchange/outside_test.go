package exchange

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"coldseam/profile/expect"
	"coldseam/profile/notebook"
)

// sample are drops with all that a CSV may stumble over.
func sample(t *testing.T) []Item {
	t.Helper()
	var out []Source
	for i, page := range []string{
		"water: Alder Kettle\nspot: =1+1, \"reed\" point\ndate: 2026-07-18 14:20\nunits: ft F\nsecchi: 9 ft\nthermometer: reads 32.5 F in ice water\nmarks at: gunwale 1.5 ft\nline angle: 20\nnote: a; b\nnote: -2+3 c\ncaught: 18:10 rainbow 16 ft black midge\n1.5 73.9\n5 73.4 DO 8.1\n10 65 1/2\n10 66\n15 72\n20 58.1 +-0.5 DO 6.2\n",
		"water: Größe 湖 🐟\ndate: 2026-01-18 09:05\nunits: m C\noxygen: %\n0: -0.3\n1 2.0 DO 95\n2 4\n",
		"date: 2026-05-01\nunits: m C\n",
	} {
		sheets, err := notebook.Read([]byte(page), notebook.Options{Unread: true})
		if err != nil {
			t.Fatal(err)
		}
		file := []string{"2026-07-18-14-20-alder-kettle.txt", "a winter's day.txt", "may.txt"}[i]
		out = append(out, Source{Page: file, Nth: 1, Drop: sheets[0].Drop})
	}
	items, err := Items(out)
	if err != nil {
		t.Fatal(err)
	}
	return items
}

// forms are the CSVs of the sample.
func forms(t *testing.T) map[string][]byte {
	t.Helper()
	items := sample(t)
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	var long, wide, agency bytes.Buffer
	if err := WriteLong(&long, items, zone); err != nil {
		t.Fatal(err)
	}
	if lost, err := WriteWide(&wide, items, zone); lost != 1 || err != nil {
		t.Fatal(lost, err)
	}
	if err := (Agency{Zone: zone}).Write(&agency, items); err != nil {
		t.Fatal(err)
	}
	return map[string][]byte{"long": long.Bytes(), "wide": wide.Bytes(), "agency": agency.Bytes()}
}

func rowsOf(t *testing.T, data []byte) [][]string {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// TestPython: Python's csv, in its strict mode, reads the same cells.
func TestPython(t *testing.T) {
	python := expect.Python(t, "csv")
	for name, data := range forms(t) {
		cmd := exec.Command(python, "-c", "import csv, io, json, sys; print(json.dumps(list(csv.reader(io.TextIOWrapper(sys.stdin.buffer, 'utf-8', newline=''), strict=True))))")
		cmd.Stdin = bytes.NewReader(data)
		out, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		var got [][]string
		if err := json.Unmarshal(out, &got); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(rowsOf(t, data), got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

// TestDuckDB: so does DuckDB, which finds numbers, dates and times by itself.
func TestDuckDB(t *testing.T) {
	module := os.Getenv("COLDSEAM_DUCKDB")
	if module == "" {
		expect.Missing(t, "COLDSEAM_DUCKDB names no module of DuckDB: see .ci/run")
	}
	want := map[string]map[string]string{
		"long":   {"date": "DATE", "depth": "DOUBLE", "temp": "DOUBLE", "depth_corrected_m": "DOUBLE", "temp_corrected_c": "DOUBLE", "do_mgl": "DOUBLE", "secchi_ft": "BIGINT", "lake": "VARCHAR", "comments": "VARCHAR"},
		"wide":   {"date": "DATE", "temp_f_5ft": "DOUBLE", "temp_c_0m": "DOUBLE", "do_mgl_5ft": "DOUBLE"},
		"agency": {"Activity Start Date": "DATE", "Activity Depth/Height Measure": "DOUBLE", "Result Value": "DOUBLE", "Result Comment": "VARCHAR"},
	}
	for name, data := range forms(t) {
		file := filepath.Join(t.TempDir(), name+".csv")
		if err := os.WriteFile(file, data, 0o600); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command("node", "testdata/read.cjs", module, file).Output()
		if err != nil {
			t.Fatal(err)
		}
		var read struct {
			Types [][2]string
			Text  [][]*string
		}
		if err := json.Unmarshal(out, &read); err != nil {
			t.Fatalf("%v: %s", err, out)
		}
		rows := rowsOf(t, data)
		var got [][]string
		types := map[string]string{}
		heads := make([]string, len(read.Types))
		for i, column := range read.Types {
			heads[i], types[column[0]] = column[0], column[1]
		}
		got = append(got, heads)
		for _, row := range read.Text {
			cells := make([]string, len(row))
			for i, cell := range row {
				if cell != nil { // an empty cell is none
					cells[i] = *cell
				}
			}
			got = append(got, cells)
		}
		if diff := cmp.Diff(rows, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
		for column, kind := range want[name] {
			if types[column] != kind {
				t.Errorf("%s: %s is %s, want %s", name, column, types[column], kind)
			}
		}
	}
}

// TestForms: the forms as they are written.
func TestForms(t *testing.T) {
	for name, data := range forms(t) {
		file := filepath.Join("testdata", name+".csv")
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), string(data)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", file, diff)
		}
	}
}

// TestAgencyBack: what an agency gets is the corrected drop, and none of it is lost on the
// way but what the columns have no place for.
func TestAgencyBack(t *testing.T) {
	drops, _, err := ReadCSV("agency.csv", bytes.NewReader(forms(t)["agency"]))
	if err != nil {
		t.Fatal(err)
	}
	items := sample(t)
	if len(drops) != 2 { // the third was not measured
		t.Fatalf("%d drops", len(drops))
	}
	for i, d := range drops {
		was := items[i].Drop
		if d.Date != was.Date || d.Secchi != was.Secchi || len(d.Readings) != len(was.Readings) {
			t.Errorf("%+v", d)
			continue
		}
		for k, r := range d.Readings {
			w := was.Readings[k]
			if r.Oxygen != w.Oxygen {
				t.Errorf("oxygen %v, want %v", r.Oxygen, w.Oxygen)
			}
			expect.Near(t, "depth", r.DepthM, w.DepthM, 0.002)
			expect.Near(t, "temperature", r.TempC, w.TempC, 0.003)
		}
	}
}
