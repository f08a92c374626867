package main

import (
	"os/exec"
	"strings"
	"testing"

	"ebbwell/assets"
)

func TestPackagesCarryTheProgramsVersion(t *testing.T) {
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	version, err := tool{root: root}.version()
	if err != nil || version != assets.Version {
		t.Errorf("FyneApp.toml says %q (%v), the program %q", version, err, assets.Version)
	}
}

func TestWantedTargets(t *testing.T) {
	if all, err := wantedTargets(nil); err != nil || len(all) != len(targets()) {
		t.Errorf("%v, %v", all, err)
	}
	one, err := wantedTargets([]string{"windows-amd64"})
	if err != nil || len(one) != 1 || one[0].system != "windows" {
		t.Errorf("%v, %v", one, err)
	}
	if _, err := wantedTargets([]string{"plan9"}); err == nil {
		t.Error("an unknown system is taken")
	}
	for _, g := range targets() {
		if packagesFor(g.needs) == nil {
			t.Errorf("%s: no packages known to build it", g.name)
		}
	}
}

func TestQuotedIsOneWord(t *testing.T) {
	for _, text := range []string{"plain", "it's", `a "b" $c; d`, ""} {
		out, err := exec.Command("sh", "-c", "printf %s "+quoted(text)).Output()
		if err != nil || string(out) != text {
			t.Errorf("%q came back as %q, %v", text, out, err)
		}
	}
}

func TestDeveloperPackagesHoldHeaders(t *testing.T) {
	list := developerPackages()
	if len(list) < 8 {
		t.Errorf("only %v", list)
	}
	for _, name := range list {
		if !strings.HasSuffix(name, "-dev") {
			t.Errorf("%s holds no headers", name)
		}
	}
}
