package report

import (
	"encoding/json"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/demo"
	"coldseam/profile/layers"
	"coldseam/profile/plan"
	"coldseam/profile/tilt"
)

const (
	blowing = "lake length: 800 m\nwind: SW 10 mph\n"
	metric  = "date: 2026-07-18\nunits: m C\nbottom: 9.5 m\nlake length: 800 m\nwind: SW 4.5 m/s\n0 23\n1.5 23\n3 22\n4 21\n4.5 18.5\n5 16\n6 13.5\n7.5 11\n9 10.5\n"
)

// tiltOf is what is said of a page's tilt, on one line.
func tiltOf(t *testing.T, page, fish string, blown profile.Optional, at tilt.Place) string {
	t.Helper()
	p := demo.PlanFor(t, page, fish)
	got, no := p.Tilt(blown, at)
	if no != "" {
		t.Fatalf("%s: %s", no, page)
	}
	return strings.Join(strings.Fields(Tilt(p, got, 4000)), " ")
}

func TestTilt(t *testing.T) {
	unknown := profile.Optional{}
	for _, c := range []struct {
		name, page, fish string
		blown            profile.Optional
		at               tilt.Place
		want             []string
		never            []string
	}{
		{"a small lake", blowing + julyPage, "rainbow", unknown, tilt.AnyPlace,
			[]string{"No need to move: the ends differ by only about 1 ft.", "SW end 12 to 16 ft thermocline where the wind comes from", "NE end 14 to 18 ft thermocline where it blows to",
				"Rocking 2.5 hours there and back (2.5 to 3 hours)", "Read again 80 minutes after the wind drops or turns: by then it leans the other way",
				"How long it has blown was not given (--hours): this holds after 40 minutes of this wind.", "Where on the lake you took the drop was not given",
				"The wind is taken to blow along all 2620 ft of the lake; across it the tilt is less."}, []string{"deeper lake", "cold water may come"}},
		{"a longer one", "lake length: 3 km\nwind: SW 10 mph\n" + julyPage, "rainbow", profile.Some(3 * 3600), tilt.Upwind,
			[]string{"Try the SW end first, where the wind comes from: water of 66 F or less is about 4.5 ft shallower to reach there than at the NE end.", "along all 1.9 miles of the lake"}, []string{"--at", "--hours", "so long a lake"}},
		{"no direction", "lake length: 3 km\nwind: 10 mph\n" + julyPage, "rainbow", unknown, tilt.Middle, []string{"Try the upwind end first", "than at the downwind end", "Upwind end", "Downwind end"}, []string{"--at"}},
		{"not long", "lake length: 3 km\nwind: SW 10 mph\n" + julyPage, "rainbow", profile.Some(3600), tilt.AnyPlace,
			[]string{"Read again in ", "then this wind has tilted it fully", "It has not blown long enough: after 2.5 hours the ends would differ by 4.5 ft."}, nil},
		{"in a cold lake", "lake length: 1 km\nwind: SW 10 mph\nunits: ft F\n0 54\n5 54\n10 54\n15 47\n20 44\n29 43\n", "rainbow", unknown, tilt.AnyPlace,
			[]string{"Try the NE end first, where the wind blows to: the warm layer reaches about", "and rainbow trout like it warmer.", "The deepest reading, 29 ft, is taken as the bottom; a deeper lake rocks faster (--deepest)."}, nil},
		{"bass", "lake length: 3 km\nwind: SW 10 mph\n" + julyPage, "smallmouth", unknown, tilt.AnyPlace, []string{"Either end: the water suits smallmouth bass from the top down at both."}, nil},
		{"no wind", "lake length: 3 km\nwind: calm\n" + julyPage, "rainbow", unknown, tilt.AnyPlace, []string{"No wind, no tilt", "Read again if the wind rises"}, []string{"--hours", "--at", "NE end", "Ends differ"}},
		{"too warm to the bottom", "lake length: 3 km\nwind: SW 10 mph\nbottom: 15 ft\ndeepest: 15 ft\nunits: ft F\n0 80\n5 80\n10 76\n15 71\n", "rainbow", unknown, tilt.AnyPlace, []string{"Neither end is better: no water here suits rainbow trout.", "WARM WATER"}, nil},
		{"a blow", "lake length: 3 km\nwind: SW 16 mph\n" + julyPage, "rainbow", profile.Some(20 * 3600), tilt.AnyPlace, []string{"WIND: too much for a small boat at anchor. Come in."}, nil},
		{"a gale on a long lake", "lake length: 8 km\nwind: SW 25 mph\n" + julyPage, "rainbow", profile.Some(60 * 3600), tilt.AnyPlace, []string{"Try the SW end first, where the wind comes from: cold water may have come up there, to the top.", "can bring cold water to the top at the SW end, and stirs the layers: take a new drop there", "In so long a lake bays", "Rocking"}, []string{"Ends differ", "thermocline where", "--at"}},
		{"a gale on a cold lake", "lake length: 8 km\nwind: SW 25 mph\nunits: ft F\n0 54\n5 54\n10 54\n15 47\n20 44\n29 43\n", "rainbow", unknown, tilt.AnyPlace, []string{"Try the NE end first, where the wind blows to: the warm water is pushed there, and rainbow trout like it warmer."}, []string{"deeper there"}},
		{"a wind on a long lake", "lake length: 4 km\nwind: SW 13 mph\n" + julyPage, "rainbow", profile.Some(60 * 3600), tilt.AnyPlace, []string{"at the strong end of what you noted, cold water may come to the top at the SW end"}, nil},
		{"metric", strings.Replace(metric, "800 m", "4 km", 1), "rainbow", unknown, tilt.AnyPlace, []string{"water of 19 C or less is about", "along all 4 km"}, []string{" ft", "inch", "mph", " F "}},
	} {
		got := tiltOf(t, c.page, c.fish, c.blown, c.at)
		for _, w := range c.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: no %q in\n%s", c.name, w, got)
			}
		}
		for _, w := range c.never {
			if strings.Contains(got, w) {
				t.Errorf("%s: %q in\n%s", c.name, w, got)
			}
		}
	}
}

// Every reason, refusal and kind of column has words of its own, in feet and in metres.
func TestTiltCodesHaveWords(t *testing.T) {
	for _, page := range []string{blowing + julyPage, metric} {
		p := demo.PlanFor(t, page, "rainbow")
		made, _ := p.Tilt(profile.Optional{}, tilt.AnyPlace)
		for _, c := range []struct {
			dir, typeName string
			words         func(code string) string
		}{
			{"../tilt", "Reason", func(code string) string {
				made.Choice.Why = tilt.Reason(code)
				return tilted{speak(p), made}.choice()
			}},
			{"../tilt", "Refusal", func(code string) string { return NoTilt(p, tilt.Refusal(code)) }},
			{"../tilt", "Rise", func(code string) string {
				made.Rise = tilt.Rise(code)
				return strings.Join(tilted{speak(p), made}.notes(), " ")
			}},
		} {
			said := map[string]string{}
			for _, code := range codes(t, c.dir, c.typeName) {
				text := c.words(code)
				if len(text) < 20 || strings.Contains(text, "%!") || said[text] != "" {
					t.Errorf("%s %q says %q, as %q does", c.typeName, code, text, said[text])
				}
				said[text] = code
			}
		}
	}
	for _, s := range []layers.Structure{layers.TooFew, layers.Mixed, layers.Inverse, layers.SkinOnly} {
		if text := notLayered(s); len(text) < 20 {
			t.Errorf("%s: %q", s, text)
		}
	}
}

func TestLapse(t *testing.T) {
	for s, want := range map[float64]string{0: "5 minutes", 200: "5 minutes", 3500: "60 minutes", 5900: "100 minutes", 6100: "1.5 hours", 20160: "5.5 hours", 80000: "22 hours"} {
		if got := lapse(s); got != want {
			t.Errorf("%v s: %s, want %s", s, got, want)
		}
	}
	if got := lapses(profile.Estimate{Best: 4000, Low: 3000, High: 7000}); got != "50 to 115 minutes" {
		t.Error(got)
	}
}

// The whole answer has a line on the wind where it matters, and only there.
func TestWindTiltsInFull(t *testing.T) {
	for page, want := range map[string]bool{
		"lake length: 3 km\nwind: SW 10 mph\n" + julyPage: true, blowing + julyPage: false, // the ends hardly differ
		"wind: SW 10 mph\n" + julyPage: false, "lake length: 3 km\n" + julyPage: false,
		"lake length: 3 km\nwind: SW 10 mph\nunits: ft F\n0 60\n10 60\n20 60\n": false,
	} {
		_, changes := Reasons(demo.PlanFor(t, page, "rainbow"))
		got := strings.Join(changes, " ")
		if strings.Contains(got, "sets the thermocline about 2 ft lower at the NE end and as much higher at the SW end.") != want {
			t.Errorf("want %v:\n%s\n%s", want, page, got)
		}
	}
}

// The JSON is in SI, has no number for what has none, and the same words.
func TestTiltJSON(t *testing.T) {
	for _, c := range []struct{ page, want string }{
		{blowing + julyPage, `"wind_mps":4.47,"wind_from":"SW","wind_to":"NE","lake_length_m":800,"upper_layer_m":`},
		{blowing + julyPage, `"try":"either","why":"small","text":"No need to move: the ends differ by only about 1 ft.","warnings":["WARM WATER`},
		{strings.Replace(blowing, "SW 10 mph", "calm", 1) + julyPage, `"cold_water_upwind":"stays down","try":"either","why":"calm"`},
	} {
		p := demo.PlanFor(t, c.page, "rainbow")
		made, _ := p.Tilt(profile.Optional{}, tilt.AnyPlace)
		data, err := json.Marshal(TiltAsJSON(p, made))
		if err != nil || !strings.Contains(string(data), c.want) || strings.Contains(string(data), "blown_s") {
			t.Errorf("no %s in %s, %v", c.want, data, err)
		}
	}
	var p plan.Plan = demo.PlanFor(t, blowing+julyPage, "rainbow")
	made, _ := p.Tilt(profile.Some(600), tilt.Upwind)
	if data, _ := json.Marshal(TiltAsJSON(p, made)); !strings.Contains(string(data), `"blown_s":600,"at":"upwind"`) {
		t.Errorf("%s", data)
	}
}
