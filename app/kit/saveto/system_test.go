package saveto

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
)

// A file is opened by the system under its own name; where nothing opens it, it is said
// where it lies.
func TestShowOpensTheFile(t *testing.T) {
	d, _ := apptest.Desk(t)
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	opener := apptest.Opens(t)
	const path = "/tmp/Ravka’s plan, 50 % #1.pdf"
	Show(d, path)
	if len(opener.Paths) != 1 || opener.Paths[0] != path || said != "" {
		t.Errorf("opened %q, said %q", opener.Paths, said)
	}
	opener.Err = errors.New("no program for it")
	Show(d, path)
	if !strings.Contains(said, path) {
		t.Errorf("where nothing opens it, it says %q", said)
	}
}

// The address of a file is read as that file on each system.
func TestFileAddresses(t *testing.T) {
	for path, want := range map[string]string{
		"/home/a/page 1.pdf":  "file:///home/a/page%201.pdf",
		"/home/a/50 %#é.pdf":  "file:///home/a/50%20%25%23%C3%A9.pdf",
		"C:/Users/A/page.pdf": "file:///C:/Users/A/page.pdf",
	} {
		if got := fileURL(path).String(); got != want {
			t.Errorf("%s is %s, want %s", path, got, want)
		}
	}
}

// A page goes to the command of the system with its whole path; what the command says
// where it fails comes back.
func TestPrintRunsTheSystemsCommand(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("a script stands for lp")
	}
	bin := t.TempDir()
	t.Setenv("PATH", bin)
	page := filepath.Join(t.TempDir(), "-n 2 page.pdf")
	if err := os.WriteFile(page, []byte("%PDF-"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Print(context.Background(), page); !errors.Is(err, ErrNoPrinting) {
		t.Errorf("without a command: %v", err)
	}
	command := func(script string) {
		if err := os.WriteFile(filepath.Join(bin, "lp"), []byte("#!/bin/sh\n"+script+"\n"), 0o700); err != nil { //nolint:gosec // it is run
			t.Fatal(err)
		}
	}
	out := filepath.Join(t.TempDir(), "sent")
	command(`printf '%s|%s' "$1" "$2" > '` + out + `'`)
	if err := Print(context.Background(), page); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(out); string(got) != "--|"+page {
		t.Errorf("lp was given %q", got)
	}
	command("echo 'lp: Error - No default destination.' >&2; exit 1")
	if err := Print(context.Background(), page); !errors.Is(err, ErrNoPrinting) {
		t.Errorf("without a printer: %v", err)
	}
	command("echo out of paper; exit 3")
	if err := Print(context.Background(), page); err == nil || !strings.Contains(err.Error(), "out of paper") {
		t.Errorf("where it fails: %v", err)
	}
}

// A printer that is not there is told apart from one that fails.
func TestNoPrinterIsSaidSo(t *testing.T) {
	for answer, want := range map[string]bool{
		"lp: Error - No default destination.": true, "lp: Error - No default destination available.\n": true, "lpr: Error - scheduler not responding.": true,
		"lp: Error - unable to connect to server": true, "lp: out of paper": false, "": false,
	} {
		if got := noPrinter(answer); got != want {
			t.Errorf("%q: %v", answer, got)
		}
	}
}

// The program that shows a file is asked by the command of the system, and what that comes
// to is waited for: a failure is an error, a viewer that stays open is none.
func TestOpeningWaitsForTheCommand(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("a script stands for xdg-open")
	}
	bin := t.TempDir()
	t.Setenv("PATH", bin)
	o := OpensFiles(nil, "linux", false)
	at := fileURL("/home/a/Ravka’s plan, 50 %.pdf")
	if err := o.OpenURL(at); err == nil {
		t.Error("without a command nothing is said")
	}
	command := func(script string) {
		if err := os.WriteFile(filepath.Join(bin, "xdg-open"), []byte("#!/bin/sh\n"+script+"\n"), 0o700); err != nil { //nolint:gosec // it is run
			t.Fatal(err)
		}
	}
	out := filepath.Join(t.TempDir(), "opened")
	command(`printf '%s|%s' "$#" "$1" > '` + out + `'`)
	if err := o.OpenURL(at); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(out); string(got) != "1|"+at.String() {
		t.Errorf("xdg-open was given %q", got)
	}
	command("exit 3")
	if err := o.OpenURL(at); err == nil {
		t.Error("no program opens it, and nothing is said")
	}
	enough := make(chan time.Time)
	close(enough)
	if err := ending(make(chan error), enough); err != nil {
		t.Errorf("a viewer that stays open: %v", err)
	}
	for _, system := range []string{"windows", "darwin"} {
		if OpensFiles(nil, system, false) != nil {
			t.Errorf("%s waits itself", system)
		}
	}
	if OpensFiles(nil, "linux", true) != nil {
		t.Error("a sandbox has its own way")
	}
}

// A file that nothing opens is said where it lies, beside the window.
func TestFailedOpeningIsSaid(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("a script stands for xdg-open")
	}
	d, _ := apptest.Desk(t)
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	t.Setenv("PATH", t.TempDir())
	own := fyne.CurrentApp()
	fyne.SetCurrentApp(OpensFiles(own, "linux", false))
	t.Cleanup(func() { fyne.SetCurrentApp(own) })
	Show(d, "/tmp/plan.pdf")
	if !strings.Contains(said, "/tmp/plan.pdf") {
		t.Errorf("it says %q", said)
	}
}
