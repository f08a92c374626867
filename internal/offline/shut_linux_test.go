package offline

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
)

// dialVariable names the family of the socket a second program is to open.
const dialVariable = "EBBWELL_TEST_DIAL"

// Exit codes of the second program.
const (
	cameThrough = 0
	unable      = 4
)

// TestMain runs the tests, or opens a socket after having been shut off.
func TestMain(m *testing.M) {
	families := map[string]int{"unix": syscall.AF_UNIX, "inet": syscall.AF_INET, "inet6": syscall.AF_INET6, "packet": syscall.AF_PACKET}
	family, asked := families[os.Getenv(dialVariable)]
	if !asked {
		os.Exit(m.Run())
	}
	if err := Shut(); err != nil {
		os.Exit(unable)
	}
	done := make(chan error)
	go func() { // on whatever thread
		fd, err := syscall.Socket(family, syscall.SOCK_STREAM, 0)
		if err == nil {
			err = syscall.Close(fd)
		}
		done <- err
	}()
	if <-done != nil {
		os.Exit(1)
	}
	os.Exit(cameThrough)
}

// A program that is shut off is ended at the first socket into a network; sockets
// of the machine itself stay open to it.
func TestSocketsAreShut(t *testing.T) {
	for family, ends := range map[string]bool{"unix": false, "inet": true, "inet6": true, "packet": true} {
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), dialVariable+"="+family)
		var out bytes.Buffer
		cmd.Stdout, cmd.Stderr = &out, &out
		err := cmd.Run()
		var exit *exec.ExitError
		if errors.As(err, &exit) && exit.ExitCode() == unable {
			t.Skip("this system shuts no program off")
		}
		if !ends {
			if err != nil {
				t.Errorf("%s: %v\n%s", family, err, out.String())
			}
			continue
		}
		status, known := syscall.WaitStatus(0), false
		if exit != nil {
			status, known = exit.Sys().(syscall.WaitStatus)
		}
		if !known || !status.Signaled() || status.Signal() != syscall.SIGSYS {
			t.Errorf("%s: ended with %v\n%s", family, err, strings.TrimSpace(out.String()))
		}
	}
}
