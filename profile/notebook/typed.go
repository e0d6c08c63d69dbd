package notebook

import (
	"slices"

	"coldseam/profile"
	"coldseam/profile/unit"
)

// Set reads a value for a header key into a drop that is being taken, as a flag gives it:
// with no units to fall back on. Where it is refused the drop stays as it was.
func Set(d *profile.Drop, name, value string) error {
	was := *d
	d.Notes, d.Catches = slices.Clip(d.Notes), slices.Clip(d.Catches) // of the caller's other copies
	err := set(d, name, value, unit.System{})
	if err != nil {
		*d = was
	}
	return err
}

// New begins a drop with what headers say, without a page: a later one wins, and one
// without a value says nothing. An error is an *Error with the name From of the header.
func New(headers ...Header) (profile.Drop, error) {
	var d profile.Drop
	for _, h := range headers {
		if h.Value == "" {
			continue
		}
		if err := Set(&d, h.Key, h.Value); err != nil {
			return profile.Drop{}, &Error{Name: h.From, Msg: err.Error(), err: err}
		}
	}
	return d, nil
}

// ReadLine reads one line that was typed while a drop is taken, as a line of its page
// would be read, in the drop's units. What it says of the drop wins over what was noted
// before. at is the depth that was asked for, such as "14 ft": a temperature alone is at
// it; it is empty where no depth was asked for.
//
// The Sheet has the drop as it would be, with the readings of the line alone, and the
// notes of line 1 say how the line was read. Of the options Name, Fish, Waters and Ask
// are used; an error is an *Error, as of Read.
func ReadLine(text, at string, d profile.Drop, o Options) (Sheet, error) {
	if at != "" && TemperatureAlone(text) {
		text = at + ": " + commaBetween().ReplaceAllString(text, "$1.$2") // one number: its comma is a decimal one
	}
	d.Readings, d.Notes, d.Catches = nil, slices.Clip(d.Notes), slices.Clip(d.Catches)
	r := &reader{
		o:      Options{Name: o.Name, Fish: o.Fish, Waters: o.Waters, Ask: o.Ask, Unread: true},
		raw:    split(utf8Of([]byte(text))),
		typed:  true,
		titled: true,
		base:   d,
	}
	sheets, err := r.read()
	if err != nil {
		return Sheet{}, err
	}
	if len(sheets) != 1 {
		return Sheet{}, r.fail(0, "that looks like two drops: one reading a line")
	}
	read := sheets[0]
	for i := range read.Drop.Readings { // there is no page on which it could be looked up
		read.Drop.Readings[i].Line, read.Drop.Readings[i].Text = 0, ""
	}
	return read, nil
}

var (
	temperatureAlone = lazy(`(?i)^[-+]?\d+([.,]\d+)?\s*(°?\s*[fc])?(\s+do\s*[\d.,]+.*)?$`)
	commaBetween     = lazy(`(\d),(\d)`)
)

// TemperatureAlone reports whether a line holds a temperature without its depth, with
// the oxygen or without: 64, 17,8 C, 64 DO 6.1.
func TemperatureAlone(text string) bool { return temperatureAlone().MatchString(text) }
