package light

import (
	"math"

	"coldseam/profile"
)

// Daylight returns the sun's and the sky's light on level ground under a clear sky, W/m2,
// with the sun at an elevation in degrees; 0 where it is down.
//
// Source: Haurwitz 1945 in the form 1098 cos z exp(-0.059/cos z), z from the zenith, from
// memory.
func Daylight(elevationDeg float64) float64 {
	c := math.Sin(elevationDeg * math.Pi / 180)
	if !(c > 0) {
		return 0
	}
	return 1098 * c * math.Exp(-0.059/c)
}

// refraction is the index of water, from memory.
const refraction = 1.333

// slant is the cosine, from the vertical, of a ray's way down in water by Snell's law.
func slant(elevationDeg float64) float64 {
	s := math.Cos(elevationDeg*math.Pi/180) / refraction
	return math.Sqrt(1 - s*s)
}

// EveningM returns how deep the light still goes, with the sun at an elevation, that
// reached OnePercentM with the sun at noonDeg, under a clear sky: the depths of the same
// amount of light, m. High takes all light as spread over the sky, so that it is only
// fainter; Low takes all of it as the sun's beam, whose way down grows longer besides. The
// truth lies between them. It is 0 where the light at the surface is less than that.
//
// What fish make of it is common practice.
func EveningM(secchiM, noonDeg, elevationDeg float64) profile.Estimate {
	noon := Daylight(noonDeg)
	if noon == 0 || math.IsNaN(known(secchiM)) {
		return profile.Exactly(math.NaN())
	}
	share := math.Min(Daylight(elevationDeg)/noon, 1)
	deep := math.Max(0, math.Log(100*share)) / Extinction(secchiM) // log of 0 is below it
	shallow := deep * math.Min(1, slant(elevationDeg)/slant(noonDeg))
	return profile.Estimate{Best: (shallow + deep) / 2, Low: shallow, High: deep}
}
