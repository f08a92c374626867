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
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
)

// Show opens a file with the program that the system has for it; where there is none,
// it says where the file lies.
func Show(d *desk.Desk, path string) {
	if err := fyne.CurrentApp().OpenURL(fileURL(filepath.ToSlash(path))); err != nil {
		d.Say(d.Words.Say("saveto.notopened", path), "", nil)
	}
}

// fileURL is the address of a file whose path has slashes; one that begins with a drive
// gets a slash before it, else the drive would be read as a host.
func fileURL(path string) *url.URL {
	if !strings.HasPrefix(path, "/") {
		path = "/" + path
	}
	return &url.URL{Scheme: "file", Path: path}
}

// ErrNoPrinting means: the system has no command that prints a file.
var ErrNoPrinting = errors.New("no command that prints")

// Print hands a PDF to the system's own printing. It returns [ErrNoPrinting] where
// that has no command for it.
func Print(ctx context.Context, path string) error {
	name, args, env := printing(runtime.GOOS, path)
	found, err := exec.LookPath(name)
	if err != nil {
		return ErrNoPrinting
	}
	command := exec.CommandContext(ctx, found, args...)
	command.Env = append(os.Environ(), env...)
	if out, err := command.CombinedOutput(); err != nil {
		return fmt.Errorf("print: %w: %s", err, out)
	}
	return nil
}

// printing is the command that prints a file on a system. On Windows the path is handed
// over beside the command: in it the shell would read quotation marks of a name.
func printing(system, path string) (name string, args, env []string) {
	switch system {
	case "windows":
		const variable = "EBBWELL_PAGE"
		return "powershell", []string{"-NoProfile", "-Command", "Start-Process -Verb Print -FilePath $env:" + variable}, []string{variable + "=" + path}
	case "darwin":
		return "lpr", []string{path}, nil
	}
	return "lp", []string{"--", path}, nil
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
