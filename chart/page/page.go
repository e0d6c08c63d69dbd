// Package page writes a page with the pictures of one drop or several, for the phone in the
// boat and for a desk: the numbers first and large, the drawing to scale, then temperature
// against depth, what to confirm at the anchor, the readings as a table and the cautions. A
// page stands alone: it loads nothing from anywhere, and where its script is missing or
// fails it shows the still picture.
//
// It computes no layers and chooses no words of the answer: both come with the figure.
// It fetches no script: the caller hands it over.
package page

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"coldseam/chart"
	"coldseam/profile/plain"
)

// Options are what a page is made of besides its drops.
type Options struct {
	Script   []byte // the echarts script; nil: the page is the still picture
	Licences string // of the script, which must go along with it; "" only where there is no script that asks for any
	Still    []byte // a picture as SVG, shown where there is no script or it fails; nil: none. Upright: a phone is 390 px wide
	Scene    []byte // boat, line and fly of the last drop, drawn to scale, as SVG, for half the width of a desk; nil: none
	Narrow   []byte // the same for a phone held upright; nil: none
	Title    string // of the page; "": that of its last drop
}

// Write writes a page of one drop, or of several to compare, in the order given; with
// several, the answer of the last stands first and the picture is in its units. It
// refuses a figure with a number that is none, a script that is not text, and no drops
// at all. Nothing is written when it fails. The same input gives the same
// bytes on processors of one kind.
func Write(w io.Writer, o Options, drops []chart.Drop) error {
	if len(drops) == 0 {
		return errors.New("no drop to draw")
	}
	for _, d := range drops {
		if err := finite(d); err != nil {
			return fmt.Errorf("%s: %w", plain.Line(d.Title), err)
		}
	}
	v, err := newView(o, drops)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	b.Grow(len(v.Script) + len(v.Data) + len(v.Still) + 1<<15)
	if err := frames().ExecuteTemplate(&b, "page.html", v); err != nil {
		return err
	}
	_, err = w.Write(b.Bytes())
	return err
}
