package exchange

import (
	"strings"

	"coldseam/profile/unit"
)

// runs are the signs that make a spreadsheet run a cell, also as wide forms of them.
const runs = "=+-@\t\r\n\uff1d\uff0b\uff0d\uff20"

// harmless puts an apostrophe before a cell that a spreadsheet might run. A number stays
// one. A cell that already has apostrophes before such a sign gets one more, so that
// restored gives all back.
func harmless(cell string) string {
	if runnable(cell) {
		return "'" + cell
	}
	return cell
}

// restored takes the apostrophe off that harmless put there.
func restored(cell string) string {
	if rest, ok := strings.CutPrefix(cell, "'"); ok && runnable(rest) {
		return rest
	}
	return cell
}

func runnable(cell string) bool {
	rest := strings.TrimLeft(cell, "'")
	if rest == "" || !strings.ContainsRune(runs, []rune(rest)[0]) {
		return false
	}
	_, number := unit.ParseDecimal([]byte(cell))
	return !number
}
