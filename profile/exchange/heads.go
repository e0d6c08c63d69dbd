package exchange

import (
	"regexp"
	"strings"
	"sync"
	"unicode"

	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// what a column holds.
type what int

const (
	unknown what = iota
	ofDepth
	ofDepthUnit
	ofTemp
	ofTempUnit
	ofStep
	ofSpread
	ofOxygen
	ofPercent
	ofDate
	ofTime
	ofDrop
	ofProfile
	ofKey
	ofKeyUnit
	made   // worked out from the others, and so again
	passed // known, and of no use here
	ofCharacteristic
	ofResult
	ofResultUnit
	ofComment
)

// column is one column of a file.
type column struct {
	name string // as it stands there
	what what
	key  string    // header key, of ofKey and ofKeyUnit
	unit unit.Unit // that its name states
	sign string    // the same as it stands there
	at   *depth    // of a column of one depth
	date string    // of a column of one date
}

type depth struct {
	value float64
	unit  unit.Length
}

// plainNames are the names of columns that have no unit, as plainly writes them.
var plainNames = map[string]what{
	"date": ofDate, "day": ofDate, "sample date": ofDate, "datetime": ofDate, "date time": ofDate, "timestamp": ofDate,
	"time": ofTime, "hour": ofTime, "time of day": ofTime, "sample time": ofTime,
	"drop": ofDrop, "cast": ofDrop, "drop id": ofDrop, "cast id": ofDrop, "profile id": ofDrop,
	"profile": ofProfile, "units": ofKey,
	"depth unit": ofDepthUnit, "depth units": ofDepthUnit, "temp unit": ofTempUnit, "temp units": ofTempUnit, "temperature unit": ofTempUnit,
	"temp step": ofStep, "temp plus minus c": ofSpread,
	"depth corrected m": made, "temp corrected c": made, "flag": made, "flags": made, "may mean": made,
	"utc offset": passed, "time zone": passed,
}

// exchanged are the names of the US water-quality columns in both spellings, letters alone.
var exchanged = map[string]what{
	"activitystartdate": ofDate,
	"activitystarttime": ofTime, "activitystarttimetime": ofTime,
	"activitystarttimezone": passed, "activitystarttimetimezonecode": passed,
	"monitoringlocationid": ofKey, "monitoringlocationidentifier": ofKey,
	"activitydepthheightmeasure": ofDepth, "activitydepthheightmeasuremeasurevalue": ofDepth,
	"activitydepthheightunit": ofDepthUnit, "activitydepthheightmeasuremeasureunitcode": ofDepthUnit,
	"characteristicname": ofCharacteristic,
	"resultvalue":        ofResult, "resultmeasurevalue": ofResult,
	"resultunit": ofResultUnit, "resultmeasuremeasureunitcode": ofResultUnit,
	"resultcomment": ofComment, "resultcommenttext": ofComment,
	"projectid": passed, "projectidentifier": passed, "activityid": passed, "activityidentifier": passed,
	"activitytype": passed, "activitytypecode": passed, "activitymedianame": passed,
	"activityrelativedepthname": passed, "samplecollectionmethodid": passed, "samplecollectionmethodmethodidentifier": passed,
	"resultmeasurequalifier": passed, "measurequalifiercode": passed,
	"resultstatusid": passed, "resultstatusidentifier": passed, "resultvaluetype": passed, "resultvaluetypename": passed,
}

// measured are the names of what is read at a depth, without their units.
var measured = map[string]what{
	"depth": ofDepth, "depths": ofDepth, "sample depth": ofDepth, "depth below surface": ofDepth, "z": ofDepth,
	"temp": ofTemp, "temperature": ofTemp, "water temp": ofTemp, "water temperature": ofTemp, "t": ofTemp,
	"do": ofOxygen, "oxygen": ofOxygen, "dissolved oxygen": ofOxygen, "o2": ofOxygen,
	"do sat": ofPercent, "do saturation": ofPercent, "oxygen saturation": ofPercent, "dissolved oxygen saturation": ofPercent, "saturation": ofPercent,
}

// longestHead is more bytes than the name of any column that is known has.
const longestHead = 200

// headOf reads the name of a column.
func headOf(name string) column {
	c := column{name: name}
	if len(name) > longestHead {
		return c
	}
	if w, ok := exchanged[lettersOf(name)]; ok {
		c.what = w
		if w == ofKey {
			c.key = "spot"
		}
		return c
	}
	words := plainly(name)
	if w, ok := plainNames[words]; ok {
		if c.what = w; w == ofKey {
			c.key = words
		}
		return c
	}
	if c.named(words) {
		return c
	}
	last := strings.LastIndexByte(words, ' ')
	if last < 0 {
		return c
	}
	base, sign := strings.TrimSuffix(words[:last], " in"), words[last+1:]
	if sign == "unit" || sign == "units" {
		if key, ok := notebook.KeyNamed(base); ok {
			c.what, c.key = ofKeyUnit, key
			if key == "oxygen" {
				c.what = ofKey
			}
		}
		return c
	}
	if c.withUnit(base, sign) {
		return c
	}
	return column{name: name}
}

// named takes a name that states no unit.
func (c *column) named(words string) bool {
	if w, ok := measured[words]; ok {
		c.what = w
		return true
	}
	key, ok := notebook.KeyNamed(words)
	if ok {
		c.what, c.key = ofKey, key
	}
	return ok
}

// withUnit takes a name and the unit behind it.
func (c *column) withUnit(base, sign string) bool {
	if !c.named(base) {
		return false
	}
	switch c.what {
	case ofDepth:
		c.unit = lengthNamed(sign)
	case ofTemp:
		c.unit = scaleNamed(sign)
	case ofOxygen, ofPercent:
		switch sign {
		case "mgl", "ppm":
			c.what, c.unit = ofOxygen, unit.Other
		case "%", "pct", "percent", "sat":
			c.what, c.unit = ofPercent, unit.Other
		}
	case ofKey:
		for _, of := range []unit.Quantity{unit.OfLength, unit.OfTemperature, unit.OfSpeed, unit.OfMass, unit.OfTime} {
			if u, ok := unit.Named(sign, of); ok {
				c.unit, c.sign = u, sign
			}
		}
	}
	return c.unit != unit.None
}

// oneWord writes a unit of several words as one.
var oneWord = strings.NewReplacer("mg/l", "mgl", "mg l", "mgl", "mg per l", "mgl", "deg c", "c", "deg f", "f", "% sat", "%", " per ", "/")

// plainly is a name in small letters with single blanks for all signs between its words.
func plainly(name string) string {
	var b strings.Builder
	low := false
	for _, r := range name {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r) || r == '%' || r == '/':
			if low && unicode.IsUpper(r) { // DepthM
				b.WriteByte(' ')
			}
			b.WriteRune(unicode.ToLower(r))
		case r == '°' || r == 'º':
		default:
			b.WriteByte(' ')
		}
		low = unicode.IsLower(r)
	}
	words := strings.Join(strings.Fields(b.String()), " ")
	return oneWord.Replace(words)
}

// lettersOf is a name's letters alone, in small ones.
func lettersOf(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, name)
}

// atDepth is the name of a column of one depth: "temp_f_5ft", "5 ft", "0.5".
var atDepth = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:(.*?)[\s_@-]+)??(?:at[\s_]+)?(\d+(?:[.,]\d+)?)[\s_]*([A-Za-z]*)$`)
})

// depthOf reads the name of a column of one depth.
func depthOf(name string) (column, bool) {
	m := atDepth().FindStringSubmatch(strings.TrimSpace(name[:min(len(name), longestHead)]))
	if m == nil || len(name) > longestHead {
		return column{}, false
	}
	c := column{what: ofTemp}
	if m[1] != "" {
		c = headOf(m[1])
	}
	if c.what != ofTemp && c.what != ofOxygen && c.what != ofPercent {
		return column{}, false
	}
	n, _, ok := unit.ScanNumber(m[2], true)
	u := lengthNamed(m[3])
	if !ok || m[3] != "" && u == unit.NoLength {
		return column{}, false
	}
	c.name, c.at = name, &depth{n.Value, u}
	return c, true
}
