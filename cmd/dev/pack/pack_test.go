package pack

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"encoding/binary"
	"encoding/json"
	"image"
	"image/color"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// square is a PNG whose left half is red and whose right half is blue.
func square(t *testing.T, width, height int) []byte {
	t.Helper()
	m := image.NewNRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			c := color.NRGBA{R: 255, A: 255}
			if x >= width/2 {
				c = color.NRGBA{B: 255, A: 255}
			}
			m.Set(x, y, c)
		}
	}
	var out bytes.Buffer
	if err := png.Encode(&out, m); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// An icon file is read as Windows reads it: a directory of entries, each with
// the edge, the length and the offset of a picture.
func TestIconHoldsEverySize(t *testing.T) {
	icon, err := Icon(square(t, 512, 512))
	if err != nil {
		t.Fatal(err)
	}
	le := binary.LittleEndian
	if le.Uint16(icon[2:]) != 1 || int(le.Uint16(icon[4:])) != len(iconSizes()) {
		t.Fatalf("the header is % x", icon[:6])
	}
	for i, edge := range iconSizes() {
		entry := icon[6+16*i:]
		if int(entry[0]) != edge%256 {
			t.Errorf("entry %d says %d, want %d", i, entry[0], edge)
		}
		length, offset := le.Uint32(entry[8:]), le.Uint32(entry[12:])
		m, err := png.Decode(bytes.NewReader(icon[offset : offset+length]))
		if err != nil {
			t.Fatalf("picture %d: %v", i, err)
		}
		if m.Bounds().Dx() != edge || m.Bounds().Dy() != edge {
			t.Errorf("picture %d measures %v", i, m.Bounds())
		}
		if r, _, b, _ := m.At(0, edge-1).RGBA(); r != 0xffff || b != 0 {
			t.Errorf("the left of picture %d is not red", i)
		}
		if r, _, b, _ := m.At(edge-1, 0).RGBA(); r != 0 || b != 0xffff {
			t.Errorf("the right of picture %d is not blue", i)
		}
	}
}

func TestIconRefuses(t *testing.T) {
	for name, picture := range map[string][]byte{"not square": square(t, 512, 256), "too small": square(t, 128, 128), "no picture": []byte("x")} {
		if _, err := Icon(picture); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func TestResourceSaysTheVersion(t *testing.T) {
	script, err := Resource(Ebbwell("1.20.3"), "icon.ico", "program.manifest")
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"FILEVERSION 1,20,3,0\n", `VALUE "ProductVersion", "1.20.3"`, `1 ICON "icon.ico"`, `1 24 "program.manifest"`, `"ebbwell.exe"`} {
		if !strings.Contains(script, want) {
			t.Errorf("%q is missing", want)
		}
	}
	if _, err := Resource(Ebbwell("1.2"), "icon.ico", "m"); err == nil {
		t.Error("a version of two numbers is taken")
	}
	if _, err := Resource(Ebbwell("1.2.3"), `i"o`, "m"); err == nil {
		t.Error("a quotation mark is taken")
	}
}

func TestDebianDescription(t *testing.T) {
	text, err := NFPM(Ebbwell("1.2.3"), "arm64", Files{Program: "p", Desktop: "d", Icon: "i", Notices: "n", Changes: "c", Readme: "r"})
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Arch, Version, Description string
		Depends                    []string
		Contents                   []struct {
			Src, Dst string
			Info     struct{ Mode int } `json:"file_info"`
		}
	}
	if err := json.Unmarshal([]byte(text), &got); err != nil {
		t.Fatal(err)
	}
	if got.Arch != "arm64" || got.Version != "1.2.3" || len(got.Depends) == 0 {
		t.Errorf("%+v", got)
	}
	for _, line := range strings.Split(got.Description, "\n") {
		if len(line) > descriptionWidth {
			t.Errorf("the line %q is longer than %d", line, descriptionWidth)
		}
	}
	modes := map[string]int{}
	for _, c := range got.Contents {
		modes[c.Dst] = c.Info.Mode
	}
	for path, want := range map[string]int{"/usr/bin/ebbwell": 0o755, "/usr/share/applications/ebbwell.desktop": 0o644, "/usr/share/doc/ebbwell/copyright": 0o644} {
		if modes[path] != want {
			t.Errorf("%s has mode %o, want %o", path, modes[path], want)
		}
	}
}

func TestDesktopEntry(t *testing.T) {
	entry := DesktopEntry(Ebbwell("1.2.3"))
	for _, want := range []string{"[Desktop Entry]\n", "\nExec=ebbwell\n", "\nIcon=ebbwell\n", "\nComment=Sweat tests in"} {
		if !strings.Contains(entry, want) {
			t.Errorf("%q is missing in\n%s", want, entry)
		}
	}
}

// members writes two files and lists them.
func members(t *testing.T) []Member {
	t.Helper()
	dir := t.TempDir()
	var list []Member
	for _, name := range []string{"program", "notes"} {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte("this is "+name), 0o600); err != nil {
			t.Fatal(err)
		}
		list = append(list, Member{Path: path, Name: "folder/" + name, Program: name == "program"})
	}
	return list
}

// check compares a member read from an archive with what went in.
func check(t *testing.T, name string, mode os.FileMode, r io.Reader) {
	t.Helper()
	data, err := io.ReadAll(r)
	if err != nil || string(data) != "this is "+filepath.Base(name) {
		t.Errorf("%s holds %q, %v", name, data, err)
	}
	if want := (Member{Program: name == "folder/program"}).mode(); mode.Perm() != want {
		t.Errorf("%s has mode %v, want %v", name, mode.Perm(), want)
	}
}

func TestTarHoldsTheFiles(t *testing.T) {
	list := members(t)
	var out, again bytes.Buffer
	if err := Tar(&out, list); err != nil {
		t.Fatal(err)
	}
	if err := Tar(&again, list); err != nil || !bytes.Equal(out.Bytes(), again.Bytes()) {
		t.Error("the same files give another archive", err)
	}
	plain, err := gzip.NewReader(&out)
	if err != nil {
		t.Fatal(err)
	}
	r := tar.NewReader(plain)
	n := 0
	for ; ; n++ {
		head, err := r.Next()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		check(t, head.Name, head.FileInfo().Mode(), r)
	}
	if n != len(list) {
		t.Errorf("%d files, want %d", n, len(list))
	}
}

func TestZipHoldsTheFiles(t *testing.T) {
	list := members(t)
	var out bytes.Buffer
	if err := Zip(&out, list); err != nil {
		t.Fatal(err)
	}
	r, err := zip.NewReader(bytes.NewReader(out.Bytes()), int64(out.Len()))
	if err != nil || len(r.File) != len(list) {
		t.Fatalf("%v, %+v", err, r)
	}
	for _, f := range r.File {
		file, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		check(t, f.Name, f.Mode(), file)
	}
}

func TestArchivesNameAMissingFile(t *testing.T) {
	missing := []Member{{Path: filepath.Join(t.TempDir(), "none"), Name: "folder/none"}}
	for _, err := range []error{Tar(io.Discard, missing), Zip(io.Discard, missing)} {
		if err == nil || !strings.Contains(err.Error(), "folder/none") {
			t.Errorf("the error is %v", err)
		}
	}
}
