package light

import (
	"math"
	"testing"

	"coldseam/profile"

	"pgregory.net/rapid"
)

const noon, dawn = "2026-07-18 12:30", "2026-07-18 05:40"

var calmAir = profile.Some(1)

func TestAdvise(t *testing.T) {
	for _, r := range []struct {
		name string
		sky  Sky
		want Reason
	}{
		{"nothing known", Sky{}, ""},
		{"noon alone", Sky{Date: noon}, ""},
		{"early", Sky{Date: dawn}, LowSun},
		{"midnight", Sky{Date: "2026-07-18 00:00"}, LowSun},
		{"just before 8", Sky{Date: "2026-07-18 07:59"}, LowSun},
		{"8", Sky{Date: "2026-07-18 08:00"}, ""},
		{"19", Sky{Date: "2026-07-18 19:00"}, ""},
		{"just after 19", Sky{Date: "2026-07-18 19:01"}, LowSun},
		{"a day without its hour", Sky{Date: "2026-07-18", Text: "clear", Wind: calmAir}, ""},
		{"no date", Sky{Date: "yesterday 05:40", Text: "clear", Wind: calmAir}, ""},
		{"an hour that is none", Sky{Date: "2026-07-18 25:00"}, ""},
		{"spaces round the date", Sky{Date: " " + dawn + "\n"}, LowSun},
		{"low sun before bright", Sky{Date: dawn, Text: "clear", Wind: calmAir}, LowSun},
		{"low sun before cloud", Sky{Date: dawn, Text: "overcast", Wind: profile.Some(8)}, LowSun},
		{"words before the clock", Sky{Date: noon, Text: "dusk"}, LowSun},
		{"cloud", Sky{Date: noon, Text: "cloud"}, Overcast},
		{"cloud before chop", Sky{Date: noon, Text: "cloud, chop"}, Overcast},
		{"sun and chop", Sky{Date: noon, Text: "sun, chop", Wind: calmAir}, Chop},
		{"wind makes chop", Sky{Date: noon, Text: "clear", Wind: profile.Some(3.4)}, Chop},
		{"wind before the word calm", Sky{Date: noon, Text: "clear, calm", Wind: profile.Some(5)}, Chop},
		{"too little wind for chop", Sky{Date: noon, Text: "clear", Wind: profile.Some(3.39)}, ""},
		{"bright and calm", Sky{Date: noon, Text: "clear", Wind: profile.Some(1.99)}, BrightCalm},
		{"not quite calm", Sky{Date: noon, Text: "clear", Wind: profile.Some(2)}, ""},
		{"calm by the word", Sky{Date: noon, Text: "sunny, calm"}, BrightCalm},
		{"calm not known", Sky{Date: noon, Text: "sunny"}, ""},
		{"calm, sky not known", Sky{Date: noon, Wind: calmAir}, ""},
		{"bright before 10", Sky{Date: "2026-07-18 09:59", Text: "clear", Wind: calmAir}, ""},
		{"bright at 10", Sky{Date: "2026-07-18 10:00", Text: "clear", Wind: calmAir}, BrightCalm},
		{"bright at 16", Sky{Date: "2026-07-18 16:00", Text: "clear", Wind: calmAir}, BrightCalm},
		{"bright after 16", Sky{Date: "2026-07-18 16:01", Text: "clear", Wind: calmAir}, ""},
		{"a low sun at noon, far north", Sky{Date: noon, SunDeg: profile.Some(19.9)}, LowSun},
		{"a high sun at 20 h", Sky{Date: "2026-07-18 20:00", SunDeg: profile.Some(20)}, ""},
		{"a sun not high enough at noon", Sky{Date: noon, Text: "clear", Wind: calmAir, SunDeg: profile.Some(44.9)}, ""},
		{"a high sun at 9 h", Sky{Date: "2026-07-18 09:00", Text: "clear", Wind: calmAir, SunDeg: profile.Some(45)}, BrightCalm},
		{"a sun that is down, no date", Sky{SunDeg: profile.Some(-30)}, LowSun},
		{"an elevation that is none", Sky{Date: dawn, SunDeg: profile.Some(math.NaN())}, ""},
		{"wind not a number", Sky{Date: noon, Text: "clear", Wind: profile.Some(math.NaN())}, ""},
		{"wind without end", Sky{Date: noon, Text: "clear", Wind: profile.Some(math.Inf(1))}, ""},
		{"wind below nothing", Sky{Date: noon, Text: "clear", Wind: profile.Some(-1)}, ""},
		{"wind unknown, whatever stands there", Sky{Date: noon, Text: "clear", Wind: profile.Optional{Value: 9}}, ""},
	} {
		want := Advice{shiftFor(r.want), r.want}
		if got := Advise(r.sky); got != want {
			t.Errorf("%s: %+v, want %+v", r.name, got, want)
		}
	}
}

// shiftFor is the shift that belongs to a reason.
func shiftFor(why Reason) Shift {
	switch why {
	case "":
		return None
	case BrightCalm:
		return Deeper
	}
	return Shallower
}

// TestSkyWords reads each text at noon in calm air: bright skies give BrightCalm.
func TestSkyWords(t *testing.T) {
	for want, texts := range map[Reason][]string{
		BrightCalm: {"clear", "CLEAR", "Clear.", "clr", "cleer", "sun", "sunny", "suny", "sunney", "sunshine", "full sun",
			"high sun", "mostly sunny", "bright", "brite", "bright sun!", "blue sky", "blue skies", "bluebird day", "cloudless",
			"no clouds", "no cloud", "not a cloud", "without a cloud", "0% cloud", "0/8 cloud", "clear, no rain", "sunny, rainbow",
			"clear;no chop", "clear - no wind or waves", "no wind or cloud", "no wind, clear", "sun\tglass calm",
			"clear since last night", "humidity 40 %. Sunny", "wind 5/10; sunny", "not sure, sunny"},
		Overcast: {"cloud", "Cloudy", "clowdy", "cldy", "overcast", "OVERCAST", "over cast", "overcst", "ovrcast", "ovc", "gray", "grey sky",
			"mostly cloudy", "rain", "raining", "rainy", "light rain", "drizzle", "drizzel", "showers", "fog", "foggy", "snow", "thunderstorm",
			"dull", "gloomy", "dark clouds", "dark grey", "no sun", "sunless", "100% cloud", "100 % cloud", "8/8 cloud", "overcast/rain", "cloud+rain",
			"grauer Himmel, overcast", "overcast \U0001F327"},
		LowSun: {"dusk", "Dusk,", "DAWN", "dawn, clear", "night", "nite", "twilight", "twilite", "sunrise", "sunset", "sundown",
			"sun down", "sun low", "low sun", "first light", "last light", "evening", "dark", "moonlit", "midnight", "daybreak", "cloudy dusk"},
		Chop: {"chop", "choppy", "light chop", "some chop", "scattered whitecaps", "whitecaps", "white caps", "white-caps", "WHITECAPPING", "waves", "wavy", "ripple", "riffle",
			"rough", "windy", "sunny, windy", "clear and choppy", "no clouds but chop"},
		"": {"", "   ", "???", "nice", "partly cloudy", "partly sunny", "ptly cloudy", "some sun", "some clouds", "few clouds", "scattered cloud",
			"broken cloud", "scattered showers", "sun and cloud", "sun, some cloud", "sun & rain", "clearing", "haze", "hazy sun", "smoky",
			"high cloud", "high thin cloud", "thin cloud", "light cloud", "not clear", "not overcast", "not bright", "clear, chance of rain",
			"50% cloud", "50 % cloud", "4/8 cloud", "sunshower", "Sunday", "rainbow", "full moon", "no rain", "no dusk", "noon", "north",
			"chop, then calm", "clear, chop, then calm", "humidity 40% sunny", "no wind", "no chop, glass", "last night", "partly to mostly cloudy", "\x00\xff", "no", "or", "partly"},
	} {
		for _, text := range texts {
			if got := Advise(Sky{Date: noon, Text: text, Wind: calmAir}); got.Why != want || got.Shift != shiftFor(want) {
				t.Errorf("%q: %+v, want %q", text, got, want)
			}
		}
	}
}

func TestStart(t *testing.T) {
	const ft = 0.3048
	for _, r := range []struct {
		name                    string
		top, bottom, start      float64 // ft
		none, shallower, deeper float64 // ft
	}{
		{"room both ways", 10, 30, 16, 16, 13, 19},
		{"near the shallow edge", 14, 20, 16, 16, 15, 17},
		{"a foot under the edge", 14, 24, 15, 15, 15, 18},
		{"nearer than a foot", 14, 24, 14.5, 14.5, 14.5, 17.5},
		{"in the middle", 10, 20, 15, 15, 12, 15},
		{"deeper than the middle", 10, 20, 18, 18, 15, 18},
		{"thinner than a foot", 10, 10.5, 10.25, 10.25, 10.25, 10.25},
		{"no thickness", 10, 10, 10, 10, 10, 10},
		{"from the surface", 0, 12, 1, 1, 1, 4},
		{"above the band", 10, 20, 5, 10, 10, 13},
		{"below the band", 10, 20, 25, 20, 17, 20},
	} {
		for shift, want := range map[Shift]float64{None: r.none, Shallower: r.shallower, Deeper: r.deeper, "sideways": r.none} {
			near(t, r.name+", "+string(shift), Start(r.top*ft, r.bottom*ft, r.start*ft, shift)/ft, want, 1e-9)
		}
	}
}

func TestStartRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range [][3]float64{{nan, 5, 3}, {1, nan, 3}, {1, 5, nan}, {-1, 5, 3}, {5, 1, 3}, {1, inf, 3}, {inf, inf, 3}, {-inf, 5, 3}} {
		for _, shift := range []Shift{None, Shallower, Deeper} {
			if got := Start(c[0], c[1], c[2], shift); !math.IsNaN(got) {
				t.Errorf("Start(%v, %s) = %v, want NaN", c, shift, got)
			}
		}
	}
}

// The moved start is within the band, no further than a step away, on the side the
// shift names, and never past the edge's foot or the middle.
func TestStartStaysWithinTheBand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		top := rapid.Float64Range(0, 60).Draw(t, "top")
		bottom := top + rapid.Float64Range(0, 60).Draw(t, "thickness")
		start := math.Min(bottom, top+rapid.Float64Range(0, 1).Draw(t, "share")*(bottom-top))
		up, same, down := Start(top, bottom, start, Shallower), Start(top, bottom, start, None), Start(top, bottom, start, Deeper)
		const slack = 1e-9
		switch {
		case same != start:
			t.Fatalf("None moved %v to %v", start, same)
		case !(top <= up && up <= start && start <= down && down <= bottom):
			t.Fatalf("%v to %v: %v, %v, %v", top, bottom, up, start, down)
		case start-up > StepM+slack || down-start > StepM+slack:
			t.Fatalf("more than a step: %v, %v, %v", up, start, down)
		case up < math.Min(start, top+0.3048)-slack || down > math.Max(start, (top+bottom)/2)+slack:
			t.Fatalf("too far within %v to %v: %v, %v, %v", top, bottom, up, start, down)
		case start > top+0.3048+slack && up == start || start < (top+bottom)/2-slack && down == start:
			t.Fatalf("room, but did not move within %v to %v: %v, %v, %v", top, bottom, up, start, down)
		}
	})
}

func FuzzAdvise(f *testing.F) {
	f.Add(noon, "partly cloudy, no wind or waves", 1.0, true)
	f.Add("2026-07-18", "50 % cloud 4/0 /% 99999999999999999999/1", math.NaN(), true)
	f.Add("\xff", "no no or nor not, ,;white", math.Inf(-1), true)
	f.Add("9999-99-99 99:99", "İ\u212A\x00\x1b[31msun", math.Copysign(0, -1), false)
	f.Fuzz(func(t *testing.T, date, text string, wind float64, known bool) {
		s := Sky{Date: date, Text: text, Wind: profile.Optional{Value: wind, Known: known}}
		a := Advise(s)
		switch a.Why {
		case "", LowSun, Overcast, Chop, BrightCalm:
		default:
			t.Fatalf("%+v gives %+v", s, a)
		}
		if a.Shift != shiftFor(a.Why) || a != Advise(s) {
			t.Fatalf("%+v gives %+v", s, a)
		}
	})
}

func FuzzStart(f *testing.F) {
	f.Add(3.0, 6.0, 4.0, "shallower")
	f.Add(0.0, math.MaxFloat64, math.Inf(-1), "deeper")
	f.Add(math.NaN(), 1.0, 0.0, "none")
	f.Add(math.SmallestNonzeroFloat64, 0.0, 1.0, "")
	f.Fuzz(func(t *testing.T, top, bottom, start float64, shift string) {
		got := Start(top, bottom, start, Shift(shift))
		valid := top >= 0 && top <= bottom && !math.IsInf(bottom, 0) && !math.IsNaN(start)
		if valid != (got >= top && got <= bottom) {
			t.Fatalf("Start(%v, %v, %v, %q) = %v", top, bottom, start, shift, got)
		}
	})
}
