package settings

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"coldseam/profile/plain"
)

// place is where a key is set: at the head of the file when table is "", else in
// the n-th table of its kind (from 0), [[water]] and the like.
type place struct {
	table string
	n     int
	key   string
}

// line finds the place's line in a file, from 1. A key that is not there is looked
// for at its table's first line; tables written in one line, stock = [{...}], count
// as that line.
func (at place) line(data string) int {
	header := regexp.MustCompile(`(?i)^\s*\[{1,2}\s*["']?` + regexp.QuoteMeta(at.table) + `["']?\s*\]{1,2}`)
	set := func(key string) *regexp.Regexp {
		return regexp.MustCompile(`(?i)^\s*["']?` + regexp.QuoteMeta(key) + `["']?\s*=`)
	}
	key, inOneLine := set(at.key), set(at.table)
	inTable, seen, found := at.table == "", -1, 1
	for i, l := range outsideTexts(data) {
		switch {
		case strings.HasPrefix(strings.TrimSpace(l), "["):
			inTable = false
			if at.table == "" {
				return found
			}
			if header.MatchString(l) {
				if seen++; seen == at.n {
					inTable, found = true, i+1
				}
			}
		case inTable && key.MatchString(l):
			return i + 1
		case at.table != "" && seen < 0 && inOneLine.MatchString(l):
			found = i + 1
		}
	}
	return found
}

// outsideTexts splits a file into lines, those inside a text of several lines left
// blank.
func outsideTexts(data string) []string {
	lines := strings.Split(data, "\n")
	open := ""
	for i, l := range lines {
		if open != "" {
			lines[i] = ""
			if strings.Contains(l, open) {
				open = ""
			}
			continue
		}
		for _, quotes := range []string{`"""`, "'''"} {
			if strings.Count(l, quotes)%2 == 1 {
				open = quotes
			}
		}
	}
	return lines
}

// wrongKind is how the decoder says that a value is of another kind than its key
// takes.
var wrongKind = regexp.MustCompile(`cannot decode TOML (.+) into .*of type \*?(\w+)$`)

// kinds says how a value of each kind is written.
var kinds = map[string]string{
	"string": `a text in quotes, "..."`, "int": "a whole number", "float64": "a number", "bool": "true or false",
}

// decodeError names the line of what TOML could not take.
func decodeError(name string, err error) error {
	var strict *toml.StrictMissingError
	if errors.As(err, &strict) && len(strict.Errors) > 0 {
		row, _ := strict.Errors[0].Position()
		return fmt.Errorf("%s:%d: there is no setting %q; see `coldseam plan --help` or the README for the names", name, row, plain.Cut(strings.Join(strict.Errors[0].Key(), "."), 60))
	}
	var decode *toml.DecodeError
	if !errors.As(err, &decode) {
		return fmt.Errorf("%s: %w", name, err)
	}
	row, _ := decode.Position()
	msg := strings.TrimPrefix(decode.Error(), "toml: ")
	if m := wrongKind.FindStringSubmatch(msg); m != nil && kinds[m[2]] != "" {
		msg = "this setting is written as " + kinds[m[2]]
		if key := decode.Key(); len(key) > 0 {
			msg = key[len(key)-1] + ": " + msg
		}
	}
	return fmt.Errorf("%s:%d: %s", name, row, msg)
}
