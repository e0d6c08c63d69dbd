package main

import (
	"coldseam/chart/asset"
	"coldseam/cmd/coldseam/internal/licence"
)

// licences prints the licences of everything that this build is made of.
func (p *program) licences() error {
	text, err := licence.Text()
	if err != nil {
		return err
	}
	p.out.WriteString(text)
	if asset.Script() != nil {
		p.out.WriteString("\n" + licence.Head + "Apache ECharts, the script of the pages, its notice and its licences\n\n" + asset.Licences() + "\n")
	}
	return nil
}
