package main

import (
	"slices"
	"strings"
	"testing"
)

func TestWantedPackages(t *testing.T) {
	build, err := wantedPackages(nil)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Contains(build, "gcc") || slices.Contains(build, "xvfb") {
		t.Errorf("nothing named: %v", build)
	}
	all, err := wantedPackages([]string{"all"})
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range append(build, "xvfb", "xdotool", "imagemagick") {
		if !slices.Contains(all, name) {
			t.Errorf("all lacks %s", name)
		}
	}
	if _, err := wantedPackages([]string{"builds"}); err == nil {
		t.Error("an unknown need was taken")
	}
}

func TestNotInstalled(t *testing.T) {
	wanted := []string{"gcc", "libgl1", "xvfb", "xdotool"}
	for _, c := range []struct{ name, answer, want string }{
		{"nothing known", "", "gcc libgl1 xvfb xdotool"},
		{"all there", "gcc installed\nlibgl1 installed\nxvfb installed\nxdotool installed\n", ""},
		{"removed, settings kept", "gcc installed\nlibgl1 config-files\nxvfb installed\n", "libgl1 xdotool"},
		{"two architectures", "libgl1 not-installed\nlibgl1 installed\ngcc half-configured\n", "gcc xvfb xdotool"},
	} {
		if got := strings.Join(notInstalled(wanted, c.answer), " "); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

func TestRights(t *testing.T) {
	for _, c := range []struct {
		uid      int
		haveSudo bool
		want     string
		fails    bool
	}{
		{0, false, "", false},
		{0, true, "", false},
		{1000, true, "sudo", false},
		{1000, false, "", true},
	} {
		got, err := rightsPrefix(c.uid, c.haveSudo)
		if strings.Join(got, " ") != c.want || (err != nil) != c.fails {
			t.Errorf("uid %d, sudo %t: got %v, %v", c.uid, c.haveSudo, got, err)
		}
	}
}

func TestAptLineAsksNothing(t *testing.T) {
	line := strings.Join(aptLine([]string{"sudo"}, "install", "--yes", "gcc"), " ")
	for _, part := range []string{"sudo env DEBIAN_FRONTEND=noninteractive apt-get ", " install --yes gcc"} {
		if !strings.Contains(line, part) {
			t.Errorf("%q lacks %q", line, part)
		}
	}
}

func TestWhatToInstall(t *testing.T) {
	for system, part := range map[string]string{"darwin": "xcode-select", "windows": "mingw", "linux": "libwayland-dev", "freebsd": "xkbcommon"} {
		if got := whatToInstall(system); !strings.Contains(got, part) {
			t.Errorf("%s: %q does not say %q", system, got, part)
		}
	}
}
