package format

import (
	"bytes"
	"encoding/json"
	"io"
	"math"
	"strings"

	"coldseam/device/line"
)

// scanJSON takes the values of one JSON object, those of an object inside it named
// "outer.inner". Numbers in quotes are numbers; other text and lists are passed over.
func (s *scanner) scanJSON(b []byte) error {
	s.reset(b)
	broken := func() error { return refuse(line.BadForm, "not a whole JSON object: "+line.Shown(b)) }
	d := json.NewDecoder(bytes.NewReader(b))
	d.UseNumber()
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return broken()
	}
	if err := s.object(d, "", 0); err != nil {
		return broken()
	}
	if _, err := d.Token(); err != io.EOF {
		return broken()
	}
	return nil
}

func (s *scanner) object(d *json.Decoder, path string, depth int) error {
	for d.More() {
		t, err := d.Token()
		if err != nil {
			return err
		}
		key, _ := t.(string)
		name := path + strings.TrimSpace(key)
		if t, err = d.Token(); err != nil {
			return err
		}
		switch t := t.(type) {
		case json.Delim:
			if t == '{' && depth == 0 {
				err = s.object(d, name+".", 1)
			} else {
				err = passOver(d)
			}
			if err != nil {
				return err
			}
		case json.Number:
			s.jsonNumber(name, t)
		case string:
			s.jsonText(name, t)
		case nil:
			s.put(value{kind: fault, name: []byte(name), text: []byte("null")})
		}
	}
	_, err := d.Token() // the closing brace
	return err
}

func (s *scanner) jsonNumber(name string, n json.Number) {
	v := value{name: []byte(name), text: []byte(n)}
	f, err := n.Float64()
	if v.num = f; err != nil || math.IsInf(f, 0) || math.IsNaN(f) {
		v.kind, v.num = bad, 0
	}
	s.put(v)
}

// jsonText reads a text as a plain line would be; one value in it counts.
func (s *scanner) jsonText(name, text string) {
	b := bytes.TrimSpace([]byte(text))
	if garbled(b) {
		s.put(value{kind: bad, name: []byte(name), text: b})
		return
	}
	inner := scanner{hex: s.hex}
	inner.scan(b)
	switch {
	case len(b) == 0:
		s.put(value{kind: empty, name: []byte(name)})
	case len(inner.vals) == 1 && len(inner.vals[0].name) == 0:
		v := inner.vals[0]
		v.name = []byte(name)
		s.put(v)
	}
}

// passOver reads to the end of the list or object that has just begun.
func passOver(d *json.Decoder) error {
	for open := 1; open > 0; {
		t, err := d.Token()
		if err != nil {
			return err
		}
		switch t {
		case json.Delim('{'), json.Delim('['):
			open++
		case json.Delim('}'), json.Delim(']'):
			open--
		}
	}
	return nil
}
