package fish

import (
	"encoding"
	"fmt"
	"strings"
	"unicode"

	"coldseam/profile/unit"
)

// amount is a temperature in C or an oxygen in mg/L, known where it was written. The
// scale is that of a temperature as written.
type amount struct {
	value float64
	scale unit.Temperature
	known bool
}

// sourced is a figure as an entry has it: a text, "13.1 C", or the text and whose it is,
// {value = "13.1 C", source = "Author year, journal"}.
type sourced[T any] struct {
	Value  T
	Source string
}

// UnmarshalText reads a figure without a source.
func (s *sourced[T]) UnmarshalText(text []byte) error {
	return any(&s.Value).(encoding.TextUnmarshaler).UnmarshalText(text)
}

// degrees is a temperature of water with its scale, span a range of them, "55 to 62 F",
// "13-17 C" or "55 F to 62 F", and oxygen dissolved oxygen with its unit. An empty text is
// one not written.
type (
	degrees struct{ amount }
	span    struct{ low, high amount }
	oxygen  struct{ amount }
	grams   struct{ amount } // of a fly
)

// UnmarshalText reads "0.12 g".
func (g *grams) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		return nil
	}
	kg, err := unit.ParseMass(string(text))
	if err == nil && !(kg >= 0.00001 && kg <= 0.02) {
		err = fmt.Errorf("%q is not a likely weight of a fly", text)
	}
	g.amount = amount{kg * 1000, unit.NoTemperature, true}
	return err
}

// UnmarshalText reads "58 F".
func (d *degrees) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		return nil
	}
	c, scale, err := unit.ParseTemperature(string(text))
	if err == nil && !likely(c) {
		err = fmt.Errorf("%q is not likely for water", text)
	}
	d.amount = amount{c, scale, true}
	return err
}

// UnmarshalText reads "55 to 62 F".
func (s *span) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		return nil
	}
	a, b, ok := strings.Cut(string(text), "to")
	if !ok {
		a, b, _ = strings.Cut(strings.ReplaceAll(a, "–", "-"), "-")
	}
	high, scale, err := unit.ParseTemperature(b)
	if err == nil && !strings.ContainsFunc(a, unicode.IsLetter) {
		a += " " + scale.String()
	}
	low := 0.0
	if err == nil {
		low, _, err = unit.ParseTemperature(a)
	}
	switch {
	case err != nil:
		return fmt.Errorf("%q is not a range with its scale: write e.g. 55 to 62 F", text)
	case !likely(low) || !likely(high):
		return fmt.Errorf("%q is not likely for water", text)
	case low >= high:
		return fmt.Errorf("%q: write the colder end first, and a warmer one after it", text)
	}
	s.low, s.high = amount{low, scale, true}, amount{high, scale, true}
	return nil
}

// likely reports whether a temperature is one that the table could hold.
func likely(c float64) bool { return c >= 0 && c <= 40 }

// UnmarshalText reads "6 mg/L" or "6 ppm".
func (o *oxygen) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		return nil
	}
	n, rest, ok := unit.ScanNumber(strings.TrimSpace(string(text)), true)
	if rest = strings.ToLower(strings.TrimSpace(rest)); !ok || rest != "mg/l" && rest != "ppm" {
		return fmt.Errorf("%q is not an amount of oxygen: write e.g. 6 mg/L", text)
	}
	if !(n.Value > 0 && n.Value <= 12) {
		return fmt.Errorf("%q is not a likely value", text)
	}
	o.amount = amount{n.Value, unit.NoTemperature, true}
	return nil
}

// aliases are further names: a text, or several in [].
type aliases []string

// UnmarshalText reads a single name.
func (a *aliases) UnmarshalText(text []byte) error {
	*a = aliases{string(text)}
	return nil
}

// kind is a Kind by its word, known where it was written.
type kind struct {
	is    Kind
	known bool
}

// UnmarshalText reads "coldwater".
func (k *kind) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		return nil
	}
	for k.is = Coldwater; k.is <= Warmwater; k.is++ {
		if k.known = k.is.String() == string(text); k.known {
			return nil
		}
	}
	return fmt.Errorf("%q: write coldwater, coolwater or warmwater", text)
}
