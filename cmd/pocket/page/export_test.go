package page

// Script is a script of the page as it is built in.
func Script(name string) string { return read(name) }

// Shell is the page with a worker and a program of a test's own.
func Shell(worker, program string) ([]byte, error) {
	return content{Style: style(), Script: texts(onPage), Worker: worker, Program: program}.fill("")
}
