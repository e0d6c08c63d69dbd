package weight

import "strings"

// metals are what beads and shot are made of, kg/m3. From memory, but tungsten: what
// is sold as tungsten is an alloy of 16000 to 18500 (common practice), pure metal
// being 19250.
var metals = []struct {
	name    string
	density float64
}{
	{"tungsten", 17500},
	{"lead", 11340},
	{"bismuth", 9780},
	{"copper", 8960},
	{"brass", 8500},
	{"steel", 7850},
	{"tin", 7290},
	{"glass", 2500},
}

// MetalDensity is the density in kg/m3 of what a bead is made of, by its English
// name in any case: tungsten, lead, bismuth, copper, brass, steel, tin or glass.
func MetalDensity(name string) (kgM3 float64, ok bool) {
	for _, m := range metals {
		if strings.EqualFold(strings.TrimSpace(name), m.name) {
			return m.density, true
		}
	}
	return 0, false
}

// metalNames lists them for a message.
func metalNames() string {
	var names []string
	for _, m := range metals {
		names = append(names, m.name)
	}
	return strings.Join(names, ", ")
}
