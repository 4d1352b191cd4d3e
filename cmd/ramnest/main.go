// Command ramnest designs the tooling that pushes two printed parts together: it
// reads one job file and writes nest, anvil, quote and report. See ramnest --help.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}
