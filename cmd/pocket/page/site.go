package page

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"

	"coldseam/chart/seal"
)

// Part is a file of the site.
type Part struct {
	Name  string
	Bytes []byte
}

const siteHead = `<link rel="manifest" href="manifest.webmanifest">
<link rel="icon" href="icon-192.png">
<link rel="apple-touch-icon" href="icon-apple.png">
`

// Site is the page as a site that a phone installs from and that then works without a
// signal: to be put into any folder that a server gives out over https.
func Site() ([]Part, error) {
	page, err := write(true)
	if err != nil {
		return nil, err
	}
	parts := []Part{{"index.html", page}, {"manifest.webmanifest", []byte(read("site.webmanifest"))}}
	for _, i := range icons {
		b, err := i.draw()
		if err != nil {
			return nil, err
		}
		parts = append(parts, Part{i.name, seal.Put(b)})
	}
	sum := sha256.New()
	names := "" // of what is kept for times without a signal
	for _, p := range parts {
		sum.Write(p.Bytes)
		names += `, "` + strings.Replace(p.Name, "index.html", "./", 1) + `"`
	}
	script := strings.NewReplacer("VERSION", hex.EncodeToString(sum.Sum(nil)[:8]), "FILES", names[2:]).Replace(read("sw.js"))
	return append(parts, Part{"sw.js", seal.Put([]byte(script))}), nil
}
