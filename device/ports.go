package device

import (
	"cmp"
	"slices"
	"strings"
)

// Info is a port that is there, with what the system knows of the device behind it;
// what it does not know is empty. The texts come from the device itself: they are made
// printable, and are no proof of anything.
type Info struct {
	Name      string // what Open takes
	ByID      string // a name that stays with the device when it is plugged in again (Linux)
	Product   string
	Maker     string
	Serial    string // serial number; many devices have none, or all the same
	VendorID  string // of USB, four hexadecimal digits
	ProductID string // of USB, four hexadecimal digits
}

// String is the name, with product and maker where known.
func (p Info) String() string {
	if about := strings.TrimSpace(p.Maker + " " + p.Product); about != "" {
		return p.Name + " (" + about + ")"
	}
	return p.Name
}

// byName sorts ports as people count: ttyUSB2 before ttyUSB10.
func byName(ports []Info) {
	slices.SortFunc(ports, func(a, b Info) int {
		wordA, numberA := cutNumber(a.Name)
		wordB, numberB := cutNumber(b.Name)
		return cmp.Or(strings.Compare(wordA, wordB),
			cmp.Compare(len(numberA), len(numberB)), strings.Compare(numberA, numberB))
	})
}

// cutNumber parts a name from the digits at its end.
func cutNumber(name string) (word, number string) {
	word = strings.TrimRight(name, "0123456789")
	return word, name[len(word):]
}
