package format

import (
	"slices"

	"coldseam/device/line"
	"coldseam/profile/unit"
)

// block gathers the parts of one sample when a board prints them on several lines.
type block struct {
	si          []float64
	known       []bool
	got         []bool
	needed      []bool
	refused     error     // of a part that came and cannot be used
	started     int       // the part that came first, -1: none
	first       int       // the part that began the last whole block of several lines, -1: none yet
	pending     int       // the part that a name alone announced, -1: none
	pendingUnit unit.Unit // that stood in brackets behind the name
	lines       int       // lines of this block
	whole       bool      // one line has had everything: lines are whole here

	// Empty lines divide blocks, unless three in a row divided single values.
	inGroup int
	singles int
}

func (k *block) init(parts []part) {
	k.si, k.known = make([]float64, len(parts)), make([]bool, len(parts))
	k.got, k.needed = make([]bool, len(parts)), make([]bool, len(parts))
	for i, p := range parts {
		k.needed[i] = p.Quantity != Skip
	}
	k.first = -1
	k.drop()
}

// drop forgets an unfinished block.
func (k *block) drop() {
	clear(k.got)
	clear(k.known)
	k.refused, k.started, k.pending, k.lines = nil, -1, -1, 0
}

// gap is an empty line.
func (k *block) gap() {
	switch {
	case k.inGroup == 0, k.pending >= 0: // a name awaits its value
		return
	case k.inGroup > 1:
		k.singles = 0
	case k.started >= 0:
		k.singles++
	}
	k.inGroup = 0
	if k.singles < 3 && k.started >= 0 {
		k.drop()
	}
}

func (k *block) complete() bool {
	for i, n := range k.needed {
		if n && !k.got[i] {
			return false
		}
	}
	return true
}

// beginsAnother reports a line with a part that came before, or with the one that begins
// each block.
func (k *block) beginsAnother(at []int) bool {
	return k.started >= 0 && slices.ContainsFunc(at, func(p int) bool { return p >= 0 && (k.got[p] || p == k.first) })
}

// collect adds the values of a line to the block, and gives the sample when it has all.
func (r *Reader) collect() (Sample, error) {
	k := &r.block
	if k.beginsAnother(r.at) {
		k.drop()
	}
	refused := r.takeValues()
	k.lines++
	k.inGroup++
	if !k.complete() {
		return Sample{}, r.incomplete(refused)
	}
	if k.lines == 1 {
		k.whole = true
	} else {
		k.first = k.started
	}
	defer k.drop()
	if k.refused != nil {
		return Sample{}, k.refused
	}
	return r.sample(k.si, k.known)
}

// takeValues takes the values of a line into the block, and gives the first refusal.
func (r *Reader) takeValues() (refused error) {
	k := &r.block
	for i, p := range r.at {
		if p < 0 {
			continue
		}
		var err error
		k.si[p], k.known[p], err = r.parts[p].take(&r.s.vals[i], r.o.Thermistor)
		k.got[p] = true
		if refused == nil {
			refused = err
		}
		if k.started < 0 && k.needed[p] {
			k.started = p
		}
	}
	if refused != nil {
		k.refused = refused
	}
	return refused
}

// incomplete is why a line gives no sample although its values may be fine.
func (r *Reader) incomplete(refused error) error {
	missing := r.missing()
	switch {
	case r.block.whole:
		r.block.drop()
		if refused == nil {
			refused = refuse(line.BadForm, "the line lacks "+missing)
		}
	case refused == nil:
		refused = refuse(line.Waiting, missing+" has not come: more of the block to come")
	}
	return refused
}

func (r *Reader) missing() string {
	for i := range r.parts {
		if r.block.needed[i] && !r.block.got[i] {
			return r.parts[i].called()
		}
	}
	return ""
}
