package rehearse

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"time"
)

// Faults are what can go wrong with a probe on a cable. None of them changes the noise
// of the lines that come whole.
type Faults struct {
	Boot     bool // at every opening noise bytes, then a banner
	Garbage  bool // now and then a line, its end too, comes as bytes of a wrong baud rate
	Torn     bool // now and then a line lost bytes and what is left still reads as numbers
	Sentinel bool // now and then the temperature is 85.00 or -127.00
	Quiet    bool // silent for 15 s in every 90 s of the lake's clock
	Pulled   bool // 240 to 480 lines after opening the cable is pulled, for 5 s of the lake's clock
}

// ParseFaults reads names of faults parted by commas ("boot,torn"), or "all"; nothing is
// none. An error names the word and those allowed.
func ParseFaults(list string) (Faults, error) {
	var f Faults
	switch list {
	case "":
		return f, nil
	case "all":
		return Faults{true, true, true, true, true, true}, nil
	}
	named := map[string]*bool{"boot": &f.Boot, "garbage": &f.Garbage, "torn": &f.Torn,
		"sentinel": &f.Sentinel, "quiet": &f.Quiet, "pulled": &f.Pulled}
	for word := range strings.SplitSeq(list, ",") {
		fault := named[word]
		if fault == nil {
			return Faults{}, fmt.Errorf("no fault %q: use boot, garbage, torn, sentinel, quiet, pulled, "+
				"parted by commas, or all alone", word)
		}
		*fault = true
	}
	return f, nil
}

const (
	quietEvery = 90 * time.Second
	quietFor   = 15 * time.Second
	pulledFor  = 5 * time.Second
)

// The streams of random numbers beside those of the lines, apart from any line's number.
const (
	quietStream = 1 << 62
	bootStream  = 2 << 62
)

func random(seed, stream uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, stream)) }

// quiet tells whether the probe says nothing at a time of the lake's clock. The first
// 15 s of every 90 are never quiet.
func quiet(seed uint64, at time.Duration) bool {
	r := random(seed, quietStream+uint64(at/quietEvery))
	since := at%quietEvery - 15*time.Second - time.Duration(r.Int64N(int64(quietEvery-2*quietFor)))
	return since >= 0 && since < quietFor
}

// spoil gives the text of a line, its end with it, after at most one fault. One draw
// decides which, so that a fault comes to the same lines whatever others are on.
func (f Faults) spoil(depth, temp string, r *rand.Rand) string {
	switch u := r.Float64(); {
	case u < 0.04 && f.Garbage:
		return noiseBytes(len(depth)+len(temp)+2, r)
	case u >= 0.04 && u < 0.10 && f.Torn:
		return tear(depth+temp, r) + "\r\n"
	case u >= 0.10 && u < 0.13 && f.Sentinel:
		temp = []string{"85.00", "-127.00"}[r.IntN(2)]
	}
	return depth + temp + "\r\n"
}

// noiseBytes are n bytes none of which is printable text.
func noiseBytes(n int, r *rand.Rand) string {
	b := make([]byte, n)
	for i := range b {
		b[i] = byte(r.Uint32())
		if b[i] >= ' ' && b[i] <= '~' {
			b[i] |= 0x80
		}
	}
	return string(b)
}

// tear loses the first byte of a line ("8.43" of 18.43) or the last few ("18"): what is
// left is as many numbers as before, and possible ones.
func tear(text string, r *rand.Rand) string {
	if r.IntN(2) == 0 {
		return text[1:]
	}
	return text[:len(text)-1-r.IntN(3)]
}
