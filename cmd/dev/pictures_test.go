package main

import (
	"io/fs"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/internal/golden"
)

// Every change of a picture stays in the history for good, so all kept
// pictures together are few and small: below 6 MB when they were chosen.
func TestKeptPicturesAreSmall(t *testing.T) {
	const most, mostOfOne = 8 << 20, 128 << 10
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	var all int64
	n := 0
	err = filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		in := strings.HasSuffix(filepath.ToSlash(filepath.Dir(path)), golden.Folder)
		if !in || filepath.Ext(path) != ".png" || strings.HasSuffix(path, ".failed.png") || strings.HasSuffix(path, ".diff.png") {
			return nil
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		n++
		all += info.Size()
		if info.Size() > mostOfOne {
			t.Errorf("%s takes %d kB, more than %d", path, info.Size()>>10, mostOfOne>>10)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d kept pictures, %.1f MB", n, float64(all)/(1<<20))
	if n == 0 || all > most {
		t.Errorf("%d kept pictures take %.1f MB, more than %d", n, float64(all)/(1<<20), most>>20)
	}
}

func TestWithoutPictures(t *testing.T) {
	for _, c := range []struct {
		args, rest  string
		off, refuse bool
	}{
		{args: "./app/... -v", rest: "./app/... -v"},
		{args: "./app/... -pictures=false -v", rest: "./app/... -v", off: true},
		{args: "--pictures=0", off: true},
		{args: "-pictures=true -update", rest: "-update"},
		{args: "-pictures=perhaps", refuse: true},
		{args: "-pictures", refuse: true},
		{args: "-update -pictures=false", refuse: true},
	} {
		rest, off, err := withoutPictures(strings.Fields(c.args))
		if (err != nil) != c.refuse || off != c.off || strings.Join(rest, " ") != c.rest {
			t.Errorf("%q: %v, %v, %v", c.args, rest, off, err)
		}
	}
	if picturesOff != golden.Switch+"=off" {
		t.Errorf("%s is not what the tests look for", picturesOff)
	}
}
