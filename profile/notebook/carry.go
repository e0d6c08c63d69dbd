package notebook

import "coldseam/profile"

// Headers gives what a drop says under some of the keys, each as it would be written; from
// names where it comes from. A key that says nothing is left out.
func Headers(d profile.Drop, from string, keys ...string) (out []Header) {
	for _, name := range keys {
		if k := find(name); k != nil && k.get != nil {
			if v := k.get(&d); v != "" {
				out = append(out, Header{Key: name, Value: v, From: from})
			}
		}
	}
	return out
}
