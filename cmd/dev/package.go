package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ebbwell/cmd/dev/pack"
)

// packager is nfpm, pinned; it writes Debian packages. Versions after this one
// cannot be built: the module proxy refuses a module of theirs (go-msix).
const (
	packager        = "github.com/goreleaser/nfpm/v2/cmd/nfpm"
	packagerVersion = "v2.45.0"
)

// target is a system that packages are made for.
type target struct {
	name         string // as typed on the command line
	system, arch string // Go's names
	compiler     string // the C compiler
	needs        string // the Debian packages to build it, by their need
}

// targets lists them.
func targets() []target {
	return []target{
		{"linux-amd64", "linux", "amd64", "gcc", needBuild},
		{"linux-arm64", "linux", "arm64", "aarch64-linux-gnu-gcc", needArm},
		{"windows-amd64", "windows", "amd64", "x86_64-w64-mingw32-gcc", needWindows},
	}
}

// makePackages builds the program for the targets named, all when none is, and
// leaves what a user installs in bin/packages.
func makePackages(ctx context.Context, t tool, args []string) error {
	chosen, err := wantedTargets(args)
	if err != nil {
		return err
	}
	for _, g := range chosen {
		if err := deps(ctx, t, []string{g.needs}); err != nil {
			return err
		}
	}
	version, err := t.version()
	if err != nil {
		return err
	}
	m := maker{tool: t, about: pack.Ebbwell(version), out: t.bin("packages")}
	if err := os.MkdirAll(m.out, 0o755); err != nil {
		return fmt.Errorf("make the folder for packages: %w", err)
	}
	for _, g := range chosen {
		if err := m.make(ctx, g); err != nil {
			return fmt.Errorf("make the packages for %s: %w", g.name, err)
		}
	}
	return nil
}

// wantedTargets turns names into targets.
func wantedTargets(names []string) ([]target, error) {
	all := targets()
	if len(names) == 0 {
		return all, nil
	}
	var chosen []target
	for _, name := range names {
		i := slices.IndexFunc(all, func(g target) bool { return g.name == name })
		if i < 0 {
			return nil, fmt.Errorf("package knows linux-amd64, linux-arm64 and windows-amd64, not %q", name)
		}
		chosen = append(chosen, all[i])
	}
	return chosen, nil
}

// version reads the program's version from FyneApp.toml; a test keeps it the
// same as the one in assets.
func (t tool) version() (string, error) {
	data, err := os.ReadFile(filepath.Join(t.root, "FyneApp.toml"))
	if err != nil {
		return "", fmt.Errorf("read the version: %w", err)
	}
	for line := range strings.Lines(string(data)) {
		if value, ok := strings.CutPrefix(strings.TrimSpace(line), "Version = "); ok {
			return strings.Trim(value, `"`), nil
		}
	}
	return "", errors.New("read the version: FyneApp.toml has none")
}

// maker makes packages of one version.
type maker struct {
	tool
	about pack.About
	out   string // folder for the packages
}

// make builds the program for a target and packs it.
func (m maker) make(ctx context.Context, g target) error {
	work, err := os.MkdirTemp("", "ebbwell-package-")
	if err != nil {
		return fmt.Errorf("make a folder: %w", err)
	}
	defer os.RemoveAll(work) //nolint:errcheck // a left-over temporary folder does no harm
	program, err := m.build(ctx, g, work)
	if err != nil {
		return err
	}
	if g.system == "windows" {
		return m.archive(g, program, ".zip", pack.Zip)
	}
	if err := m.archive(g, program, ".tar.gz", pack.Tar); err != nil {
		return err
	}
	return m.debian(ctx, g, program, work)
}

// build builds the program, without the tables that only a debugger reads.
func (m maker) build(ctx context.Context, g target, work string) (string, error) {
	env := []string{"CGO_ENABLED=1", "GOOS=" + g.system, "GOARCH=" + g.arch, "CC=" + g.compiler}
	program, link := filepath.Join(work, m.about.Command()), "-s -w"
	args := []string{"build", "-trimpath", "-buildvcs=false", "-tags", packageTags(g)}
	switch g.name {
	case "windows-amd64":
		program, link = program+".exe", link+" -H=windowsgui"
		remove, err := m.resource(ctx, work)
		if err != nil {
			return "", err
		}
		defer remove()
	case "linux-arm64":
		root, err := m.armRoot(ctx)
		if err != nil {
			return "", err
		}
		env = append(env, armEnv(g.compiler, root)...)
	}
	m.say("Building for %s.", g.name)
	defer m.still("building for " + g.name)()
	if err := m.call(ctx, env, "go", append(args, "-ldflags", link, "-o", program, "./cmd/ebbwell")...); err != nil {
		return "", fmt.Errorf("build the program: %w", err)
	}
	return program, nil
}

// packageTags are those of the program; for Windows without what the toolkit
// tells screen readers, until the main job was seen in a build with it.
func packageTags(g target) string {
	if g.system == "windows" {
		return "migrated_fynedo"
	}
	return programTags
}

// resource puts icon, version and manifest beside the program's source, where
// Go's linker looks for them; remove takes them away.
func (m maker) resource(ctx context.Context, work string) (remove func(), err error) {
	picture, err := os.ReadFile(filepath.Join(m.root, "assets", "icon.png"))
	if err != nil {
		return nil, fmt.Errorf("read the icon: %w", err)
	}
	icon, err := pack.Icon(picture)
	if err != nil {
		return nil, err
	}
	script, err := pack.Resource(m.about, "icon.ico", "program.manifest")
	if err != nil {
		return nil, err
	}
	for name, data := range map[string]string{"icon.ico": string(icon), "program.manifest": pack.Manifest, "program.rc": script} {
		if err := os.WriteFile(filepath.Join(work, name), []byte(data), 0o644); err != nil {
			return nil, fmt.Errorf("write the Windows resource: %w", err)
		}
	}
	object := filepath.Join(m.root, "cmd", "ebbwell", "resource_windows_amd64.syso")
	c := m.command(ctx, nil, "x86_64-w64-mingw32-windres", "-O", "coff", "-o", object, "program.rc")
	c.Dir = work
	if err := c.Run(); err != nil {
		return nil, fmt.Errorf("compile the Windows resource: %w", err)
	}
	return func() {
		if err := os.Remove(object); err != nil {
			m.say("A file is left over: %v", err)
		}
	}, nil
}

// archive packs a program with what comes with it, in one folder.
func (m maker) archive(g target, program, ending string, write func(io.Writer, []pack.Member) error) error {
	name := m.about.Command() + "-" + m.about.Version + "-" + g.name
	members := []pack.Member{{Path: program, Name: name + "/" + filepath.Base(program), Program: true}}
	for _, f := range [][2]string{{"README.md", "README.md"}, {"assets/CHANGES.md", "CHANGES.md"}, {"assets/notices.txt", "notices.txt"},
		{"assets/screenshot-planner.png", "assets/screenshot-planner.png"}, {"assets/icon.png", "icon.png"}} {
		members = append(members, pack.Member{Path: filepath.Join(m.root, filepath.FromSlash(f[0])), Name: name + "/" + f[1]})
	}
	return m.whole(name+ending, func(f *os.File) error { return write(f, members) })
}

// whole writes a package so that it is there whole or not at all, and says its size.
func (m maker) whole(name string, write func(*os.File) error) error {
	path := filepath.Join(m.out, name)
	f, err := os.Create(path + ".part")
	if err != nil {
		return fmt.Errorf("write %s: %w", name, err)
	}
	err = errors.Join(write(f), f.Close())
	if err == nil {
		err = os.Rename(path+".part", path)
	}
	if err != nil {
		return fmt.Errorf("write %s: %w", name, err)
	}
	return m.size(path)
}

// size says how large a package is.
func (m maker) size(path string) error {
	about, err := os.Stat(path)
	if err != nil {
		return fmt.Errorf("look at the package: %w", err)
	}
	_, err = fmt.Fprintf(m.tool.out, "%-40s %6.1f MB\n", filepath.Base(path), float64(about.Size())/1e6)
	return err
}

// debian makes a Debian package.
func (m maker) debian(ctx context.Context, g target, program, work string) error {
	nfpm, err := m.buildTool(ctx, packager, packagerVersion)
	if err != nil {
		return err
	}
	desktop := filepath.Join(work, m.about.Command()+".desktop")
	asset := func(name string) string { return filepath.Join(m.root, "assets", name) }
	config, err := pack.NFPM(m.about, g.arch, pack.Files{
		Program: program, Desktop: desktop, Icon: asset("icon.png"),
		Notices: asset("notices.txt"), Changes: asset("CHANGES.md"), Readme: filepath.Join(m.root, "README.md"),
	})
	if err != nil {
		return err
	}
	described := filepath.Join(work, "nfpm.yaml")
	err = errors.Join(os.WriteFile(desktop, []byte(pack.DesktopEntry(m.about)), 0o644), os.WriteFile(described, []byte(config), 0o644))
	if err != nil {
		return fmt.Errorf("describe the Debian package: %w", err)
	}
	path := filepath.Join(m.out, debName(m.about.Version, g.arch))
	if err := m.call(ctx, nil, nfpm, "package", "--packager", "deb", "--config", described, "--target", path); err != nil {
		return err
	}
	return m.size(path)
}

// debName is the file name of a Debian package; arch is Go's name of the processor.
func debName(version, arch string) string { return "ebbwell_" + version + "-1_" + arch + ".deb" }
