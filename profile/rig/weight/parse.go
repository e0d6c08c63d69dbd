package weight

import (
	"errors"
	"fmt"
	"strings"

	"coldseam/profile/unit"
)

const (
	examples = "write e.g. 0.25 g, 3.3 mm tungsten #12 or BB shot"
	longest  = 80 // characters; no fly's weight takes more
)

// Parse reads a weight in one of three forms:
//
//	0.25 g, 4 grains, 1/32 oz               the mass of the whole, dry
//	3.3 mm tungsten, brass bead 1/8 in #12  a bead, its metal and the hook
//	BB shot, no. 4 shot, lead shot AAA      a split shot of the UK scale
//
// A bead is taken to be on a hook 12 where none is named, since the two weigh
// together. An inch is 25.4 mm though beads sold as 1/8 in may be 3.3 mm. An error is
// one line that says what was not understood; a weight is above zero and MostKg at
// most, its density above that of water.
func Parse(text string) (Weight, error) {
	short := strings.Join(strings.Fields(text), " ")
	switch n := len([]rune(short)); {
	case n == 0:
		return Weight{}, errors.New("no weight: " + examples)
	case n > longest:
		return Weight{}, fmt.Errorf("a weight of %d characters is not understood: %s", n, examples)
	}
	w, err := parse(short)
	if err == nil && !(w.Kg > 0 && w.Kg <= MostKg) {
		err = errors.New("not a likely weight, it is above 0 and at most 50 g")
	}
	if err != nil {
		return Weight{}, fmt.Errorf("%q: %w", short, err)
	}
	return w, nil
}

func parse(text string) (Weight, error) {
	if kg, err := unit.ParseMass(text); err == nil {
		return Weight{kg, AnyFly, text}, nil
	}
	var f found
	if err := f.words(text); err != nil {
		return Weight{}, err
	}
	return f.weight()
}

// weight is the weight of what was found.
func (f found) weight() (Weight, error) {
	isBead := f.bead || f.diameterM != 0 || f.hook != 0
	switch {
	case f.isShot && isBead:
		return Weight{}, fmt.Errorf("a shot and a fly at once: name one, %s", examples)
	case f.isShot:
		return f.asShot()
	case isBead || f.metal != "":
		return f.asBead()
	}
	return Weight{}, errors.New("not understood: " + examples)
}

func (f found) asShot() (Weight, error) {
	switch {
	case f.shot == "":
		return Weight{}, errors.New("the shot's size is missing: write e.g. BB shot or no. 4 shot")
	case f.metal == "":
		return Shot(f.shot)
	}
	w, err := shotOf(f.shot, f.metal)
	w.Text = strings.TrimSuffix(w.Text, "shot") + f.metal + " shot"
	return w, err
}

func (f found) asBead() (Weight, error) {
	switch {
	case f.diameterM == 0:
		return Weight{}, errors.New("the bead's diameter is missing: write e.g. 3.3 mm tungsten #12")
	case f.metal == "":
		return Weight{}, fmt.Errorf("the bead's metal is missing (%s): write e.g. 3.3 mm tungsten #12", metalNames())
	}
	bead, err := Bead(f.diameterM, f.metal)
	if err != nil {
		return Weight{}, err
	}
	if f.hook == 0 {
		w, err := OnHook(bead, anyHook)
		w.Text += " assumed"
		return w, err
	}
	return OnHook(bead, f.hook)
}
