package page

import (
	"bytes"
	"errors"
	"fmt"
	"html/template"
	"io"
	"strings"

	"coldseam/chart"
	"coldseam/profile"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// seasonView is what the season's frame is filled with.
type seasonView struct {
	head
	Depth, Temp string // units
	Wide        template.URL
	Upright     template.Srcset
	Rows        []seasonRow
	Last        sheet
	Words       []string // what changed
	Says        string   // for those who see no picture
}

// seasonRow is one drop: its top and bottom temperature, and the depths of its layers.
type seasonRow struct {
	Date, Top, Bottom, Mixed, Metalimnion, Thermocline, Band string
}

// WriteSeason writes a page of one water over its dates: the still pictures, one for a
// desk and one for a phone held upright, as SVG; the layers of each drop as a table; and
// the answer of the last drop. It has no script, asks for nothing and refuses what Write
// refuses.
func WriteSeason(w io.Writer, wide, upright []byte, s chart.Season) error {
	if len(s.Drops) == 0 || len(wide) == 0 || len(upright) == 0 {
		return errors.New("no season to draw")
	}
	u := s.Units.Shown()
	var drops []chart.Drop
	for _, d := range s.Drops {
		drops = append(drops, d.Drop)
	}
	title := plain.Line(s.Title)
	v := seasonView{
		head:  head{title, parts(title, drops...), policy(""), template.CSS(styleText)},
		Depth: u.Depth.String(), Temp: u.Temp.String(), Wide: template.URL(picture(wide)), Upright: template.Srcset(picture(upright)),
	}
	for _, d := range s.Drops {
		if err := finite(d.Drop); err != nil {
			return fmt.Errorf("%s: %w", plain.Line(d.Drop.Title), err)
		}
		v.Rows = append(v.Rows, seasonRowOf(d.Drop, u))
	}
	for _, words := range s.Words {
		v.Words = append(v.Words, plain.Line(words))
	}
	v.Last = sheetOf(drops[len(drops)-1])
	v.Says = strings.Join(append([]string{fmt.Sprintf("%d drops; the last: %s", len(drops), v.Last.Says)}, v.Words...), " ")
	var b bytes.Buffer
	if err := frames().ExecuteTemplate(&b, "season.html", v); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}

// picture makes an address of a picture, escaped as little as an attribute needs: base64
// would make it a third longer.
func picture(svg []byte) string {
	return "data:image/svg+xml," + escape.Replace(string(svg))
}

var escape = strings.NewReplacer("%", "%25", "#", "%23", "\"", "%22", "'", "%27", "<", "%3C", ">", "%3E", " ", "%20", "\n", "%0A", "\t", "%09")

func seasonRowOf(d chart.Drop, u unit.System) seasonRow {
	r := seasonRow{Date: plain.Line(d.Date)}
	if n := len(d.Curve); n > 0 {
		r.Top = fmt.Sprintf("%.1f", u.Temp.FromC(d.Curve[0].TempC))
		r.Bottom = fmt.Sprintf("%.1f", u.Temp.FromC(d.Curve[n-1].TempC))
	}
	for _, z := range d.Zones {
		span := u.Mark(z.TopM) + " to " + u.Mark(z.BottomM)
		switch z.Kind {
		case chart.MixedLayer:
			r.Mixed = u.Mark(z.BottomM)
		case chart.Metalimnion:
			r.Metalimnion = span
		case chart.Band:
			r.Band = span
		}
	}
	for _, m := range d.Marks {
		if m.Kind == chart.Thermocline {
			r.Thermocline = u.Mark(m.At.Best) + interval(m.At, u)
		}
	}
	return r
}

// interval is an estimate's interval in brackets, where it shows.
func interval(e profile.Estimate, u unit.System) string {
	if u.Mark(e.Low) == u.Mark(e.High) {
		return ""
	}
	return " (" + u.Mark(e.Low) + " to " + u.Mark(e.High) + ")"
}
