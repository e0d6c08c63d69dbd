package exchange

import (
	"fmt"
	"strings"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// result reads a row of the exchange columns: one result of one characteristic. Oxygen
// waits for the temperature of its depth.
func (in *reader) result(l line) error {
	c, err := in.b.cast(l, 0)
	if err != nil {
		return err
	}
	value := l.of(ofResult)
	if missing(value) {
		in.skip("a result without a value is passed over")
		return nil
	}
	if remark := l.of(ofComment); remark != "" {
		at := strings.TrimSpace(l.of(ofDepth) + " " + l.of(ofDepthUnit))
		if at != "" {
			remark = at + ": " + remark
		}
		if err := c.note("note", remark, in.line, unit.None); err != nil {
			return err
		}
	}
	sign := plainly(l.of(ofResultUnit))
	r := profile.Reading{Line: in.line, Text: l.of(ofDepth) + " " + value}
	switch name := strings.ToLower(l.of(ofCharacteristic)); name {
	case "depth, secchi disk depth", "secchi depth", "secchi disk depth":
		return c.note("secchi", value+" "+sign, in.line, unit.None)
	case "temperature, water":
		if err := in.resultDepth(&r, l); err != nil {
			return err
		}
		if err := in.temp(&r, value, scaleNamed(sign)); err != nil {
			return err
		}
		return in.b.add(c, r, cell{}, cell{})
	case "dissolved oxygen (do)", "oxygen", "dissolved oxygen", "dissolved oxygen saturation":
		if err := in.resultDepth(&r, l); err != nil {
			return err
		}
		n, err := in.number(value+" "+sign, column{what: ofOxygen})
		if err != nil {
			return err
		}
		if strings.HasSuffix(name, "saturation") {
			n.col.what = ofPercent
		}
		c.waiting = append(c.waiting, oxygenOf{r.DepthUnit.Metres(r.Depth), in.line, n})
		return nil
	default:
		in.skip(fmt.Sprintf("results of %s are passed over", quote(l.of(ofCharacteristic))))
		return nil
	}
}

func (in *reader) resultDepth(r *profile.Reading, l line) error {
	if l.of(ofDepth) == "" {
		return fmt.Errorf("the result has no depth")
	}
	return in.depth(r, l.of(ofDepth), l.unit(ofDepthUnit))
}

// oxygenOf is an oxygen that waits for its temperature.
type oxygenOf struct {
	depthM float64
	line   int
	cell   cell
}

// settle gives oxygen to the readings of its depths, the first to the first; percent only
// where no mg/L are given.
func (c *cast) settle(in *reader) error {
	percent := map[int]bool{}
	for _, kind := range []what{ofOxygen, ofPercent} {
		for _, o := range c.waiting {
			if o.cell.col.what != kind {
				continue
			}
			in.line = o.line
			i := -1
			for j, r := range c.d.Readings {
				if i < 0 && !r.Oxygen.Known && !percent[j] && unit.RoundTo(r.DepthUnit.Metres(r.Depth)-o.depthM, 4) == 0 {
					i = j
				}
			}
			switch {
			case kind == ofOxygen && o.cell.value > notebook.MaxMgL, kind == ofPercent && o.cell.value > notebook.MaxPercent:
				return in.fail(o.line, fmt.Sprintf("%s of oxygen is more than water holds", unit.Exact(o.cell.value)))
			case i < 0:
				in.skip("oxygen at a depth without a temperature, or in percent beside mg/L, is passed over")
			case kind == ofOxygen:
				c.d.Readings[i].Oxygen = profile.Some(o.cell.value)
			default:
				percent[i] = true
				c.percent = append(c.percent, percentOf{i, o.line, o.cell.value})
			}
		}
	}
	return nil
}
