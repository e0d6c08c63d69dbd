package rehearse

import "math"

// sensor is where the probe is, where it is going, and what it feels.
type sensor struct {
	lake            Lake
	tauS, speedMps  float64
	depthM, targetM float64
	tempC           float64
}

// move lets dtS seconds pass. From one bend of the column to the next the water changes
// evenly in time, and a first-order lag, dT/dt = (Tw - T)/tau, has a closed form: T runs
// rate*tau behind the water, and what was off that at the start decays as exp(-t/tau).
func (s *sensor) move(dtS float64) {
	for dtS > 0 {
		stepS, toM := dtS, s.depthM
		if s.targetM != s.depthM {
			toM = s.lake.bend(s.depthM, s.targetM)
			if legS := math.Abs(toM-s.depthM) / s.speedMps; legS <= dtS {
				stepS = legS
			} else {
				toM = s.depthM + math.Copysign(s.speedMps*dtS, toM-s.depthM)
			}
		}
		from, to := s.lake.TempC(s.depthM), s.lake.TempC(toM)
		behind := (to - from) / stepS * s.tauS
		s.tempC = to - behind + (s.tempC-from+behind)*math.Exp(-stepS/s.tauS)
		s.depthM = toM
		dtS -= stepS
	}
}
