package app

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"strings"
	"testing"

	"ebbwell/internal/offline"
)

// What tells a second run of these tests to shut itself off from all networks, and
// the exit code by which it says that it cannot.
const (
	offlineVariable = "EBBWELL_TEST_OFFLINE"
	cannotShut      = 4
)

// TestMain runs the tests, shut off when a test asks for that.
func TestMain(m *testing.M) {
	if os.Getenv(offlineVariable) != "" {
		if err := offline.Shut(); err != nil {
			os.Exit(cannotShut)
		}
	}
	os.Exit(m.Run())
}

// Nothing that the program does opens a socket into a network: the main job, a
// squad's test day, a backup and restoring run with the system set to end the program
// at the first one; and nothing is written beside the records. (That it does end one is tried in package offline. The window's
// own libraries are tried by `cmd/dev window`, which starts the program so.)
func TestNothingDialsOrTells(t *testing.T) {
	if os.Getenv(offlineVariable) != "" {
		return // this is the second run
	}
	work := []string{"TestMainJob", "TestGroupSession", "TestABackupIsRepeated", "TestRestoringRunsBesideTheWindow"}
	cmd := exec.Command(os.Args[0], "-test.run=^("+strings.Join(work, "|")+")$", "-test.v", "-test.count=1")
	cmd.Env = append(os.Environ(), offlineVariable+"=1")
	var out bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &out
	err := cmd.Run()
	var exit *exec.ExitError
	if errors.As(err, &exit) && exit.ExitCode() == cannotShut {
		t.Skip("this system shuts no program off")
	}
	if err != nil {
		t.Fatalf("shut off from networks the program ends with %v\n%s", err, out.String())
	}
	for _, line := range strings.Split(out.String(), "\n") {
		// Nor is there a log that could hold a name or a figure.
		if own := strings.TrimSpace(line); own != "" && own != "PASS" && !strings.HasPrefix(own, "=== ") && !strings.HasPrefix(own, "--- ") {
			t.Errorf("the program writes %q", line)
		}
	}
	for _, name := range work {
		if !strings.Contains(out.String(), "--- PASS: "+name+" ") {
			t.Errorf("%s was not run", name)
		}
	}
}
