package exchange

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"time"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// Agency says what the exchange columns need beside the drops. What is "" or nil is left
// out: nothing is made up for it.
type Agency struct {
	Project string
	Site    func(water string) string // what the agency calls the place, "" where that is not known
	Zone    *time.Location            // of the clock by which the drops have their times
}

// agencyHeads are the columns of physical and chemical results, spelled as the exchange
// spells them (handbook/angling-practice.md 6).
var agencyHeads = []string{
	"Project ID", "Monitoring Location ID", "Activity ID", "Activity Type", "Activity Media Name",
	"Activity Start Date", "Activity Start Time", "Activity Start Time Zone",
	"Activity Depth/Height Measure", "Activity Depth/Height Unit", "Activity Relative Depth Name", "Sample Collection Method ID",
	"Characteristic Name", "Result Value", "Result Unit", "Result Measure Qualifier", "Result Status ID", "Result Value Type", "Result Comment",
}

// Errors of drops that the exchange columns cannot carry.
var (
	ErrNoZone = errors.New("it has a time, and the exchange columns want the time's zone")
	ErrNoCode = errors.New("the exchange columns want the code of a time zone, such as CDT, and this one has none")
	ErrNoDate = errors.New("it has no date, and the exchange columns want one")
	ErrNoSite = errors.New("the drops are of several waters, which the exchange columns tell apart by the site's name alone")
	ErrSite   = errors.New("the drops are of several waters, and the site given is one place")
)

// Check says why the drops cannot be carried out so, and which is the first that cannot:
// its item, and one of the errors above or that of a time which is not to be settled.
func (a Agency) Check(items []Item) (*Item, error) {
	waters, sites := map[string]*Item{}, map[string]bool{}
	nameless := (*Item)(nil)
	for i := range items {
		it := &items[i]
		if _, _, err := a.when(it.Drop.Date); err != nil {
			return it, err
		}
		waters[strings.ToLower(strings.TrimSpace(it.Drop.Water))] = it
		sites[a.site(it)] = true
		if a.site(it) == "" {
			nameless = it
		}
	}
	switch {
	case len(waters) > 1 && nameless != nil:
		return nameless, ErrNoSite
	case len(waters) > len(sites):
		return &items[len(items)-1], ErrSite
	}
	return nil, nil
}

func (a Agency) site(it *Item) string {
	if a.Site == nil {
		return ""
	}
	return a.Site(it.Drop.Water)
}

// when is the time of day of a drop and its zone's code.
func (a Agency) when(date string) (clock, code string, err error) {
	day, clock := dayAndTime(date)
	switch {
	case day == "":
		return "", "", ErrNoDate
	case clock == "":
		return "", "", nil
	case a.Zone == nil:
		return "", "", ErrNoZone
	}
	t, err := at(date, a.Zone)
	if err != nil {
		return "", "", err
	}
	code = t.Format("MST")
	if strings.ContainsAny(code, "+-0123456789") {
		return "", "", ErrNoCode
	}
	return clock, code, nil
}

// Write writes a row for each temperature, oxygen and Secchi depth. Depths and
// temperatures are the corrected ones, with a comment that says what was written and what
// was done. The items have passed Check.
func (a Agency) Write(to io.Writer, items []Item) error {
	w := newWriter(to)
	w.Write(agencyHeads)
	for i := range items {
		it := &items[i]
		times := map[string]int{}
		for _, r := range it.Drop.Readings {
			mm := fmt.Sprintf("%.0f", math.Round(r.DepthUnit.Metres(r.Depth)*1000))
			times[mm]++
			id := it.activity(mm, times[mm])
			w.row(a.row(it, id, depthOfReading(r), tempOf(r), a.comment(it, r)))
			if r.Oxygen.Known {
				w.row(a.row(it, id, depthOfReading(r), result{"Dissolved oxygen (DO)", exact(r.Oxygen.Value), "mg/l"}, a.oxygenComment(it, r)))
			}
		}
		if it.Drop.Secchi.Known {
			w.row(a.row(it, it.activity("secchi", 1), [2]string{}, secchiOf(it.Drop), a.place(it)))
		}
	}
	return w.end()
}

// result is one result of one characteristic.
type result struct{ name, value, unit string }

// row is a row of the exchange. Method, relative depth, qualifier and status are the
// agency's to give.
func (a Agency) row(it *Item, id string, depth [2]string, r result, comment string) []string {
	day, _ := dayAndTime(it.Drop.Date)
	clock, code, _ := a.when(it.Drop.Date)
	return []string{
		a.Project, a.site(it), id, "Field Msr/Obs", "Water", day, clock, code,
		depth[0], depth[1], "", "", r.name, r.value, r.unit, "", "", "Actual", comment,
	}
}

// exchangeUnit is the unit of the exchange nearest to one that was written.
func exchangeUnit(u unit.Length) unit.Length { return unit.System{Depth: u}.Shown().Depth }

// depthOfReading is the depth and its unit, as written where nothing had to be corrected.
func depthOfReading(r profile.Reading) [2]string {
	u := exchangeUnit(r.DepthUnit)
	if u == r.DepthUnit && !depthCorrected(r) {
		return [2]string{exact(r.Depth), u.String()}
	}
	return [2]string{unit.Digits(u.From(r.DepthM), 2), u.String()}
}

// tempOf is the temperature, as written where nothing had to be corrected.
func tempOf(r profile.Reading) result {
	out := result{"Temperature, water", digits(r.Temp, r.Step), "deg " + r.TempUnit.String()}
	if tempCorrected(r) {
		out.value = unit.Digits(r.TempUnit.From(r.TempC), 2)
	}
	return out
}

// secchiOf is the Secchi depth, in the unit in which the page has it.
func secchiOf(d profile.Drop) result {
	value, sign := amountOf(strings.Join(notebook.Values(&d, "secchi"), ""))
	u := lengthNamed(sign)
	if to := exchangeUnit(u); to != u {
		value, u = unit.Digits(to.From(d.Secchi.Value), 3), to
	}
	return result{"Depth, Secchi disk depth", value, u.String()}
}

func depthCorrected(r profile.Reading) bool {
	return math.Abs(r.DepthUnit.Metres(r.Depth)-r.DepthM) > 1e-4
}

func tempCorrected(r profile.Reading) bool {
	return math.Abs(r.TempUnit.ToC(r.Temp)-r.TempC) > 1e-4
}

// comment says what was done to a reading, what is odd about it, and where it is from.
func (a Agency) comment(it *Item, r profile.Reading) string {
	var out []string
	if r.Flag != "" {
		text := "Flagged: " + string(r.Flag)
		if r.Guess != "" {
			text += ", may mean " + r.Guess
		}
		out = append(out, text)
	}
	if tempCorrected(r) {
		out = append(out, fmt.Sprintf("Thermometer read %s %s; corrected by its ice check, %s %s", digits(r.Temp, r.Step), r.TempUnit, signed(r.TempUnit.DiffFromC(-it.Drop.IcePoint.Value)), r.TempUnit))
	}
	if r.SpreadC > 0 {
		out = append(out, fmt.Sprintf("Read to within %s %s", unit.Digits(r.TempUnit.DiffFromC(r.SpreadC), 2), r.TempUnit))
	}
	return strings.Join(slices.DeleteFunc(append(out, depthComment(it.Drop, r), a.place(it)), func(s string) bool { return s == "" }), ". ")
}

// oxygenComment tells that oxygen may have been measured in percent.
func (a Agency) oxygenComment(it *Item, r profile.Reading) string {
	text := depthComment(it.Drop, r)
	if it.Drop.OxygenUnit == "%" {
		text = strings.TrimPrefix(text+". The page gives oxygen in percent of saturation: this may be worked out from it", ". ")
	}
	return strings.Trim(text+". "+a.place(it), ". ")
}

// depthComment says by what a depth was corrected.
func depthComment(d profile.Drop, r profile.Reading) string {
	u := exchangeUnit(r.DepthUnit)
	var by []string
	if depthCorrected(r) {
		length := func(m float64) string { return unit.Digits(u.From(m), 2) + " " + u.String() }
		if d.Marks == profile.MarksAtGunwale {
			by = append(by, "marks counted "+length(d.FreeboardM)+" above the water")
		}
		if d.LineAngle.Or(0) != 0 {
			by = append(by, "line "+exact(d.LineAngle.Value)+" degrees from the vertical")
		}
		if d.BulbBelow.Or(0) != 0 {
			by = append(by, "thermometer "+length(d.BulbBelow.Value)+" below the line's zero")
		}
	}
	written := fmt.Sprintf("Depth by the line %s %s", exact(r.Depth), r.DepthUnit)
	switch {
	case len(by) > 0:
		return written + "; corrected for " + strings.Join(by, ", ")
	case u != r.DepthUnit:
		return written
	}
	return ""
}

func signed(v float64) string {
	text := unit.Digits(v, 2)
	if v > 0 {
		text = "+" + text
	}
	return text
}

// place is where a drop was taken, in words: its spot, and the water where the agency has
// no name for it.
func (a Agency) place(it *Item) string {
	water := it.Drop.Water
	if a.site(it) != "" {
		water = ""
	}
	return strings.Join(slices.DeleteFunc([]string{water, it.Drop.Spot}, func(s string) bool { return s == "" }), ", ")
}
