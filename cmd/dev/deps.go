package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"slices"
	"strings"
	"time"
)

// The reasons for which a system package is needed.
const (
	needBuild  = "build"  // to build the real window and to open it
	needWindow = "window" // to drive it on a virtual screen

	needArm     = "arm64"   // to build it for 64-bit ARM
	needWindows = "windows" // to build it for Windows
	needWine    = "wine"    // to start that build here
	needBare    = "bare"    // to install a package on a bare Debian in a folder
)

// aptTries is how often apt-get is tried: mirrors have bad minutes.
const aptTries = 3

// packagesFor lists the Debian packages of a need.
func packagesFor(need string) []string {
	switch need {
	case needBuild:
		return []string{
			"ca-certificates", // the module proxy is asked over TLS
			"gcc", "libc6-dev", "pkg-config",
			"libgl-dev", "libegl-dev", "libx11-dev", "libxcursor-dev", "libxrandr-dev", "libxinerama-dev",
			"libxi-dev", "libxxf86vm-dev", "libwayland-dev", "libxkbcommon-dev",
			"libgl1", "libegl1", "libgl1-mesa-dri", // to open the window
		}
	case needWindow:
		return []string{"xvfb", "x11-xkb-utils", "xdotool", "imagemagick"}
	case needArm:
		return []string{"gcc-aarch64-linux-gnu", "libc6-dev-arm64-cross", "pkg-config", "debootstrap"}
	case needWindows:
		return []string{"gcc-mingw-w64-x86-64"}
	case needWine:
		return []string{"wine", "wine64"}
	case needBare:
		return []string{"debootstrap"}
	}
	return nil
}

// deps installs what is missing for the needs named, "build" when none is.
func deps(ctx context.Context, t tool, args []string) error {
	wanted, err := wantedPackages(args)
	if err != nil {
		return err
	}
	if !onPath("apt-get") || !onPath("dpkg-query") {
		return otherSystem(ctx, t)
	}
	missing, err := t.missing(ctx, wanted)
	if err != nil {
		return err
	}
	if len(missing) == 0 {
		t.say("System packages: all %d are there.", len(wanted))
		return nil
	}
	t.say("System packages missing: %s", strings.Join(missing, " "))
	return t.install(ctx, missing)
}

// wantedPackages turns needs into packages.
func wantedPackages(needs []string) ([]string, error) {
	if len(needs) == 0 {
		needs = []string{needBuild}
	}
	if slices.Contains(needs, "all") {
		needs = []string{needBuild, needWindow}
	}
	var wanted []string
	for _, need := range needs {
		list := packagesFor(need)
		if list == nil {
			return nil, fmt.Errorf("deps knows build, window and all, not %q", need)
		}
		wanted = append(wanted, list...)
	}
	return wanted, nil
}

// missing asks dpkg which packages are not installed.
func (t tool) missing(ctx context.Context, wanted []string) ([]string, error) {
	args := append([]string{"-W", "-f", `${Package} ${db:Status-Status}\n`}, wanted...)
	c := t.command(ctx, []string{"LC_ALL=C"}, "dpkg-query", args...)
	c.Stdout, c.Stderr = nil, nil
	data, err := c.Output()
	// It exits 1 when it has never heard of a package: that one is missing.
	if failed := (*exec.ExitError)(nil); err != nil && (!errors.As(err, &failed) || failed.ExitCode() != 1) {
		return nil, fmt.Errorf("ask dpkg for packages: %w", err)
	}
	return notInstalled(wanted, string(data)), nil
}

// notInstalled reads dpkg's answer, one "name status" a line.
func notInstalled(wanted []string, answer string) []string {
	there := map[string]bool{}
	lines := bufio.NewScanner(strings.NewReader(answer))
	for lines.Scan() {
		if name, status, ok := strings.Cut(lines.Text(), " "); ok && status == "installed" {
			there[name] = true
		}
	}
	var missing []string
	for _, name := range wanted {
		if !there[name] {
			missing = append(missing, name)
		}
	}
	return missing
}

// install gets packages through apt-get, after a fresh list of them.
func (t tool) install(ctx context.Context, packages []string) error {
	sudo, err := rightsPrefix(os.Geteuid(), onPath("sudo"))
	if err != nil {
		return fmt.Errorf("%w: as root, run: apt-get update && apt-get install %s", err, strings.Join(packages, " "))
	}
	if err := t.retry(ctx, aptLine(sudo, "update")); err != nil {
		return err
	}
	line := aptLine(sudo, append([]string{"install", "--yes", "--no-install-recommends"}, packages...)...)
	return t.retry(ctx, line)
}

// rightsPrefix says how to become root.
func rightsPrefix(uid int, haveSudo bool) ([]string, error) {
	switch {
	case uid == 0:
		return nil, nil
	case haveSudo:
		return []string{"sudo"}, nil
	}
	return nil, errors.New("packages are missing, you are not root, and there is no sudo")
}

// aptLine is one call of apt-get that asks nothing and waits for its lock.
func aptLine(sudo []string, args ...string) []string {
	line := append(slices.Clone(sudo), "env", "DEBIAN_FRONTEND=noninteractive",
		"apt-get", "-q", "-o", "DPkg::Lock::Timeout=300", "-o", "Acquire::Retries=3")
	return append(line, args...)
}

// retry runs a line, again after a pause when it fails.
func (t tool) retry(ctx context.Context, line []string) error {
	var err error
	for try := range aptTries {
		if try > 0 {
			t.say("That failed; once more in a moment.")
			select {
			case <-ctx.Done():
				return fmt.Errorf("install packages: %w", ctx.Err())
			case <-time.After(time.Duration(5*try) * time.Second):
			}
		}
		if err = t.call(ctx, nil, line[0], line[1:]...); err == nil {
			return nil
		}
	}
	return err
}

// otherSystem is for systems without apt-get: content when a compiler (and on
// Linux the libraries) can be found, else an error that says what to install.
func otherSystem(ctx context.Context, t tool) error {
	compiler := onPath("gcc") || onPath("clang") || onPath("cc")
	if runtime.GOOS == "linux" && compiler && onPath("pkg-config") {
		libraries := []string{"--exists", "gl", "egl", "x11", "xcursor", "xrandr", "xinerama", "xi", "xxf86vm", "wayland-client", "xkbcommon"}
		if _, err := t.read(ctx, nil, "pkg-config", libraries...); err == nil {
			return nil
		}
		compiler = false
	}
	if runtime.GOOS != "linux" && compiler {
		return nil
	}
	return errors.New(whatToInstall(runtime.GOOS))
}

// whatToInstall says it for a system.
func whatToInstall(system string) string {
	switch system {
	case "darwin":
		return "a C compiler is missing: run `xcode-select --install`, then this again"
	case "windows":
		return "a C compiler is missing: install MSYS2 with the package mingw-w64-x86_64-gcc, put its bin folder on the PATH, then run this again"
	}
	return "install these with your system's package manager, then run this again: a C compiler, pkg-config and the " +
		"development files of OpenGL, EGL, X11, Xcursor, Xrandr, Xinerama, Xi, Xxf86vm, Wayland and xkbcommon " +
		"(on Debian: " + strings.Join(packagesFor(needBuild), " ") + ")"
}

// onPath reports whether a program can be found.
func onPath(name string) bool {
	_, err := exec.LookPath(name)
	return err == nil
}
