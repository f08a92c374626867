package saveto

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

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
	command("echo out of paper; exit 3")
	if err := Print(context.Background(), page); err == nil || !strings.Contains(err.Error(), "out of paper") {
		t.Errorf("where it fails: %v", err)
	}
}
