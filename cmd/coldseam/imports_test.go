package main

import (
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The table of packages in DEVELOPERS.md says of each what it imports of this module, by
// the last part of its path; go list says what it does import. Tests' imports do not count.
func TestImportTable(t *testing.T) {
	doc, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	table := map[string]string{}
	for _, row := range regexp.MustCompile("(?m)^\\| `([a-z/]+)` \\| .* \\| ([a-z, ]+) \\|$").FindAllStringSubmatch(string(doc), -1) {
		table[row[1]] = row[2]
	}
	list := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "coldseam/...")
	list.Stderr = os.Stderr
	out, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		name := strings.TrimPrefix(words[0], "coldseam/")
		var imports []string
		for _, w := range words[1:] {
			if path, ok := strings.CutPrefix(w, "coldseam/"); ok {
				imports = append(imports, path[strings.LastIndex(path, "/")+1:])
				if part, _, _ := strings.Cut(path, "/"); !mayImport(name, part) {
					t.Errorf("%s imports %s", name, path)
				}
			}
		}
		if name == "cmd/coldseam" {
			continue // it ties them all
		}
		said, ok := table[name]
		delete(table, name)
		if said == "nothing" {
			said = ""
		}
		got := strings.FieldsFunc(said, func(r rune) bool { return r == ',' || r == ' ' })
		slices.Sort(got)
		slices.Sort(imports)
		if !ok || !slices.Equal(got, imports) {
			t.Errorf("%s imports %v; the table of DEVELOPERS.md (a row: %v) says %v", name, imports, ok, got)
		}
	}
	for name := range table {
		t.Errorf("the table of DEVELOPERS.md has %s, which is no package", name)
	}
}

// mayImport is the direction that the text over the table gives: profile's packages know
// only each other, device and chart not each other, cmd all.
func mayImport(name, part string) bool {
	from, _, _ := strings.Cut(name, "/")
	return from == part || part == "profile" || part == "internal" || from == "cmd"
}
