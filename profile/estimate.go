package profile

// Estimate is a value with its 80 % interval, Low to High; Best lies within.
type Estimate struct {
	Best float64 `json:"best"`
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Exactly is an estimate without doubt.
func Exactly(v float64) Estimate { return Estimate{v, v, v} }
