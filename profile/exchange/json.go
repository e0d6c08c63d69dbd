package exchange

import (
	"time"

	"coldseam/profile"
	"coldseam/profile/notebook"
)

// DropJSON is a drop as measured: what is unknown is absent, 0 and false are printed.
type DropJSON struct {
	ID        string         `json:"id"`
	Water     string         `json:"water,omitempty"`
	Spot      string         `json:"spot,omitempty"`
	Date      string         `json:"date,omitempty"`
	Time      string         `json:"time,omitempty"`
	UTCOffset string         `json:"utc_offset,omitempty"`
	Noted     map[string]any `json:"noted"` // other header keys as a page has them: a text, or a list where there may be several

	BottomM     *float64 `json:"bottom_m,omitempty"`
	DeepestM    *float64 `json:"deepest_m,omitempty"`
	SecchiM     *float64 `json:"secchi_m,omitempty"`
	AltitudeM   *float64 `json:"altitude_m,omitempty"`
	LakeLengthM *float64 `json:"lake_length_m,omitempty"`
	WindMps     *float64 `json:"wind_mps,omitempty"`

	Readings []ReadingJSON `json:"readings"`
}

// ReadingJSON is a reading, as corrected in SI and as it was written.
type ReadingJSON struct {
	DepthM      float64      `json:"depth_m"`
	TempC       float64      `json:"temp_c"`
	OxygenMgL   *float64     `json:"oxygen_mgl,omitempty"`
	PlusMinusC  *float64     `json:"temp_plus_minus_c,omitempty"`
	Depth       float64      `json:"depth_written"`
	DepthUnit   string       `json:"depth_unit"`
	Temp        float64      `json:"temp_written"`
	TempUnit    string       `json:"temp_unit"`
	TempStep    float64      `json:"temp_step"` // of the last digit written
	Flag        profile.Flag `json:"flag,omitempty"`
	PerhapsMean string       `json:"may_mean,omitempty"`
}

// JSON gives the drops for JSON; zone as of WriteLong.
func JSON(items []Item, zone *time.Location) []DropJSON {
	out := make([]DropJSON, len(items))
	for i := range items {
		d := &items[i].Drop
		day, clock := dayAndTime(d.Date)
		j := DropJSON{
			ID: items[i].ID, Water: d.Water, Spot: d.Spot, Date: day, Time: clock, UTCOffset: offset(d.Date, zone), Noted: map[string]any{},
			BottomM: known(d.Bottom), DeepestM: known(d.Deepest), SecchiM: known(d.Secchi), AltitudeM: known(d.Altitude), LakeLengthM: known(d.LakeLength), WindMps: known(d.Wind),
			Readings: make([]ReadingJSON, len(d.Readings)),
		}
		for _, key := range notebook.Keys() {
			switch values := notebook.Values(d, key); {
			case len(values) == 0 || key == "water" || key == "spot" || key == "date":
			case notebook.Several(key):
				j.Noted[key] = values
			default:
				j.Noted[key] = values[0]
			}
		}
		for k, r := range d.Readings {
			j.Readings[k] = ReadingJSON{
				DepthM: r.DepthM, TempC: r.TempC, OxygenMgL: known(r.Oxygen), PlusMinusC: known(profile.Optional{Value: r.SpreadC, Known: r.SpreadC > 0}),
				Depth: r.Depth, DepthUnit: r.DepthUnit.String(), Temp: r.Temp, TempUnit: r.TempUnit.String(), TempStep: r.Step, Flag: r.Flag, PerhapsMean: r.Guess,
			}
		}
		out[i] = j
	}
	return out
}

func known(o profile.Optional) *float64 {
	if !o.Known {
		return nil
	}
	return &o.Value
}
