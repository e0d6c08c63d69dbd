package batch

import (
	"math"
	"strconv"
	"unicode/utf8"

	"coldseam/profile"
	"coldseam/profile/layers"
	"coldseam/profile/plain"
)

// The keys are those of report.LayersJSON, which a test compares. They are appended here
// by hand because an estimate may lack its interval, and because of the time.

// appendLayers appends the layers, each key with a comma before it.
func appendLayers(b []byte, l layers.Layers, intervals bool) []byte {
	b = append(b, `,"structure":`...)
	b = appendText(b, string(l.Structure))
	for _, e := range []struct {
		key   string
		value *profile.Estimate
	}{
		{`,"mixed_layer_m":`, l.MixedLayer}, {`,"metalimnion_top_m":`, l.MetalimnionTop},
		{`,"metalimnion_bottom_m":`, l.MetalimnionBottom}, {`,"thermocline_m":`, l.Thermocline},
	} {
		if e.value != nil {
			b = append(b, e.key...)
			b = appendEstimate(b, *e.value, intervals)
		}
	}
	if l.Structure == layers.Layered {
		b = append(b, `,"steepest_c_per_m":`...)
		b = appendMilli(b, l.SteepestCPerM)
	}
	b = append(b, `,"other_breaks":[`...)
	for i, other := range l.OtherBreaks {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, `{"depth_m":`...)
		b = appendMilli(b, other.DepthM)
		b = append(b, `,"c_per_m":`...)
		b = appendMilli(b, other.CPerM)
		b = append(b, '}')
	}
	b = append(b, `],"bottom_reached_first":`...)
	return strconv.AppendBool(b, l.BottomReached)
}

func appendEstimate(b []byte, e profile.Estimate, interval bool) []byte {
	b = append(b, `{"best":`...)
	b = appendMilli(b, e.Best)
	if interval {
		b = append(b, `,"low":`...)
		b = appendMilli(b, e.Low)
		b = append(b, `,"high":`...)
		b = appendMilli(b, e.High)
	}
	return append(b, '}')
}

// appendMilli appends a number rounded to 0.001, as encoding/json writes it. Depths
// and gradients are small, so whole thousandths are exact; finding the shortest digits
// of a float would cost a tenth of the whole run.
func appendMilli(b []byte, v float64) []byte {
	v = math.Round(v * 1e3)
	if !(math.Abs(v) < 1e15) {
		return strconv.AppendFloat(b, v/1e3, 'f', -1, 64)
	}
	n := int64(v)
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/1000, 10)
	n %= 1000
	if n == 0 {
		return b
	}
	b = append(b, '.', byte('0'+n/100), byte('0'+n/10%10), byte('0'+n%10))
	for b[len(b)-1] == '0' {
		b = b[:len(b)-1]
	}
	return b
}

// appendText appends a JSON string. What is not graphic is written as its number; bytes
// that are no UTF-8 become the replacement character.
func appendText(b []byte, s string) []byte {
	b = append(b, '"')
	for i := 0; i < len(s); {
		c := s[i]
		switch {
		case c == '"' || c == '\\':
			b = append(b, '\\', c)
			i++
		case c >= ' ' && c < 0x7f:
			b = append(b, c)
			i++
		default:
			r, n := utf8.DecodeRuneInString(s[i:])
			b = plain.AppendJSON(b, r)
			i += n
		}
	}
	return append(b, '"')
}
