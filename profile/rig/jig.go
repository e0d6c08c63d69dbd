package rig

// jig is a line let straight down through a hole in the ice: no leader is cut for it
// and nothing is cast. It is measured from the water in the hole.
func (r *Rig) jig(in Input) {
	r.FlyDepths = []float64{in.FlyM}
	r.Window, r.RunnerUp = Window{}, ""
}
