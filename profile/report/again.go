package report

import (
	"fmt"
	"strings"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
)

// CarriedOver says what a new drop takes over from a saved one, and of the bottom, which
// may be another under the boat now, that it is to be checked.
func CarriedOver(number int, from profile.Drop, what, bottom []notebook.Header) string {
	var words []string
	for _, h := range what {
		words = append(words, h.Key+" "+plain.Cut(h.Value, 40))
	}
	t := fmt.Sprintf("Taken over from drop %d (%s): %s.", number, WhereWhen(from), strings.Join(words, ", "))
	if len(words) == 0 {
		t = fmt.Sprintf("Nothing is taken over from drop %d (%s).", number, WhereWhen(from))
	}
	if len(bottom) > 0 {
		t += fmt.Sprintf(" The bottom is taken to be at %s, as in %s: check it, and type bottom: with its depth if it is not.", bottom[0].Value, bottom[0].From)
	}
	return t
}
