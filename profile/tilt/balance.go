package tilt

import "math"

const (
	gravity = 9.80665 // m/s2
	airKgM3 = 1.2     // at 20 C and 1013 hPa
)

// TwoLayers are the layers above and below a thermocline.
type TwoLayers struct {
	UpperM, LowerM float64 // thickness
	Above, Below   float64 // density, kg/m3
}

// Stress is that of a wind on the water, N/m2; drag is without dimension.
func Stress(windMps, drag float64) float64 { return airKgM3 * drag * windMps * windMps }

// buoyancy is what holds the layers level, N/m3.
func (w TwoLayers) buoyancy() float64 { return gravity * (w.Below - w.Above) }

// EndM is how far a steady wind moves the thermocline at either end of a water, m: up
// at the upwind end, down at the other. It is that of small tilts.
func (w TwoLayers) EndM(stress, lengthM float64) float64 {
	return stress * lengthM / (2 * w.buoyancy() * w.UpperM)
}

// PeriodS is how long the layers take to rock once there and back, s.
func (w TwoLayers) PeriodS(lengthM float64) float64 {
	equivalent := w.UpperM
	if !math.IsInf(w.LowerM, 1) {
		equivalent = w.UpperM * w.LowerM / (w.UpperM + w.LowerM)
	}
	return 2 * lengthM / math.Sqrt(w.buoyancy()/w.Below*equivalent)
}

// Wedderburn is the number of that name of a steady displacement at the ends: of about 1 or
// less, cold water comes up at the upwind end.
func (w TwoLayers) Wedderburn(endM float64) float64 { return w.UpperM / (2 * endM) }

// Share is how much of the steady displacement a sudden wind has brought about after a
// time, in a water of a period, both in s: all of it after a quarter of the period.
func Share(afterS, periodS float64) float64 { return math.Min(1, 4*afterS/periodS) }

// overshoot is the most that the swing of a sudden wind can be of the steady displacement:
// twice after half a period, then dying away, to a third in as many periods as
// settlePeriods (a few in small lakes, from memory).
func overshoot(afterS, periodS float64) float64 {
	t := afterS / periodS
	if t <= 0.5 {
		return 4 * t
	}
	return 1 + math.Exp(-(t-0.5)/settlePeriods)
}

const settlePeriods = 2
