package expect

import (
	"bytes"
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
)

// Rows reads testdata/file, without its first line, which names the columns.
func Rows(tb testing.TB, file string) [][]string {
	tb.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", file))
	if err != nil {
		tb.Fatal(err)
	}
	return rows(tb, text)
}

func rows(tb testing.TB, text []byte) [][]string {
	tb.Helper()
	all, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(all) < 2 {
		tb.Fatalf("%d lines, %v", len(all), err)
	}
	return all[1:]
}

// Number reads a number of a table.
func Number(tb testing.TB, s string) float64 {
	tb.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		tb.Fatal(err)
	}
	return v
}

// Remade makes testdata/file again with testdata/script, where a python3 with scipy is
// installed, and compares: the columns of exact as text, the others by near.
func Remade(tb testing.TB, script, file string, exact []int, near func(what string, got, want float64)) {
	tb.Helper()
	RemadeWith(tb, "scipy", script, file, exact, near)
}

// RemadeWith is Remade with other modules of Python.
func RemadeWith(tb testing.TB, modules, script, file string, exact []int, near func(what string, got, want float64)) {
	tb.Helper()
	python := Python(tb, modules)
	cmd := exec.Command(python, "-B", script)
	cmd.Dir = "testdata"
	made, err := cmd.Output()
	if err != nil {
		tb.Fatal(err)
	}
	got, want := rows(tb, made), Rows(tb, file)
	if len(got) != len(want) {
		tb.Fatalf("%s gives %d lines, %s has %d", script, len(got), file, len(want))
	}
	same := map[int]bool{}
	for _, j := range exact {
		same[j] = true
	}
	for i, row := range want {
		for j := range row {
			what := file + ", line " + strconv.Itoa(i+2)
			switch {
			case !same[j]:
				near(what, Number(tb, got[i][j]), Number(tb, row[j]))
			case got[i][j] != row[j]:
				tb.Errorf("%s: %q, the file has %q", what, got[i][j], row[j])
			}
		}
	}
}
