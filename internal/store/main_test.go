package store

import (
	"flag"
	"os"
	"testing"
)

// keep is the flag of keepFlag; the test binary reads its flags once.
var keep = keepFlag()

// TestMain runs the tests, or what a test asks of a second program: the test
// binary starts itself again with the name of that work in its environment.
func TestMain(m *testing.M) {
	if name := os.Getenv(childVariable); name != "" {
		os.Exit(child(name, os.Getenv(childFolder)))
	}
	flag.Parse()
	os.Exit(m.Run())
}
