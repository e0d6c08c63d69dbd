package settings

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// contents are the keys and tables of a file, in its order: found by a walk through it,
// since the decoder tells where a value stands that it refuses itself, but not where one
// stands that is refused afterwards.
type contents struct {
	data   []byte
	found  []found
	long   *Error // the first text that is longer, or table that is one more, than may be
	broken bool   // the end was not reached: it is no TOML
}

// found is a key or a table: "rod", "probe.air", "fish.1" (the second [[fish]]) or
// "fish.1.comfort".
type found struct {
	path  string
	at    int    // its first byte
	bare  bool   // its value is a number, true or false
	table bool   // it is the head of a table, [probe] or [[fish]]
	lines bool   // it has lines of its own: it stands in no {...}
	value int    // the first byte of a key's value
	text  string // of a value that is a text, a number, true or false, without its quotes
	end   int    // the byte behind it
	// element says that it is one of several values, and at the value's own first byte.
	element bool
}

// in is the path of a key of the n-th table of a kind, from 0.
func in(table string, n int, key string) string { return fmt.Sprintf("%s.%d.%s", table, n, key) }

// keyOf is the key in a path, for a part of a figure that of the figure; the table where
// there is none.
func keyOf(path string) string {
	parts := slices.DeleteFunc(strings.Split(path, "."), func(part string) bool {
		_, err := strconv.Atoi(part)
		return err == nil
	})
	return parts[min(1, len(parts)-1)]
}

// walk finds the keys of a file, as far as it is TOML.
func walk(data []byte) *contents {
	c := &contents{data: data}
	p := &unstable.Parser{}
	p.Reset(data)
	inside, tables := "", map[string]int{}
	for p.NextExpression() {
		e := p.Expression()
		if e.Kind == unstable.KeyValue {
			i := len(c.found)
			c.value(inside, e)
			c.found[i].lines = true
			continue
		}
		at, end, path := written(e)
		if table, part, ok := strings.Cut(path, "."); ok && tables[table] > 0 { // [fish.optimum]
			path = in(table, tables[table]-1, part)
		} else if e.Kind == unstable.ArrayTable {
			path = c.table(path, tables[path], at)
			tables[table]++
		}
		c.found = append(c.found, found{path: path, at: at, end: end, table: true, lines: true})
		inside = path + "."
	}
	c.broken = p.Error() != nil
	return c
}

// written gives the first byte of a key, the byte behind it and its parts, in small letters
// as the decoder takes them.
func written(e *unstable.Node) (at, end int, path string) {
	var parts []string
	for it := e.Key(); it.Next(); {
		if parts == nil {
			at = int(it.Node().Raw.Offset)
		}
		parts = append(parts, strings.ToLower(string(it.Node().Data)))
		end = int(it.Node().Raw.Offset + it.Node().Raw.Length)
	}
	return at, end, strings.Join(parts, ".")
}

// value takes a key and what is written for it: tables in one line, stock = [{...}], are
// tables like others.
func (c *contents) value(inside string, e *unstable.Node) {
	at, behind, path := written(e)
	path = inside + path
	v := e.Value()
	c.found = append(c.found, found{
		path: path, at: at, bare: v.Kind == unstable.Integer || v.Kind == unstable.Float || v.Kind == unstable.Bool,
		value: len(c.data) - len(bytes.TrimLeft(c.data[behind:], "= \t")), end: int(e.Raw.Offset + e.Raw.Length),
		text: string(v.Data),
	})
	switch v.Kind {
	case unstable.String:
		c.text(at, path, v)
	case unstable.InlineTable:
		c.values(path+".", v)
	case unstable.Array:
		n := 0
		for it := v.Children(); it.Next(); n++ {
			switch it.Node().Kind {
			case unstable.InlineTable:
				c.values(c.table(path, n, at)+".", it.Node())
			case unstable.String: // each row of a table of depths is named by its own line
				c.found = append(c.found, found{path: c.table(path, n, at), at: int(it.Node().Raw.Offset), element: true})
				c.text(at, path, it.Node())
			default:
				c.found = append(c.found, found{path: c.table(path, n, at), at: at, bare: true, element: true})
			}
		}
	}
}

// text refuses one that is too long.
func (c *contents) text(at int, path string, v *unstable.Node) {
	if len([]rune(string(v.Data))) > maxText {
		c.tooLong(at, keyOf(path), fmt.Errorf("is longer than %d letters: shorten it", maxText))
	}
}

func (c *contents) values(inside string, table *unstable.Node) {
	for it := table.Children(); it.Next(); {
		c.value(inside, it.Node())
	}
}

// table is the path of the n-th table of a kind, and refuses one too many.
func (c *contents) table(kind string, n, at int) string {
	if n == maxTables {
		c.tooLong(at, kind, fmt.Errorf("more than %d of [[%s]]: leave some out", maxTables, kind))
	}
	return kind + "." + strconv.Itoa(n)
}

func (c *contents) tooLong(at int, key string, err error) {
	if c.long == nil {
		c.long = &Error{Line: c.row(at), Key: key, Err: err}
	}
}

// line is the line of a path, from 1, that of its table where the key is not there.
func (c *contents) line(path string) int {
	for ; path != ""; path = path[:max(0, strings.LastIndex(path, "."))] {
		if i := slices.IndexFunc(c.found, func(f found) bool { return f.path == path }); i >= 0 {
			return c.row(c.found[i].at)
		}
	}
	return 1
}

// row is the line of a byte, from 1.
func (c *contents) row(at int) int { return bytes.Count(c.data[:at], []byte("\n")) + 1 }
