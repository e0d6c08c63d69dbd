package settings

import (
	"errors"
	"fmt"
	"strings"

	"coldseam/profile"
	"coldseam/profile/basin"
	"coldseam/profile/unit"
)

// Lake is what was noted of a water beside its rules; unknown or nil what was not.
type Lake struct {
	Water               string
	Latitude, Longitude profile.Optional // degrees, positive to the north and to the east
	LengthM, SecchiM    profile.Optional
	Basin               *basin.Basin // its table of depth and area
	Site                string       // what an agency calls the place where it is measured
}

// LakeFor gives what is noted of a water; the place is that of the whole file where none
// is noted of the water itself. Names are compared without case.
func (s Settings) LakeFor(water string) Lake {
	found := Lake{Water: water}
	for _, l := range s.Lakes {
		if water != "" && strings.EqualFold(strings.TrimSpace(water), strings.TrimSpace(l.Water)) {
			found = l
			break
		}
	}
	if !found.Latitude.Known {
		found.Latitude, found.Longitude = s.Latitude, s.Longitude
	}
	return found
}

// Fill gives a drop the place and the length of its water, where the page does not say
// them; a longitude only with its own latitude.
func (l Lake) Fill(d *profile.Drop) {
	if !d.LakeLength.Known {
		d.LakeLength = l.LengthM
	}
	if !d.Latitude.Known && !d.Longitude.Known {
		d.Latitude, d.Longitude = l.Latitude, l.Longitude
	}
}

// contour is one text of a table of depth and area: "10 ft 17 acres".
type contour basin.Row

// UnmarshalText reads "10 ft 17 acres", "10 ft: 17 acres" or "3 m, 7 ha"; the area may be
// a bare 0.
func (r *contour) UnmarshalText(b []byte) error {
	words := strings.Fields(strings.NewReplacer(":", " ", ";", " ", "=", " ", ", ", " ").Replace(string(b)))
	for i := 1; i < len(words); i++ {
		depth, _, err := unit.ParseLength(strings.Join(words[:i], " "))
		if err != nil {
			continue
		}
		area := 0.0
		if rest := strings.Join(words[i:], " "); rest != "0" {
			if area, err = unit.ParseArea(rest); err != nil {
				continue
			}
		}
		*r = contour{depth, area}
		return nil
	}
	return fmt.Errorf("%q: write a depth and the area of the water there, each with its unit, e.g. \"10 ft 17 acres\"", b)
}

// lake takes what is noted of the i-th water beside its rules.
func (p *parser) lake(i int, w water) {
	l := Lake{Water: w.Name, LengthM: some(float64(w.Length)), SecchiM: some(float64(w.Secchi)), Site: strings.TrimSpace(w.Site)}
	l.Latitude, l.Longitude = p.place(in("water", i, "latitude"), w.Latitude, in("water", i, "longitude"), w.Longitude)
	if len(w.Depths) > 0 {
		rows := make([]basin.Row, len(w.Depths))
		for k, r := range w.Depths {
			rows[k] = basin.Row(r)
		}
		b, err := basin.New(rows)
		var wrong *basin.RowError
		if errors.As(err, &wrong) {
			p.fail(fmt.Sprintf("%s.%d", in("water", i, "depths"), wrong.Row), fmt.Errorf("row %d of the table %w", wrong.Row+1, wrong.Err))
		}
		l.Basin = &b
	}
	p.s.Lakes = append(p.s.Lakes, l)
}

// place takes a latitude, and a longitude beside it; each unknown where it is "".
func (p *parser) place(latitudeKey, latitude, longitudeKey, longitude string) (north, east profile.Optional) {
	read := func(c unit.Coordinate, key, text string) (v profile.Optional) {
		if text == "" {
			return v
		}
		degrees, err := c.Parse(text)
		if err != nil {
			p.fail(key, err)
		}
		return profile.Some(degrees)
	}
	north, east = read(unit.Latitude, latitudeKey, latitude), read(unit.Longitude, longitudeKey, longitude)
	if east.Known && !north.Known {
		p.fail(longitudeKey, errors.New("a longitude needs its latitude beside it, e.g. latitude = \"46.1 N\""))
	}
	return north, east
}

// some is a length that was written, unknown where it was not.
func some(m float64) profile.Optional { return profile.Optional{Value: m, Known: m > 0} }
