package fish

import (
	"bytes"
	_ "embed" // the table
	"slices"
	"sync"

	"github.com/pelletier/go-toml/v2"
)

//go:embed fish.toml
var fishTOML []byte

// table are the fish of fish.toml, in its order.
var table = sync.OnceValue(readTable)

func readTable() []Fish {
	var file struct{ Fish []Entry }
	if err := toml.NewDecoder(bytes.NewReader(fishTOML)).DisallowUnknownFields().Decode(&file); err != nil {
		panic("fish.toml: " + err.Error()) // a fault of this program, which every test finds
	}
	var list []Fish
	for _, e := range file.Fish {
		list = append(list, e.over(Fish{}))
	}
	return list
}

// All returns every fish, coldwater first, then coolwater, then warmwater, always
// in the same order. A fish of own stands in the place of the table's of the same
// key; one that the table lacks comes last of its kind. The slice and all in it are
// the caller's, but for what own holds.
func All(own ...Fish) []Fish {
	all := slices.Clone(table())
	for i := range all {
		all[i].Aliases = slices.Clone(all[i].Aliases)
	}
	for _, f := range own {
		i := slices.IndexFunc(all, func(old Fish) bool { return old.Key == f.Key })
		if i < 0 {
			all = append(all, f)
		} else {
			all[i] = f
		}
	}
	slices.SortStableFunc(all, func(a, b Fish) int { return int(a.Kind) - int(b.Kind) })
	return all
}
