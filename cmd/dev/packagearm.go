package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// suite and mirror are the Debian whose libraries packages are built against
// and tried on.
const (
	suite  = "bookworm"
	mirror = "http://deb.debian.org/debian"
)

// armRoot is a folder with the C libraries of 64-bit ARM, made once: the
// Debian packages are fetched and unpacked there, nothing is installed on this machine.
func (t tool) armRoot(ctx context.Context) (string, error) {
	root := t.bin("arm64-" + suite)
	if _, err := os.Stat(filepath.Join(root, "unpacked")); err == nil {
		return root, nil
	}
	if os.Geteuid() != 0 {
		return "", errors.New("the libraries of 64-bit ARM can only be fetched as root")
	}
	t.say("Fetching the C libraries of 64-bit ARM; this is done once.")
	wanted := strings.Join(developerPackages(), ",")
	err := t.call(ctx, nil, "debootstrap", "--foreign", "--arch=arm64", "--variant=minbase", "--include="+wanted, suite, root, mirror)
	if err != nil {
		return "", fmt.Errorf("fetch the libraries: %w", err)
	}
	packages, err := filepath.Glob(filepath.Join(root, "var/cache/apt/archives/*.deb"))
	if err != nil || len(packages) == 0 {
		return "", fmt.Errorf("fetch the libraries: %d packages: %w", len(packages), err)
	}
	for _, p := range packages {
		if err := t.call(ctx, nil, "dpkg-deb", "-x", p, root); err != nil {
			return "", fmt.Errorf("unpack the libraries: %w", err)
		}
	}
	return root, os.WriteFile(filepath.Join(root, "unpacked"), nil, 0o644)
}

// developerPackages are those of needBuild that hold headers.
func developerPackages() []string {
	var list []string
	for _, name := range packagesFor(needBuild) {
		if strings.HasSuffix(name, "-dev") {
			list = append(list, name)
		}
	}
	return list
}

// armEnv makes the C compiler and pkg-config look below root only.
func armEnv(compiler, root string) []string {
	libraries := filepath.Join(root, "usr/lib/aarch64-linux-gnu/pkgconfig") + ":" + filepath.Join(root, "usr/share/pkgconfig")
	return []string{
		"CC=" + compiler + " --sysroot=" + root,
		"PKG_CONFIG_SYSROOT_DIR=" + root, "PKG_CONFIG_LIBDIR=" + libraries, "PKG_CONFIG_PATH=",
	}
}
