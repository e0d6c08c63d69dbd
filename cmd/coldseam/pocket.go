package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/urfave/cli/v2"

	pocketpage "coldseam/cmd/pocket/page"
)

func (p *program) pocketCommand() *cli.Command {
	return &cli.Command{
		Name:      "pocket",
		Usage:     "the whole tool as one page for the phone, without a signal",
		ArgsUsage: "-o coldseam.html, or --site FOLDER",
		Description: `-o writes one file that holds everything: send it to the phone and open it there
with the browser. --site writes the same as a folder for any web host with
https: open its address once, add it to the home screen, and it works without
a signal. iPhones and iPads run no script in a file, so they need the site.

   coldseam pocket -o coldseam.html
   coldseam pocket --site public`,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "o", Usage: "the file to write, - for standard output"},
			&cli.StringFlag{Name: "site", Usage: "the folder for the site, made if it is missing"},
			&cli.BoolFlag{Name: "force", Usage: "replace files that coldseam did not make"},
		},
		Action: p.pocket,
	}
}

func (p *program) pocket(c *cli.Context) error {
	out, site := c.String("o"), c.String("site")
	switch {
	case c.Args().Present():
		return refuse("pocket takes nothing after its flags, and there is %q", c.Args().First())
	case out != "" && site != "":
		return refuse("-o and --site are two things to write: give one")
	case site != "":
		return p.pocketSite(site, c.Bool("force"))
	case out == "":
		return refuse("say what to write: -o coldseam.html, or --site FOLDER")
	}
	file, err := pocketpage.File()
	if err != nil {
		return err
	}
	if out == "-" {
		_, err := p.out.Write(file)
		return err
	}
	if err := p.write(out, c.Bool("force"), file); err != nil {
		return err
	}
	p.tell("Android: send the file to the phone and open it there with the browser. If the page says that it cannot keep drops, use --site.")
	p.tell("iPhone, iPad: they run no script in a file; use coldseam pocket --site FOLDER.")
	return nil
}

// pocketSite writes the site, all of it or, where a file of worth is in the way, nothing.
func (p *program) pocketSite(folder string, force bool) error {
	parts, err := pocketpage.Site()
	if err != nil {
		return err
	}
	if info, err := os.Stat(folder); err == nil && !info.IsDir() {
		return refuse("--site %s: that is a file: give the name of a folder", folder)
	}
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return fmt.Errorf("--site %s: cannot be made: %s", folder, cause(err))
	}
	for _, part := range parts {
		if _, _, err := p.place(filepath.Join(folder, part.Name), force, part.Bytes); err != nil {
			return err
		}
	}
	for _, part := range parts {
		if err := p.write(filepath.Join(folder, part.Name), force, part.Bytes); err != nil {
			return err
		}
	}
	p.tell("Put these files on any web host with https, open the address on the phone with a signal, and add the page to the home screen.")
	p.tell("From then on it works without a signal; with one it looks for a newer version at each start.")
	return nil
}
