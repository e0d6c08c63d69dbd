package method

// Answer is what one method says of a column.
type Answer struct {
	Name   string  // what the method looks for
	Source string  // who published it, "common practice", or "ours"
	DepthM float64 // m below the surface; 0 where the method finds nothing
	OK     bool    // whether it finds anything
}

// Named gives the answer of that name, and one that is not OK where there is none.
func Named(answers []Answer, name string) Answer {
	for _, a := range answers {
		if a.Name == name {
			return a
		}
	}
	return Answer{Name: name}
}

// ApartM is how far, m, StepCentre may lie from the thermocline of package layers
// before that is in doubt, where at least ApartN depths were read: see TestMethodsApart
// there. With fewer readings the distance says nothing reliable; nor does agreement
// ever narrow an interval.
const (
	ApartM = 0.5
	ApartN = 7
)
