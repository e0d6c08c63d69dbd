package asset

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
)

// Package is what npm is asked for. go-echarts 2.6.7 writes options for echarts 5.4.
const Package = "echarts@5.4.3"

// scriptFile is the name the script is kept under.
const scriptFile = "echarts.min.js"

// File is one file out of the package.
type File struct {
	From   string // in the package
	To     string // in the folder of the assets
	SHA256 string // of its bytes, in hexadecimal
}

// Files are the files that are kept: the script, then its licences and its notice.
var Files = []File{
	{"package/dist/echarts.min.js", scriptFile, "1156429a16a38cb8604dcc6518c19406d4226142d908f8edd2e3531443c54d19"},
	{"package/LICENSE", "echarts-license.txt", "9ef11df57e751e8c6d10d54e1855c64d316627bbe89e73326de7e3ccdb8184aa"},
	{"package/NOTICE", "echarts-notice.txt", "7129cc3d8db9a2e10b820ad6f5f69ffcde16c110d48c2e41917a2d8e81ab57fb"},
	{"package/licenses/LICENSE-d3", "echarts-d3.txt", "73937be9a025412ce65c08f1ff5449dee4f678434382968b8fa2bf5cc79a79cf"},
}

// Check says how b differs from what the file must be, nil where it does not.
func (f File) Check(b []byte) error {
	sum := sha256.Sum256(b)
	if got := hex.EncodeToString(sum[:]); got != f.SHA256 {
		return fmt.Errorf("%s: its SHA-256 is %s, want %s", f.To, got, f.SHA256)
	}
	return nil
}
