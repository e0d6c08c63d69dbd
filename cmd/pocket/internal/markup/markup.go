// Package markup builds pieces of HTML. It is the one place where text becomes markup:
// whatever is given as a string is shown as text, never read as markup. html/template would
// do this too, but with it the program of the page would be twice as large.
package markup

import (
	"html"
	"strings"

	"coldseam/profile/plain"
)

// Node is an element, a text or a picture.
type Node interface{ write(b *strings.Builder) }

// Attr is an attribute of an element; one without a value is only named.
type Attr struct{ Name, Value string }

type element struct {
	tag   string
	attrs []Attr
	kids  []Node
}

type text string

type picture string

type exact string

// El is an element. What it is given comes in any order: an Attr, a Node, a string (text),
// or a list of nodes. nil is nothing.
func El(tag string, parts ...any) Node {
	e := element{tag: tag}
	for _, p := range parts {
		switch p := p.(type) {
		case nil:
		case Attr:
			e.attrs = append(e.attrs, p)
		case string:
			e.kids = append(e.kids, text(p))
		case Node:
			e.kids = append(e.kids, p)
		case []Node:
			e.kids = append(e.kids, p...)
		default:
			panic("markup: this cannot be shown")
		}
	}
	return e
}

// A is an attribute with a value.
func A(name, value string) Attr { return Attr{name, value} }

// Class is the attribute class.
func Class(names string) Attr { return Attr{"class", names} }

// ID is the attribute id.
func ID(name string) Attr { return Attr{"id", name} }

// Picture is an SVG picture of chart/vector, which is markup already.
func Picture(svg string) Node { return picture(svg) }

// Exact is a text for the hidden elements that are copied, shared and saved, and for fields
// in which a file is changed: its characters stay, also those that could turn or hide others.
func Exact(s string) Node { return exact(s) }

// Pre is a text that keeps its lines.
func Pre(parts ...any) Node { return El("pre", parts...) }

// Write gives nodes as HTML.
func Write(nodes ...Node) string {
	var b strings.Builder
	for _, n := range nodes {
		if n != nil {
			n.write(&b)
		}
	}
	return b.String()
}

func (t text) write(b *strings.Builder) {
	for i, line := range strings.Split(string(t), "\n") { // Line takes a line
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(html.EscapeString(plain.Line(line)))
	}
}

func (x exact) write(b *strings.Builder) { b.WriteString(html.EscapeString(string(x))) }

func (p picture) write(b *strings.Builder) { b.WriteString(string(p)) }

// void are the elements that hold nothing.
var void = map[string]bool{"input": true, "br": true, "hr": true}

func (e element) write(b *strings.Builder) {
	b.WriteString("<" + e.tag)
	for _, a := range e.attrs {
		b.WriteString(" " + a.Name)
		if a.Value != "" {
			b.WriteString(`="` + html.EscapeString(plain.Line(a.Value)) + `"`)
		}
	}
	b.WriteString(">")
	if void[e.tag] {
		return
	}
	if e.tag == "pre" || e.tag == "textarea" {
		b.WriteString("\n") // the first line end in these is not read
	}
	for _, k := range e.kids {
		if k != nil {
			k.write(b)
		}
	}
	b.WriteString("</" + e.tag + ">")
}
