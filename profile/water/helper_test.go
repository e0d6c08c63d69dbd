package water

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"coldseam/profile/expect"
)

var near = expect.Near

// table is a committed reference table: rows of fields, by column name.
type table struct {
	column map[string]int
	rows   [][]string
}

// readTable reads testdata/name: a comment, the column names, then the rows.
func readTable(t *testing.T, name string) table {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")
	if len(lines) < 3 || !strings.HasPrefix(lines[0], "# ") {
		t.Fatalf("%s: no comment, column names and rows", name)
	}
	tab := table{column: map[string]int{}}
	for i, c := range strings.Split(lines[1], ",") {
		tab.column[c] = i
	}
	for _, l := range lines[2:] {
		tab.rows = append(tab.rows, strings.Split(l, ","))
	}
	return tab
}

// num returns the number in the named column of row i.
func (tab table) num(t *testing.T, i int, column string) float64 {
	t.Helper()
	c, ok := tab.column[column]
	if !ok {
		t.Fatalf("no column %s", column)
	}
	v, err := strconv.ParseFloat(tab.rows[i][c], 64)
	if err != nil {
		t.Fatalf("row %d, column %s: %v", i, column, err)
	}
	return v
}
