// Package licence holds the licences of the parts that are built into the program, where
// they were gathered before it was built (see README.txt). It gathers nothing by itself.
package licence

//go:generate go run ./internal/gather gathered.txt coldseam/cmd/coldseam linux/amd64 darwin/amd64 windows/amd64

import (
	"embed"
	"fmt"
	"runtime/debug"
	"strings"
)

// The pattern matches README.txt, so that a folder without licences builds too.
//
//go:embed *.txt
var folder embed.FS

// Text is the licences of the program's Go parts, headed by the list of them. The error
// says how they are gathered, where they were not before the program was built, or for
// other modules than those in it.
func Text() (string, error) {
	b, err := folder.ReadFile("gathered.txt")
	if err != nil {
		return "", fmt.Errorf("the licences of its parts are not in this build: run go generate ./cmd/coldseam/internal/licence and build again")
	}
	text := string(b)
	// A test is built from more modules than the program.
	if info, ok := debug.ReadBuildInfo(); ok && !strings.HasSuffix(info.Path, ".test") {
		if missing := lacks(text, info.Deps); missing != "" {
			return "", fmt.Errorf("the licences in this build are of other parts than it has, such as %s: run go generate ./cmd/coldseam/internal/licence and build again", missing)
		}
	}
	return text, nil
}

// lacks names the first module whose licence is not in the text, "" where none is missing.
func lacks(text string, modules []*debug.Module) string {
	for _, m := range modules {
		if m.Replace != nil {
			m = m.Replace
		}
		if name := m.Path + " " + m.Version; !strings.Contains(text, "\n"+Head+name+", ") {
			return name
		}
	}
	return ""
}

// Head begins the line over a licence, which goes on with the name of the part, its
// version where it has one, and the name of the file.
const Head = "=== "
