package golden

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

// Switch is the variable of the environment that turns pictures off.
const Switch = "EBBWELL_PICTURES"

// Folder is where the pictures of a package are kept.
const Folder = "testdata/golden"

// Off reports whether pictures are neither drawn nor compared in this run.
func Off() bool { return os.Getenv(Switch) == "off" }

// Needed skips a test that is of no use without pictures.
func Needed(t testing.TB) {
	t.Helper()
	if Off() {
		t.Skip("pictures are off in this run")
	}
}

// Check compares a picture with the kept one of that name, or keeps it when
// update is set. Without pictures it does nothing.
func Check(t testing.TB, name string, got image.Image, update bool) {
	t.Helper()
	if Off() {
		return
	}
	path := filepath.Join(filepath.FromSlash(Folder), name)
	_ = os.Remove(path + ".failed.png")
	_ = os.Remove(path + ".diff.png")
	if update {
		write(t, path+".png", Reduce(got))
		return
	}
	want, err := read(path + ".png")
	if errors.Is(err, os.ErrNotExist) {
		t.Errorf("no picture kept as %s.png; look at %s.failed.png and run with -update", path, path)
		write(t, path+".failed.png", got)
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	n, marked := Difference(want, got)
	if n == 0 {
		return
	}
	t.Errorf("%s.png: %d pixels differ; see %s.failed.png and %s.diff.png", path, n, path, path)
	write(t, path+".failed.png", got)
	write(t, path+".diff.png", marked)
}

// read opens a kept picture, which has a palette.
func read(path string) (*image.Paletted, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("read kept picture: %w", err)
	}
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("read kept picture %s: %w", path, err)
	}
	kept, ok := img.(*image.Paletted)
	if !ok {
		return nil, fmt.Errorf("kept picture %s has no palette; draw it again with -update", path)
	}
	return kept, nil
}

// write puts a picture into a file.
func write(t testing.TB, path string, img image.Image) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, img); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}
