package page

// Shell is the page with a worker and a program of a test's own.
func Shell(worker, program string) ([]byte, error) {
	return content{Style: style(), Script: texts(onPage), Worker: worker, Program: program}.fill("")
}
