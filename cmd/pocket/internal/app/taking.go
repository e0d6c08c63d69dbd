package app

var takingActs = actions{}

// takingState is a drop that is being taken.
type takingState struct{}
