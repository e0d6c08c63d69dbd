package report

import (
	"fmt"
	"strconv"

	"coldseam/profile"
	"coldseam/profile/plain"
)

// CatchNoted says that a catch was noted, and what was not understood of it.
func CatchNoted(number int, d profile.Drop, c profile.Catch) string {
	t := fmt.Sprintf("Noted in %s: %s.", numbered(number, d), plain.Line(c.Text))
	like := "5 m"
	if d.Units.Feet() {
		like = "16 ft"
	}
	switch {
	case !c.Depth.Known && c.Fish == "":
		t += " No fish and no depth could be read in it: undo it, then write e.g. rainbow " + like + "."
	case !c.Depth.Known:
		t += " No depth could be read in it: one has its unit, " + like + "."
	case c.Fish == "":
		t += " No fish could be read in it."
	}
	return t
}

// CatchTaken says which catch was taken away.
func CatchTaken(number int, d profile.Drop, c profile.Catch) string {
	left := len(d.Catches) - 1
	t := "none is left"
	if left > 0 {
		t = strconv.Itoa(left) + " left"
	}
	return fmt.Sprintf("Taken away from %s: %s; %s.", numbered(number, d), plain.Line(c.Text), t)
}

// numbered names a drop by its number, and by what else tells it.
func numbered(number int, d profile.Drop) string {
	t := fmt.Sprintf("drop %d", number)
	if where := WhereWhen(d); where != "" {
		t += " (" + where + ")"
	}
	return t
}
