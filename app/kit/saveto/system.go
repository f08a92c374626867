package saveto

import (
	"context"
	"errors"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
)

// Show opens a file with the program that the system has for it; where there is none,
// it says where the file lies.
func Show(d *desk.Desk, path string) {
	at := url.URL{Scheme: "file", Path: filepath.ToSlash(path)}
	if err := fyne.CurrentApp().OpenURL(&at); err != nil {
		d.Say(d.Words.Say("saveto.notopened", path), "", nil)
	}
}

// ErrNoPrinting means: the system has no command that prints a file.
var ErrNoPrinting = errors.New("no command that prints")

// Print hands a PDF to the system's own printing. It returns [ErrNoPrinting] where
// that has no command for it.
func Print(ctx context.Context, path string) error {
	name, args := printing(runtime.GOOS, path)
	found, err := exec.LookPath(name)
	if err != nil {
		return ErrNoPrinting
	}
	if out, err := exec.CommandContext(ctx, found, args...).CombinedOutput(); err != nil {
		return fmt.Errorf("print: %w: %s", err, out)
	}
	return nil
}

// printing is the command that prints a file on a system.
func printing(system, path string) (name string, args []string) {
	switch system {
	case "windows":
		return "powershell", []string{"-NoProfile", "-Command", "Start-Process -Verb Print -FilePath $args[0]", path}
	case "darwin":
		return "lpr", []string{path}
	}
	return "lp", []string{"--", path}
}

// Aside writes a file into a folder of its own that only the user can read, for another
// program to open or print. The system clears such folders.
func Aside(name string, data []byte) (path string, err error) {
	folder, err := os.MkdirTemp("", "ebbwell-")
	if err != nil {
		return "", fmt.Errorf("write a file aside: %w", err)
	}
	path = filepath.Join(folder, name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		return "", fmt.Errorf("write a file aside: %w", err)
	}
	return path, nil
}
