package notebook

import (
	"slices"

	"coldseam/profile/unit"
)

// headers applies the settings, then the page's keys, then the flags: first the
// units, then, once the page's units are settled, all other keys, since a bare
// number on the page is in those units.
func (b *builder) headers(page []Header, units bool) error {
	for _, h := range slices.Concat(b.r.o.Defaults, b.ordered(page), b.r.o.Flags) {
		// the settings' units wait until the page itself has spoken
		if h.Value == "" || (h.Key == "units") != units || h.From == "settings" && units {
			continue
		}
		if err := b.header(h); err != nil {
			return err
		}
	}
	return nil
}

// ordered are a page's headers, the one that counts last: a key wins over what was read
// from words, and of words the first that was said. A line that is typed wins over all.
func (b *builder) ordered(page []Header) []Header {
	var soft, keyed []Header
	for _, h := range page {
		said := indexKey(soft, h.Key)
		switch {
		case !h.soft:
			keyed = append(keyed, h)
		case h.Key == "sky" && said >= 0 && !b.r.typed: // thunder on the third line counts beside the sun of the first
			soft[said].Value += "; " + h.Value
		default:
			soft = append(soft, h)
		}
	}
	slices.Reverse(soft)
	if b.r.typed {
		return append(keyed, soft...)
	}
	return append(soft, keyed...)
}

// header reads one header into the drop. What was read from words and is refused is
// noted.
func (b *builder) header(h Header) error {
	bare, was := b.page, b.d
	if h.From != "" {
		bare = unit.System{}
	}
	switch err := set(&b.d, h.Key, h.Value, bare); {
	case err == nil:
		b.sayWorded(h)
		b.sayCatch(h)
	case h.soft:
		b.d = was
		b.r.note(h.Line, "%s not taken: %v", h.Key, err)
	case h.From != "":
		return &Error{Name: h.From, Msg: err.Error(), err: err}
	default:
		return b.r.failed(h.Line, h.Key, err)
	}
	return nil
}

func indexKey(hs []Header, key string) int {
	return slices.IndexFunc(hs, func(h Header) bool { return h.Key == key })
}

// quoted shortens a line's text for a note.
