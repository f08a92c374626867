package saveto

import (
	"fmt"
	"net/url"
	"os/exec"
	"time"

	"fyne.io/fyne/v2"
)

// patience is how long is waited for what a command that opens a file comes to: it ends at
// once where nothing opens the file, and may stay as long as what it has started.
const patience = 8 * time.Second

// Opening is an app whose OpenURL waits a moment for what the system's command comes to,
// where the toolkit's own starts it and never looks at it again. Opens is that command.
type Opening struct {
	fyne.App
	Opens string
}

// OpensFiles is the app as the program shows files with it. Only on Linux the toolkit does
// not wait for the command: elsewhere, and within a sandbox that hands files out itself,
// the app is returned as it is.
func OpensFiles(a fyne.App, system string, sandboxed bool) fyne.App {
	if system != "linux" || sandboxed {
		return a
	}
	return &Opening{App: a, Opens: "xdg-open"}
}

// OpenURL opens the address with the program that the system has for it.
func (o *Opening) OpenURL(at *url.URL) error {
	command := exec.Command(o.Opens, at.String()) //nolint:gosec // a file of the person's own, as an address
	if err := command.Start(); err != nil {
		return fmt.Errorf("open a file: %w", err)
	}
	ended := make(chan error, 1)
	go func() { ended <- command.Wait() }()
	return ending(ended, time.After(patience))
}

// ending is how a command ended; nil where it goes on after so long.
func ending(ended <-chan error, enough <-chan time.Time) error {
	select {
	case err := <-ended:
		if err != nil {
			return fmt.Errorf("open a file: %w", err)
		}
	case <-enough:
	}
	return nil
}
