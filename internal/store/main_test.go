package store

import (
	"flag"
	"os"
	"testing"
)

// TestMain runs the tests, or what a test asks of a second program: the test
// binary starts itself again with the name of that work in its environment.
func TestMain(m *testing.M) {
	if name := os.Getenv(childVariable); name != "" {
		os.Exit(child(name, os.Getenv(childFolder)))
	}
	flag.Bool(keepFlag, false, "keep a database of the newest version, once, when it is released")
	flag.Int(faultsFlag, 1, "how often each piece of work is hit in each way")
	flag.Parse()
	os.Exit(m.Run())
}
