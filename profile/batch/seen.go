package batch

// remembered is how many profiles back, at the least, one that comes again is noticed;
// twice as many are at the most held, some 2 MB.
const remembered = 1 << 16

// seen knows the last names of an input by their hashes, in two halves, so that the
// older can be forgotten at once. Two names of one hash among them would have one refused
// wrongly: less than once in 10^9 runs over a million profiles.
type seen struct{ young, old map[uint64]struct{} }

func (s *seen) reset() {
	if s.young == nil {
		s.young, s.old = map[uint64]struct{}{}, map[uint64]struct{}{}
	}
	clear(s.young)
	clear(s.old)
}

// again notes a name and reports whether it was there.
func (s *seen) again(name string) bool {
	h := hash(name)
	_, young := s.young[h]
	_, old := s.old[h]
	if !young {
		if len(s.young) == remembered {
			s.young, s.old = s.old, s.young
			clear(s.young)
		}
		s.young[h] = struct{}{}
	}
	return young || old
}

// hash is FNV-1a of 64 bits.
func hash(name string) uint64 {
	h := uint64(14695981039346656037)
	for i := range len(name) {
		h = (h ^ uint64(name[i])) * 1099511628211
	}
	return h
}
