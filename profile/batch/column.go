package batch

import (
	"errors"

	"coldseam/profile"
)

// column makes the Column of col, or says what its problem is.
func (c *chunk) column(col *column) (profile.Column, error) {
	if col.problem != "" {
		return profile.Column{}, errors.New(col.problem)
	}
	points := c.points[col.from:col.to]
	if len(points) == 0 {
		return profile.Column{}, errors.New(place(c.name, col.line) + "the profile has no row with a temperature")
	}
	made, err := profile.NewColumn(points)
	if err == nil {
		return made, nil
	}
	for i, p := range points { // which of them is refused
		if _, err := profile.NewColumn([]profile.Point{p}); err != nil {
			return made, errors.New(place(c.name, c.lines[col.from+i]) + err.Error())
		}
	}
	return made, errors.New(place(c.name, col.line) + err.Error())
}
