package layers

import (
	"math"

	"gonum.org/v1/gonum/optimize"

	"coldseam/profile/water"
)

// How far, m, the centre of a fitted step may lie from the thermocline before that is in
// doubt, where at least stepReadings depths were read: see TestMethodsApart. With fewer
// readings the distance says nothing reliable; nor does agreement ever narrow an interval.
const (
	stepApartM   = 0.5
	stepReadings = 7
)

// StepApart gives where the centre of a smooth step fitted to the density of the readings
// under the skin lies, m. apart is whether that speaks against the thermocline: the column
// is layered, was read at enough depths, and the step is further off than methods that
// agree are. The thermocline is then more often off by over 1 m, and outside its interval.
func (l Layers) StepApart() (depthM float64, apart bool) {
	if l.Thermocline == nil || len(l.Curve.Depths) < stepReadings {
		return 0, false
	}
	depthM, ok := stepCentre(l.Curve.Depths[l.start:], l.Curve.Temps[l.start:])
	return depthM, ok && math.Abs(depthM-l.Thermocline.Best) > stepApartM
}

// stepCentre is the centre of a step fitted to the density of temperatures at rising
// depths, at least three. Pujoni et al. 2019 (L&O Methods 17:320) found a sigmoid of four
// parameters sturdier than gradients where readings are few; the logistic form and its
// limits are ours. ok is false where density does not rise.
func stepCentre(depths, temps []float64) (depthM float64, ok bool) {
	if len(depths) < 3 {
		return 0, false
	}
	rho := make([]float64, len(temps))
	for i, t := range temps {
		rho[i] = water.Density(t)
	}
	s, ok := fitStep(depths, rho)
	return s.centreM, ok && s.lower > s.upper
}

// step is a smooth step fitted to readings:
//
//	value(z) = lower + (upper - lower) / (1 + exp((z - centreM) / widthM))
//
// 46 % of it lies within one width of its centre, 85 % within two and a half.
type step struct {
	upper, lower float64 // far above and far below it
	centreM      float64
	widthM       float64
	rms          float64 // of the readings about it
}

// Limits of a step's width. Where all of a step lies between two readings, any
// thinner one anywhere in that space fits as well, so that the thinnest allowed says
// where it is. On the columns of TestMethods in package layers a half was better with 7 or
// more readings and far worse with 5; a tenth was a little worse.
const (
	thinnest = 0.25 // of the narrowest interval
	widest   = 0.5  // of the whole column
)

// The places of centre and width that are tried first.
const (
	gridCentres = 24
	gridWidths  = 6
)

// fitStep fits a step to a column's values by least squares. The upper and the lower
// value follow from the centre and the width, being linear (variable projection,
// Golub & Pereyra 1973), so that only these two are searched: on a grid, and from its
// best place with the simplex of Nelder & Mead 1965. The centre stays within the
// column. The same values give the same step. ok is false where all are alike.
func fitStep(z, values []float64) (s step, ok bool) {
	n := len(z)
	top, length := z[0], z[n-1]-z[0]
	narrow, low, high := length, values[0], values[0]
	for i, v := range values {
		low, high = math.Min(low, v), math.Max(high, v)
		if i > 0 {
			narrow = math.Min(narrow, z[i]-z[i-1])
		}
	}
	if high-low <= equal {
		return s, false
	}
	f := fit{z, values, make([]float64, n)}
	thin := thinnest * narrow
	spread := math.Log(widest * length / thin)
	at := func(x []float64) step { // x in 0 to 1: centre, logarithm of width
		return f.step(top+x[0]*length, thin*math.Exp(x[1]*spread))
	}
	start, least := []float64{0.5, 0.5}, math.Inf(1)
	for i := range gridCentres {
		for j := range gridWidths {
			x := []float64{(float64(i) + 0.5) / gridCentres, (float64(j) + 0.5) / gridWidths}
			if rms := at(x).rms; rms < least {
				start, least = x, rms
			}
		}
	}
	inside := func(x []float64) []float64 {
		return []float64{min(max(x[0], 0), 1), min(max(x[1], 0), 1)}
	}
	problem := optimize.Problem{Func: func(x []float64) float64 {
		in := inside(x)
		out := math.Abs(x[0]-in[0]) + math.Abs(x[1]-in[1])
		return at(in).rms/(high-low) + out // rises outside the limits, so leads back
	}}
	settings := &optimize.Settings{
		FuncEvaluations: 400,
		Converger:       &optimize.FunctionConverge{Absolute: 1e-7, Iterations: 15},
	}
	result, err := optimize.Minimize(problem, start, settings, &optimize.NelderMead{SimplexSize: 0.04})
	if err == nil && result.F <= least/(high-low) {
		start = result.X
	}
	return at(inside(start)), true
}

// fit holds what a step is fitted to.
type fit struct {
	z, v, basis []float64
}

// step is the best step of a centre and a width: a straight line of the values
// against the step's shape.
func (f fit) step(centreM, widthM float64) step {
	n := float64(len(f.z))
	meanShape, meanValue := 0.0, 0.0
	for i, z := range f.z {
		f.basis[i] = 1 / (1 + math.Exp((z-centreM)/widthM))
		meanShape += f.basis[i] / n
		meanValue += f.v[i] / n
	}
	shapes, both := 0.0, 0.0
	for i, shape := range f.basis {
		shapes += (shape - meanShape) * (shape - meanShape)
		both += (shape - meanShape) * (f.v[i] - meanValue)
	}
	height := 0.0
	if shapes > 0 {
		height = both / shapes
	}
	s := step{centreM: centreM, widthM: widthM, lower: meanValue - height*meanShape}
	s.upper = s.lower + height
	sum := 0.0
	for i, shape := range f.basis {
		d := f.v[i] - s.lower - height*shape
		sum += d * d
	}
	s.rms = math.Sqrt(sum / n)
	return s
}
