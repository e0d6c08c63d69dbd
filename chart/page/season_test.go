package page

import (
	"html"
	"strings"
	"testing"

	"coldseam/chart"
)

const svgOf = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30" width="40" height="30"><rect width="40" height="30" fill="#0a3a6e"/></svg>`

func seasonOf(t testing.TB, water string) chart.Season {
	t.Helper()
	drops := three(t)
	for i := range drops {
		drops[i].Water = water
	}
	s, err := chart.SeasonOf(drops)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func seasonPage(t testing.TB, s chart.Season) string {
	t.Helper()
	var b strings.Builder
	if err := WriteSeason(&b, []byte(svgOf), []byte(svgOf), s); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The page of a season has a row of layers for each drop, as the figure has them, and
// the last drop's answer; a hostile name does nothing.
func TestSeasonPage(t *testing.T) {
	s := seasonOf(t, `</script><img src=x onerror=alert(1)>`)
	page := seasonPage(t, s)
	if page != seasonPage(t, s) {
		t.Error("two pages differ")
	}
	for _, d := range s.Drops {
		row := seasonRowOf(d.Drop, s.Units.Shown())
		if !strings.Contains(page, "<th scope=\"row\">"+d.Drop.Date+"</th><td>"+row.Top+"</td><td>"+row.Bottom+"</td>") {
			t.Errorf("no row for %s", d.Drop.Date)
		}
	}
	july := seasonRowOf(s.Drops[1].Drop, s.Units.Shown())
	if july.Top != "73.4" || july.Bottom != "50.7" || july.Thermocline != "15 (14 to 16)" || july.Band != "15 to 29" {
		t.Errorf("July: %+v", july)
	}
	if winter := seasonRowOf(s.Drops[2].Drop, s.Units.Shown()); winter.Thermocline != "" || winter.Metalimnion != "" {
		t.Errorf("winter: %+v", winter)
	}
	if strings.Contains(page, "<img src=x") || strings.Contains(page, "ZgotmplZ") || strings.Count(html.UnescapeString(page), "data:image/svg+xml,") != 2 {
		t.Error("the page is not safe, or lacks a picture")
	}
	if !strings.Contains(page, htmlText(s.Drops[2].Drop.Brief.Rows[0].Value)) {
		t.Error("the last drop's answer is missing")
	}
	var b strings.Builder
	if err := WriteSeason(&b, nil, []byte(svgOf), s); err == nil || b.Len() > 0 {
		t.Error("a season without a picture is written")
	}
}

// Each screen gets its picture, and nothing is asked from elsewhere.
func TestSeasonInBrowser(t *testing.T) {
	ctx, _ := browser(t)
	for _, s := range []screen{phone, desk} {
		v := open(t, ctx, seasonPage(t, seasonOf(t, "Alder Kettle")), s)
		v.until("the picture", `document.querySelector('img.still').complete && document.querySelector('img.still').naturalWidth > 0`)
		v.fits(s.width)
		v.quiet()
	}
}

// What changed stands on the page and in the words for those who see no picture, as text.
func TestSeasonWords(t *testing.T) {
	s := seasonOf(t, "Alder Kettle")
	if page := seasonPage(t, s); strings.Contains(page, "What changed") {
		t.Error("a heading without words")
	}
	s.Words = []string{"Thermocline: 14 to 17 ft.", "<b onclick=alert(1)>\x1b[2J\nSinking"}
	page := seasonPage(t, s)
	for _, w := range []string{"<h2>What changed</h2>", "<li>Thermocline: 14 to 17 ft.</li>", "Thermocline: 14 to 17 ft. "} {
		if !strings.Contains(page, w) {
			t.Errorf("no %q", w)
		}
	}
	if strings.Contains(page, "<b onclick") || strings.Contains(page, "\x1b") {
		t.Error("words of others are not text alone")
	}
}
