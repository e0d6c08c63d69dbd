package settings

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
)

// Value is a key and what is written for it, without its quotes.
type Value struct{ Key, Value string }

// Set writes one value into the text of a settings file and leaves all else as it stands:
// comments, order, spaces (a byte order mark is left out). path is a key, "rod", or one of the n-th table of a kind, from 0,
// "water.1.max_leader". The value "" takes the key out. Whether the value is one that the
// key takes only Parse tells.
func Set(text, path, value string) (string, error) {
	c, err := walked(text)
	if err != nil {
		return "", err
	}
	quoted, err := literal(keyOf(path), value)
	if err != nil {
		return "", err
	}
	e := &edit{contents: c}
	there := false
	for _, f := range c.found {
		switch {
		case f.path != path || f.table || f.element:
		case value != "":
			there = true
			e.replace(f.value, f.end, quoted)
		case !f.lines:
			return "", inOneLine(path)
		default:
			there = true
			e.cutLines(f.at, f.end)
		}
	}
	if value != "" && !there {
		if err := e.add(path, quoted); err != nil {
			return "", err
		}
	}
	return e.text(), nil
}

// Written is what stands in the text of a settings file for a key, by the paths of Set,
// without its quotes; "" where nothing does. A file that is no TOML is read as far as it is.
func Written(text, path string) (value string) {
	for _, f := range walk([]byte(strings.TrimPrefix(text, "\uFEFF"))).found {
		if f.path == path && !f.table && !f.element {
			value = f.text
		}
	}
	return value
}

// Tables is how many tables of a kind the text of a settings file has.
func Tables(text, table string) (n int) {
	for _, f := range walk([]byte(strings.TrimPrefix(text, "\uFEFF"))).found {
		if f.path == fmt.Sprintf("%s.%d.%s", table, n, keyOf(f.path)) || f.path == fmt.Sprintf("%s.%d", table, n) {
			n++
		}
	}
	return n
}

// Append writes one more table of a kind, [[fly]] or the like, at the end of the text of a
// settings file; values that are "" are left out.
func Append(text, table string, values ...Value) (string, error) {
	c, err := walked(text)
	if err != nil {
		return "", err
	}
	for _, f := range c.found {
		if f.path == table && !f.table { // fly = [{...}]
			return "", inOneLine(table)
		}
	}
	e := &edit{contents: c}
	head := "[[" + table + "]]"
	if len(bytes.TrimSpace(c.data)) > 0 {
		head = e.lineEnd() + head
		if !bytes.HasSuffix(c.data, []byte("\n")) {
			head = e.lineEnd() + head
		}
	}
	lines := []string{head}
	for _, v := range values {
		if v.Value == "" {
			continue
		}
		quoted, err := literal(v.Key, v.Value)
		if err != nil {
			return "", err
		}
		lines = append(lines, v.Key+" = "+quoted)
	}
	return string(c.data) + strings.Join(lines, e.lineEnd()) + e.lineEnd(), nil
}

// Remove takes the n-th table of a kind, from 0, out of the text of a settings file.
// Comments beside its keys go with it, those in lines of their own stay.
func Remove(text, table string, n int) (string, error) {
	c, err := walked(text)
	if err != nil {
		return "", err
	}
	e, path, inside, there := &edit{contents: c}, fmt.Sprintf("%s.%d", table, n), false, false
	for _, f := range c.found {
		if f.path == path && !f.table {
			return "", inOneLine(table)
		}
		if f.table {
			inside = f.path == path || strings.HasPrefix(f.path, path+".")
		}
		if inside && f.lines {
			there = true
			e.cut(c.lineAt(f.at), c.nextLine(f.end))
		}
	}
	if !there {
		return "", fmt.Errorf("the settings have no such [[%s]]", table)
	}
	return e.text(), nil
}

// walked finds what is in a text, or says why it is no settings file.
func walked(text string) (*contents, error) {
	c := walk([]byte(strings.TrimPrefix(text, "\uFEFF")))
	if c.broken {
		if _, err := Parse("settings", []byte(text)); err != nil {
			return nil, err
		}
	}
	return c, nil
}

func inOneLine(path string) error {
	return fmt.Errorf("%s is written within braces, {...}, in the settings file: change it there", keyOf(path))
}

// bareValue is a number, true or false.
var bareValue = regexp.MustCompile(`^[-+0-9a-zA-Z._]+$`)

// literal is a value as TOML has it. The decoder's own package could write it too, but that
// would be linked into the page of the phone for it.
func literal(key, value string) (string, error) {
	if unquoted[key] {
		if value != "" && !bareValue.MatchString(value) {
			return "", fmt.Errorf("%s: %q is not a number", key, value)
		}
		return value, nil
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range value { // what is no UTF-8 becomes the sign for that
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String(), nil
}

// edit is a text while it is changed, from its beginning to its end.
type edit struct {
	*contents
	out  []byte
	done int // what of the text is in out, or was left out
}

func (e *edit) text() string { return string(append(e.out, e.data[e.done:]...)) }

// replace puts a text in the place of that between two bytes.
func (e *edit) replace(from, to int, by string) {
	e.out = append(append(e.out, e.data[e.done:from]...), by...)
	e.done = to
}

// cut leaves lines out, and a blank line that would stand below another.
func (e *edit) cut(from, to int) {
	e.replace(from, to, "")
	above := bytes.TrimRight(e.out, " \t\r")
	rest := bytes.TrimLeft(e.data[to:], " \t\r")
	if (len(above) == 0 || bytes.HasSuffix(above, []byte("\n\n")) || bytes.HasSuffix(above, []byte("\n\r\n"))) && bytes.HasPrefix(rest, []byte("\n")) {
		e.done = len(e.data) - len(rest) + 1
	}
}

// cutLines leaves out a key with its value, and what was its line where nothing is left
// of it.
func (e *edit) cutLines(from, to int) {
	start, next := e.lineAt(from), e.nextLine(to)
	if rest := bytes.TrimSpace(e.data[to:next]); len(rest) == 0 {
		from, to = start, next
	}
	e.replace(from, to, "")
}

// add writes a key that is not there behind the last of its table.
func (e *edit) add(path, quoted string) error {
	table, key := "", path
	if i := strings.LastIndex(path, "."); i >= 0 {
		table, key = path[:i], path[i+1:]
	}
	line, at, inside := key+" = "+quoted+e.lineEnd(), 0, table == ""
	for _, f := range e.found {
		if f.table {
			if inside {
				break
			}
			inside = f.path == table
		}
		if inside && f.lines {
			at = e.nextLine(f.end)
		}
	}
	switch {
	case !inside && at == 0:
		return inOneLine(table)
	case at == 0 && len(bytes.TrimSpace(e.data)) > 0: // above the first table
		line += e.lineEnd()
	case at > 0 && e.data[at-1] != '\n':
		line = e.lineEnd() + line
	}
	e.replace(at, at, line)
	return nil
}

// lineAt is where the line of a byte begins, nextLine where the one below it does.
func (c *contents) lineAt(at int) int { return bytes.LastIndexByte(c.data[:at], '\n') + 1 }

func (c *contents) nextLine(at int) int {
	if i := bytes.IndexByte(c.data[at:], '\n'); i >= 0 {
		return at + i + 1
	}
	return len(c.data)
}

// lineEnd is what ends the lines of the text.
func (c *contents) lineEnd() string {
	if bytes.Contains(c.data, []byte("\r\n")) {
		return "\r\n"
	}
	return "\n"
}
