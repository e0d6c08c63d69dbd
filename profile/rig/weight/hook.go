package weight

import (
	"fmt"
	"math"
	"strconv"
)

const (
	smallestHook = 24 // hooks are numbered backwards
	largestHook  = 2
	// anyHook is assumed where no hook is named, with its dressing 0.05 g
	// (common practice for sizes 10 to 14).
	anyHook = 12
	// hook12Kg is the wire of a size 12 nymph hook (from memory), about 18 mm of
	// 0.6 mm wire.
	hook12Kg = 0.00004
	// dressed is the mass of thread, fibre and fur by that of the hook (assumed).
	dressed   = 0.25
	hookKgM3  = 7850.0 // steel wire, from memory
	fibreKgM3 = 1200.0 // kg/m3 of fur, feather and thread, from memory
)

// hookKg is the mass of a hook without its dressing. It doubles with every second
// size, which from memory is about what wire hooks do:
//
//	size   4     6     8     10    12    14    16    18    20
//	g      0.16  0.113 0.08  0.057 0.04  0.028 0.02  0.014 0.01
func hookKg(size int) float64 {
	return hook12Kg * math.Exp2(float64(anyHook-size)/4)
}

// OnHook is a bead tied on a hook of a size from 2 to 24 with its dressing, the
// density being that of the three together. A bead of no mass gives the bare fly.
func OnHook(bead Weight, size int) (Weight, error) {
	if size < largestHook || size > smallestHook {
		return Weight{}, hookError(strconv.Itoa(size))
	}
	hook := hookKg(size)
	kg, m3 := hook*(1+dressed), hook/hookKgM3+hook*dressed/fibreKgM3
	text := fmt.Sprintf("hook %d", size)
	if bead.Kg > 0 && bead.Density > 0 {
		kg, m3 = kg+bead.Kg, m3+bead.Kg/bead.Density
		text = bead.Text + ", " + text
	}
	return Weight{kg, kg / m3, text}, nil
}

func hookError(size string) error {
	return fmt.Errorf("hook %s is not a likely size: write %d to %d, e.g. #12", size, largestHook, smallestHook)
}
