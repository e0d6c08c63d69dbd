module coldseam

go 1.25.0

require (
	github.com/creack/pty v1.1.24
	github.com/google/go-cmp v0.6.0
	github.com/pelletier/go-toml/v2 v2.4.3
	github.com/rogpeppe/go-internal v1.14.1
	github.com/tarm/serial v0.0.0-20180830185346-98f6abe2eb07
	github.com/urfave/cli/v2 v2.27.7
	golang.org/x/sys v0.41.0
	golang.org/x/term v0.40.0
	gonum.org/v1/gonum v0.17.0
	pgregory.net/rapid v1.3.0
)

require (
	github.com/cpuguy83/go-md2man/v2 v2.0.7 // indirect
	github.com/russross/blackfriday/v2 v2.1.0 // indirect
	github.com/xrash/smetrics v0.0.0-20240521201337-686a1a2994c1 // indirect
	golang.org/x/tools v0.30.0 // indirect
)
