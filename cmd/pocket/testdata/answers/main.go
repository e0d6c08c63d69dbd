// Answers reads pages, a list of texts in JSON, and writes a list with what the terminal's
// plan --json prints for each, or the reason why there is no plan. It is compiled for the
// browser, so that a test can compare what the same code computes there.
package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"

	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

func main() {
	in, err := io.ReadAll(os.Stdin)
	if err != nil {
		panic(err)
	}
	var pages []string
	if err := json.Unmarshal(in, &pages); err != nil {
		panic(err)
	}
	out := []string{}
	for _, page := range pages {
		text, err := answers(page)
		if err != nil {
			text = "no plan: " + err.Error()
		}
		out = append(out, text)
	}
	data, err := json.Marshal(out)
	if err != nil {
		panic(err)
	}
	os.Stdout.Write(data)
}

func answers(page string) (string, error) {
	sheets, err := notebook.Read([]byte(page), notebook.Options{Name: "page"})
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	for _, s := range sheets {
		in, err := settings.Default().Input(s.Drop)
		if err != nil {
			return "", err
		}
		made, err := plan.Make(in)
		if err != nil {
			return "", err
		}
		if err := e.Encode(report.JSON(made, s.Notes)); err != nil {
			return "", err
		}
	}
	return b.String(), nil
}
