package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// installed makes the Debian package, installs it on a bare Debian that lies in
// a folder, so that only what the package asks for is there, and drives the
// main job in the program installed. Its arguments go to the script.
func installed(ctx context.Context, t tool, args []string) error {
	if os.Geteuid() != 0 {
		return errors.New("a Debian in a folder can only be made as root")
	}
	if err := makePackages(ctx, t, []string{"linux-amd64"}); err != nil {
		return err
	}
	if err := deps(ctx, t, []string{needBare, needWindow}); err != nil {
		return err
	}
	root, err := os.MkdirTemp("", "ebbwell-bare-")
	if err != nil {
		return fmt.Errorf("make a folder for a bare Debian: %w", err)
	}
	defer os.RemoveAll(root) //nolint:errcheck // a left-over temporary folder does no harm
	if err := t.bareDebian(ctx, root); err != nil {
		return err
	}
	if err := t.installDeb(ctx, root); err != nil {
		return err
	}
	start, err := starter(t.bin("installed-ebbwell"), root)
	if err != nil {
		return err
	}
	return t.drive(ctx, start, args)
}

// bareDebian unpacks the smallest Debian into a folder.
func (t tool) bareDebian(ctx context.Context, root string) error {
	t.say("Unpacking a bare Debian into a folder.")
	defer t.still("unpacking a bare Debian")()
	c := t.command(ctx, nil, "debootstrap", "--variant=minbase", suite, root, mirror)
	c.Stdout = nil
	if err := c.Run(); err != nil {
		return fmt.Errorf("unpack a bare Debian: %w", err)
	}
	return os.Chmod(root, 0o755) // a temporary folder is closed to others, and apt gives up its rights
}

// installDeb installs the package with what it asks for.
func (t tool) installDeb(ctx context.Context, root string) error {
	version, err := t.version()
	if err != nil {
		return err
	}
	data, err := os.ReadFile(t.bin(filepath.Join("packages", debName(version, "amd64"))))
	if err == nil {
		err = os.WriteFile(filepath.Join(root, "ebbwell.deb"), data, 0o644)
	}
	if err != nil {
		return fmt.Errorf("install the package: %w", err)
	}
	for _, line := range [][]string{aptLine(nil, "update"), aptLine(nil, "install", "--yes", "/ebbwell.deb")} {
		if err := t.retry(ctx, append([]string{"chroot", root}, line...)); err != nil {
			return fmt.Errorf("install the package: %w", err)
		}
	}
	return t.call(ctx, nil, "chroot", root, "/usr/bin/ebbwell", "--version")
}

// starter writes a script that starts the installed program as if it were on
// this machine: it sees this machine's folder for temporary files, where the
// virtual screen and the run's folder are, and nothing else of it.
func starter(path, root string) (string, error) {
	inside := strings.Join([]string{
		`mount --rbind "$1" "$0$1"`, `mount -t proc proc "$0/proc"`, `root=$0`, `shift`, `exec chroot "$root" /usr/bin/ebbwell "$@"`,
	}, " && ")
	script := fmt.Sprintf("#!/bin/sh\nexec unshare --mount sh -c %s %s %s \"$@\"\n", quoted(inside), quoted(root), quoted(os.TempDir()))
	if err := os.WriteFile(path, []byte(script), 0o755); err != nil {
		return "", fmt.Errorf("write the script that starts it: %w", err)
	}
	return path, nil
}

// quoted is a text as one word of a shell.
func quoted(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }
