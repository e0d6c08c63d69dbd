package notebook

import (
	"errors"

	"coldseam/profile"
)

// ErrNotOne reports that a text is not one reading.
var ErrNotOne = errors.New("this takes one reading, a depth and its temperature")

// ReadOne reads one more reading of a drop, in its units, by the same thermometer and line;
// name is what errors begin with.
func ReadOne(name, text string, d profile.Drop) (profile.Reading, error) {
	sheets, err := Read([]byte(text), Options{Name: name, Flags: []Header{{Key: "units", Value: d.Units.String(), From: "page"}}})
	if err != nil {
		return profile.Reading{}, err
	}
	if len(sheets) != 1 || len(sheets[0].Drop.Readings) != 1 {
		return profile.Reading{}, ErrNotOne
	}
	d.Readings = sheets[0].Drop.Readings
	d.Correct()
	return d.Readings[0], nil
}
