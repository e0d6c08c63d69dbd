package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldseam/chart/asset"
	"coldseam/profile/expect"
)

// TestChartNumbers: the series of a page are the numbers of plan --json, in the angler's
// units: every reading and its oxygen.
func TestChartNumbers(t *testing.T) {
	noSettings(t)
	for _, name := range []string{"sedge-mere-august", "alder-kettle-july", "marl-hole-july", "long-scar-july"} {
		in := filepath.Join("..", "..", "testdata", name+".txt")
		file := filepath.Join(t.TempDir(), "x.html")
		if status, _, errOut := runWith(t, "", "chart", "-o", file, in); status != 0 {
			t.Fatalf("%s: %s", name, errOut)
		}
		html, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		_, after, found := strings.Cut(string(html), `id="data">`)
		data, _, ended := strings.Cut(after, "</script>")
		if !found || !ended {
			expect.Missing(t, "the script was not fetched, so the page has no series: go generate ./chart/asset")
		}
		if !strings.Contains(string(html), "Copyright 2017-2023 The Apache Software Foundation") || !strings.Contains(string(html), "TERMS AND CONDITIONS FOR USE, REPRODUCTION, AND DISTRIBUTION") {
			t.Errorf("%s: the page has the script without its notice and its licence", name) // Apache License 2.0, section 4
		}
		var page struct {
			Option struct {
				Series []struct {
					ID   string
					Data []json.RawMessage
				}
			}
		}
		if err := json.Unmarshal([]byte(data), &page); err != nil {
			t.Fatal(err)
		}
		_, out, _ := runWith(t, "", "plan", "--json", in)
		var plan struct {
			Readings []struct {
				DepthM float64 `json:"depth_m"`
				TempC  float64 `json:"temp_c"`
				Oxygen float64 `json:"oxygen_mgl"`
			}
		}
		if err := json.Unmarshal([]byte(out), &plan); err != nil {
			t.Fatal(err)
		}
		depth, temp := 1.0, func(c float64) float64 { return c }
		if !strings.HasPrefix(name, "sedge") && !strings.HasPrefix(name, "marl") { // pages in feet and Fahrenheit
			depth, temp = 0.3048, func(c float64) float64 { return c*9/5 + 32 }
		}
		near := func(a, b float64) bool { return math.Abs(a-b) < 0.01 }
		readings, oxygen := 0, 0
		for _, s := range page.Option.Series {
			for _, raw := range s.Data {
				var point struct{ Value []float64 }
				var pair []float64
				switch s.ID {
				case "readings":
					if err := json.Unmarshal(raw, &point); err != nil {
						t.Fatal(err)
					}
					for _, r := range plan.Readings {
						if near(point.Value[0], temp(r.TempC)) && near(point.Value[1], r.DepthM/depth) {
							readings++
						}
					}
				case "oxygen":
					if err := json.Unmarshal(raw, &pair); err != nil {
						t.Fatal(err)
					}
					for _, r := range plan.Readings {
						if near(pair[0], r.Oxygen) && near(pair[1], r.DepthM/depth) {
							oxygen++
						}
					}
				}
			}
		}
		want := 0
		for _, r := range plan.Readings {
			if r.Oxygen > 0 {
				want++
			}
		}
		if readings != len(plan.Readings) || oxygen != want {
			t.Errorf("%s: %d of %d readings and %d of %d of oxygen are in the page as they are in --json", name, readings, len(plan.Readings), oxygen, want)
		}
	}
}

// The whole way from the page of readings to the file: a page of one drop, and a season
// of 60, with the sizes of the files without the script.
func BenchmarkPictures(b *testing.B) {
	b.Setenv("XDG_CONFIG_HOME", b.TempDir())
	season := filepath.Join(b.TempDir(), "season.txt")
	var text strings.Builder
	for i := range 60 {
		day := time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, 3*i)
		fmt.Fprintf(&text, "water: Alder Kettle\ndate: %s\nunits: ft F\nbottom: 31 ft\n", day.Format("2006-01-02"))
		for _, z := range []float64{1, 6, 10, 13, 16, 20, 25, 30} {
			share := float64(i) / 60
			top, bottom, at := 52+22*math.Sin(math.Pi*share), 46+6*share, 8+14*share
			fmt.Fprintf(&text, "%g %.1f\n", z, bottom+(top-bottom)/(1+math.Exp((z-at)/2.4)))
		}
		text.WriteString("\n")
	}
	if err := os.WriteFile(season, []byte(text.String()), 0o644); err != nil {
		b.Fatal(err)
	}
	for _, c := range []struct{ name, command, in string }{
		{"page of one drop", "chart", filepath.Join("..", "..", "testdata", "alder-kettle-july.txt")},
		{"page of a season of 60", "season", season},
	} {
		b.Run(c.name, func(b *testing.B) {
			out := filepath.Join(b.TempDir(), "x.html")
			for b.Loop() {
				if status := run([]string{"coldseam", c.command, "-o", out, c.in}, strings.NewReader(""), io.Discard, io.Discard); status != 0 {
					b.Fatal("status", status)
				}
			}
			html, err := os.ReadFile(out)
			if err != nil {
				b.Fatal(err)
			}
			size := len(html)
			if script := asset.Script(); c.command == "chart" {
				size -= len(script)
			}
			b.ReportMetric(float64(size)/1000, "kB")
		})
	}
}
