package line

import (
	"math"

	"coldseam/profile/water"
)

// The widest values that a lake, or a sounder over the deepest sea, can have.
const (
	minTempC, maxTempC   = -5, 50
	minDepthM, maxDepthM = -2, 1000
	maxBottomM           = 11000
	maxPressurePa        = 1e7
)

func within(v, lo, hi float64, what string) error {
	if math.IsNaN(v) || v < lo || v > hi {
		return refuse(OutOfRange, "the "+what+" is out of range")
	}
	return nil
}

// CheckTempC refuses a temperature in degrees Celsius that stands for a fault (85 and
// -127 exactly, 999, 8888, 9999), then one outside -5 to 50.
func CheckTempC(c float64) error {
	switch c {
	case 85:
		return refuse(Sentinel, "85 C exactly is a sensor that has not measured yet")
	case -127:
		return refuse(Sentinel, "-127 C is a sensor that is not connected")
	case 9999, -9999, 8888, 999, -999:
		return refuse(Sentinel, "the temperature is a number that stands for a fault")
	}
	return within(c, minTempC, maxTempC, "temperature")
}

// CheckDepthM refuses a probe's depth in metres that stands for a fault or lies
// outside -2 to 1000.
func CheckDepthM(m float64) error {
	switch m {
	case 9999, -9999, 8888, 999, -999, -127:
		return refuse(Sentinel, "the depth is a number that stands for a fault")
	}
	return within(m, minDepthM, maxDepthM, "depth")
}

// DepthFromAbsoluteM is the depth in metres in fresh water of tempC degrees Celsius at
// which the absolute pressure is absolutePa, under air of airPa (a reading at the
// surface, or water.AirPressure of the altitude). 1000 Pa of weather are 0.1 m.
func DepthFromAbsoluteM(absolutePa, airPa, tempC float64) (float64, error) {
	if err := within(airPa, 40000, 120000, "air pressure"); err != nil {
		return 0, err
	}
	d := water.DepthFromPressure(absolutePa-airPa, tempC)
	if err := CheckDepthM(d); err != nil {
		return 0, err
	}
	return d, nil
}
