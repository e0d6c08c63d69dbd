package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"coldseam/profile/plain"
)

// output is standard output, whose errors say so.
type output struct{ io.Writer }

func (o output) Write(p []byte) (int, error) {
	n, err := o.Writer.Write(p)
	if err != nil {
		err = fmt.Errorf("standard output cannot be written: %s", cause(err))
	}
	return n, err
}

// longestError is the most characters of an error's line; of a longer one the middle,
// where a text that somebody wrote stands, is left out.
const longestError = 600

func oneLine(err error) string {
	text := strings.Join(strings.FieldsFunc(err.Error(), func(r rune) bool { return r == '\n' || r == '\r' }), "; ")
	r := []rune(plain.Line(text))
	if n := len(r) - longestError; n > 0 {
		half := longestError / 2
		return string(r[:half]) + " ... " + string(r[half+n:])
	}
	return string(r)
}

// tell keeps a line for standard error until all went well: an error is one line.
func (p *program) tell(format string, args ...any) {
	p.told = append(p.told, fmt.Sprintf(format, args...))
}

// json prints one object, or a list, on a line of its own.
func (p *program) json(v any) error {
	data, err := jsonLine(v)
	p.out.Write(data)
	return err
}

// jsonLine is one object, or a list, on a line of its own.
func jsonLine(v any) ([]byte, error) {
	var data bytes.Buffer
	e := json.NewEncoder(&data)
	e.SetEscapeHTML(false) // the sources hold an "&"
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return plain.JSON(data.Bytes()), nil
}
