package settings

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"coldseam/profile/plain"
)

// decode puts a file into f. An error is one line that names the file, the line, the key
// and what to do.
func decode(name string, c *contents, f *file) error {
	if c.long != nil {
		c.long.Name = name
		return c.long
	}
	err := toml.NewDecoder(bytes.NewReader(c.data)).DisallowUnknownFields().Decode(f)
	var strict *toml.StrictMissingError
	if errors.As(err, &strict) && len(strict.Errors) > 0 {
		row, _ := strict.Errors[0].Position()
		return &Error{Name: name, Line: row, Err: fmt.Errorf("there is no setting %q: write another name, or take it out", plain.Cut(strings.Join(strict.Errors[0].Key(), "."), 60))}
	}
	var refused *toml.DecodeError
	if errors.As(err, &refused) {
		row, _ := refused.Position()
		key, words := c.words(refused)
		return &Error{Name: name, Line: row, Key: key, Err: errors.New(words)}
	}
	for _, k := range c.found { // the decoder takes a number for a length, and refuses true without a place
		if key := keyOf(k.path); k.bare && !unquoted[key] {
			return &Error{Name: name, Line: c.row(k.at), Key: key, Err: errors.New(mustBe("string"))}
		}
	}
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// unquoted are the keys whose values are no texts.
var unquoted = map[string]bool{
	"flies": true, "x": true, "density": true, "max_flies": true, "added_weight": true, "indicator": true,
	"baud": true, "data_bits": true, "can_vent": true, "teeth": true, "open_water": true, "thermistor": true,
}

// wrongKind is how the decoder says that a value is of another kind than its key takes.
var wrongKind = regexp.MustCompile(`cannot decode TOML .+ into .*of type \*?(\S+)`)

// kinds says how a value of each Go type is written, where that is not a text.
var kinds = map[string]string{
	"int": "a whole number", "float64": "a number", "bool": "true or false", "[]float64": "numbers, [a, b, c]",
	"settings.probe": "a table, [probe]", "[]settings.contour": `texts, ["0 ft 24 acres", "10 ft 17 acres", ...]`,
}

// words are those of the decoder, and the key whose value it refuses: "" where the key itself
// or the TOML is wrong.
func (c *contents) words(refused *toml.DecodeError) (name, msg string) {
	msg = strings.TrimPrefix(refused.Error(), "toml: ")
	switch {
	case strings.HasSuffix(msg, "at start of value"):
		return "", `a value is missing, or has no quotes: write e.g. rod = "9 ft"`
	case len(refused.Key()) == 0:
		return "", msg
	}
	var key found
	for _, k := range c.found {
		if k.at <= c.offset(refused.Position()) {
			key = k
		}
	}
	if key.at == c.offset(refused.Position()) && !key.element {
		return "", msg
	}
	if m := wrongKind.FindStringSubmatch(msg); m != nil {
		msg = mustBe(m[1])
	}
	return keyOf(key.path), msg
}

// offset is the byte at a row and a column, both from 1.
func (c *contents) offset(row, column int) int {
	at := 0
	for range row - 1 {
		at += bytes.IndexByte(c.data[at:], '\n') + 1
	}
	return at + column - 1
}

// mustBe says how a value of a Go type is written.
func mustBe(goType string) string {
	how, ok := kinds[goType]
	switch {
	case ok:
	case strings.HasPrefix(goType, "[]settings.") || strings.HasPrefix(goType, "[]fish."):
		how = "tables, [[...]]"
	default:
		how = `a text in quotes, "..."`
	}
	return "this setting is written as " + how
}
