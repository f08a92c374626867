package main

import (
	"archive/zip"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// shim gives Wine 8 a function that Go's programs ask Windows 10 for; newer
// Wines have it. It is for trying the program here, not part of any package.
const shim = `#include <windows.h>
BOOLEAN NTAPI SystemFunction036(PVOID, ULONG);
__declspec(dllexport) BOOL WINAPI ProcessPrng(PBYTE p, SIZE_T n) { return SystemFunction036(p, (ULONG)n); }
`

// wine makes the package for Windows, unpacks it and drives the main job in it
// under Wine. Its arguments go to the script.
func wine(ctx context.Context, t tool, args []string) error {
	if err := deps(ctx, t, []string{needWindows, needWine, needWindow}); err != nil {
		return err
	}
	if err := makePackages(ctx, t, []string{"windows-amd64"}); err != nil {
		return err
	}
	work, err := os.MkdirTemp("", "ebbwell-wine-")
	if err != nil {
		return fmt.Errorf("make a folder for Wine: %w", err)
	}
	defer os.RemoveAll(work) //nolint:errcheck // a left-over temporary folder does no harm
	version, err := t.version()
	if err != nil {
		return err
	}
	program, err := unzipProgram(t.bin(filepath.Join("packages", "ebbwell-"+version+"-windows-amd64.zip")), work)
	if err != nil {
		return err
	}
	prefix, err := t.winePrefix(ctx, work)
	if err != nil {
		return err
	}
	start := filepath.Join(work, "start")
	if err := os.WriteFile(start, []byte(wineStarter(prefix, program)), 0o755); err != nil {
		return fmt.Errorf("write the script that starts it: %w", err)
	}
	return t.drive(ctx, start, append([]string{"-windows"}, args...))
}

// unzipProgram takes the program out of its package.
func unzipProgram(archive, to string) (string, error) {
	r, err := zip.OpenReader(archive)
	if err != nil {
		return "", fmt.Errorf("open the package: %w", err)
	}
	defer r.Close() //nolint:errcheck // it was only read
	for _, f := range r.File {
		if !strings.HasSuffix(f.Name, "/ebbwell.exe") {
			continue
		}
		in, err := f.Open()
		if err != nil {
			return "", fmt.Errorf("open the package: %w", err)
		}
		data, err := io.ReadAll(in)
		if err != nil {
			return "", fmt.Errorf("unpack the program: %w", err)
		}
		path := filepath.Join(to, "ebbwell.exe")
		if err := os.WriteFile(path, data, 0o755); err != nil {
			return "", fmt.Errorf("unpack the program: %w", err)
		}
		return path, nil
	}
	return "", fmt.Errorf("unpack the program: %s holds none", filepath.Base(archive))
}

// winePrefix makes a fresh Windows for Wine below work.
func (t tool) winePrefix(ctx context.Context, work string) (string, error) {
	prefix := filepath.Join(work, "prefix")
	source, library := filepath.Join(work, "shim.c"), filepath.Join(work, "bcryptprimitives.dll")
	if err := os.WriteFile(source, []byte(shim), 0o644); err != nil {
		return "", fmt.Errorf("make a Windows for Wine: %w", err)
	}
	if err := t.call(ctx, nil, "x86_64-w64-mingw32-gcc", "-shared", "-O2", "-s", "-o", library, source, "-ladvapi32"); err != nil {
		return "", fmt.Errorf("make a Windows for Wine: %w", err)
	}
	t.say("Making a Windows for Wine.")
	env := []string{"WINEPREFIX=" + prefix, "WINEARCH=win64", "WINEDEBUG=-all", "DISPLAY=", "WINEDLLOVERRIDES=mscoree,mshtml="}
	if err := t.call(ctx, env, "wine", "wineboot", "--init"); err != nil {
		return "", fmt.Errorf("make a Windows for Wine: %w", err)
	}
	if err := t.call(ctx, env, "wineserver", "--wait"); err != nil {
		return "", fmt.Errorf("make a Windows for Wine: %w", err)
	}
	data, err := os.ReadFile(library)
	if err == nil {
		err = os.WriteFile(filepath.Join(prefix, "drive_c", "windows", "system32", filepath.Base(library)), data, 0o755)
	}
	if err != nil {
		return "", fmt.Errorf("make a Windows for Wine: %w", err)
	}
	return prefix, nil
}

// wineStarter is a script that starts a Windows program under Wine; paths in
// its arguments get the letter under which Wine shows this machine's files.
func wineStarter(prefix, program string) string {
	return strings.Join([]string{
		"#!/bin/sh",
		"export WINEPREFIX=" + quoted(prefix) + " WINEDEBUG=-all",
		`for a; do shift; case "$a" in /*) a="Z:$a";; esac; set -- "$@" "$a"; done`,
		"exec wine " + quoted(program) + ` "$@"`, "",
	}, "\n")
}
