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
// it says where the file lies. It asks the system beside the window.
func Show(d *desk.Desk, path string) {
	d.Beside.Run(func(context.Context) error {
		return fyne.CurrentApp().OpenURL(fileURL(filepath.ToSlash(path)))
	}, func(err error) {
		if err != nil {
			d.Say(d.Words.Say("saveto.notopened", path), "", nil)
		}
	})
}

// fileURL is the address of a file whose path has slashes; one that begins with a drive
// gets a slash before it, else the drive would be read as a host.
func fileURL(path string) *url.URL {
	if !strings.HasPrefix(path, "/") {
		path = "/" + path
	}
	return &url.URL{Scheme: "file", Path: path}
}

// ErrNoPrinting means: the system has no command that prints a file, or no printer.
var ErrNoPrinting = errors.New("nothing that prints")

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
	out, err := command.CombinedOutput()
	switch {
	case err == nil:
		return nil
	case noPrinter(string(out)):
		return ErrNoPrinting
	}
	return fmt.Errorf("print: %w: %s", err, out)
}

// noPrinter reports whether the answer of lp or lpr, which is asked for in English, is that
// there is no printer to send to, or none of the system's printing at all.
func noPrinter(answer string) bool {
	for _, said := range []string{"no default destination", "no destinations", "scheduler is not running", "scheduler not responding", "unable to connect to server"} {
		if strings.Contains(strings.ToLower(answer), said) {
			return true
		}
	}
	return false
}

// printing is the command that prints a file on a system. On Windows the path is handed
// over beside the command: in it the shell would read quotation marks of a name.
func printing(system, path string) (name string, args, env []string) {
	switch system {
	case "windows":
		const variable = "EBBWELL_PAGE"
		return "powershell", []string{"-NoProfile", "-Command", "Start-Process -Verb Print -FilePath $env:" + variable}, []string{variable + "=" + path}
	case "darwin":
		return "lpr", []string{path}, english() // the path is a whole one: it is never read as an option
	}
	return "lp", []string{"--", path}, english()
}

// english has a command answer in English.
func english() []string { return []string{"LC_ALL=C", "LANGUAGE=C"} }

// Aside writes a file into a folder of its own that only the user can read, for another
// program to open or print. The system clears such folders.
func Aside(name string, data []byte) (path string, err error) {
	folder, err := asideFolder()
	if err != nil {
		return "", err
	}
	path = filepath.Join(folder, name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		return "", fmt.Errorf("write a file aside: %w", err)
	}
	return path, nil
}

// asideFolder makes a folder that only the user can read.
func asideFolder() (string, error) {
	folder, err := os.MkdirTemp("", "ebbwell-")
	if err != nil {
		return "", fmt.Errorf("make a folder aside: %w", err)
	}
	return folder, nil
}

// Sending is what is printed through the system.
type Sending struct {
	// File is the name of its file; empty where Write puts several into a folder.
	File string
	// Write writes it; it runs beside the window, as Printer does.
	Write func(ctx context.Context, path string) error
	// Printer hands a file to the system's printing: [Print], but for tests.
	Printer func(ctx context.Context, path string) error
	// Done is told that it was printed, or opened to be printed from there; may be nil.
	Done func()
	// Failed is told in words that it was not printed, and why.
	Failed func(title, sentence string)
}

// Send prints files through the system; where that has no printer they are opened.
func Send(d *desk.Desk, s Sending) {
	w := d.Words
	var paths []string
	d.Beside.Run(func(ctx context.Context) (err error) {
		if paths, err = s.written(ctx); err != nil {
			return err
		}
		for _, path := range paths {
			if err := s.Printer(ctx, path); err != nil {
				return err
			}
		}
		return nil
	}, func(err error) {
		switch {
		case err == nil:
			d.Say(w.Say("saveto.printed"), "", nil)
		case errors.Is(err, ErrNoPrinting):
			d.Say(w.Say("saveto.noprinter"), "", nil)
			for _, path := range paths {
				Show(d, path)
			}
		default:
			s.Failed(w.Say("saveto.printfailed"), desk.Sentence(w, err))
			return
		}
		if s.Done != nil {
			s.Done()
		}
	})
}

// written writes what is printed into a folder aside, and returns its files.
func (s Sending) written(ctx context.Context) (paths []string, err error) {
	folder, err := asideFolder()
	if err != nil {
		return nil, err
	}
	if s.File != "" {
		path := filepath.Join(folder, s.File)
		return []string{path}, s.Write(ctx, path)
	}
	if err := s.Write(ctx, folder); err != nil {
		return nil, err
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil, fmt.Errorf("print files: %w", err)
	}
	for _, e := range entries {
		paths = append(paths, filepath.Join(folder, e.Name()))
	}
	return paths, nil
}
