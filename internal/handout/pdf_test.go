package handout

import (
	"bytes"
	"encoding/binary"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/handout/pdfread"
)

// TestPDF writes every document once and once more, and looks at the file: it
// is the same again, its table of objects is right, and its text is that of
// the marks, as read here and as another program selects it.
func TestPDF(t *testing.T) {
	others := documents(t)
	for name, doc := range documents(t) {
		t.Run(name, func(t *testing.T) {
			data, err := doc.PDF(day(5, 18))
			if err != nil {
				t.Fatal(err)
			}
			again, err := others[name].PDF(day(5, 18))
			if err != nil || !bytes.Equal(data, again) {
				t.Fatalf("the second PDF differs (%v)", err)
			}
			checkReferences(t, data)
			checkText(t, doc, data)
			checkSelected(t, doc, data)
		})
	}
}

func TestPDFCarriesItsTime(t *testing.T) {
	doc := press(t).AthletePage(match())
	first, err := doc.PDF(day(5, 18))
	if err != nil {
		t.Fatal(err)
	}
	if later, err := doc.PDF(day(5, 19)); err != nil || bytes.Equal(first, later) {
		t.Errorf("the time is not in the file (%v)", err)
	}
}

func TestPDFIsDescribed(t *testing.T) {
	doc := press(t).AthletePage(match())
	data, err := doc.PDF(day(5, 18))
	if err != nil {
		t.Fatal(err)
	}
	utf := func(s string) string {
		out := []byte{0xFE, 0xFF}
		for _, u := range utf16.Encode([]rune(s)) {
			out = binary.BigEndian.AppendUint16(out, u)
		}
		return string(out)
	}
	for what, must := range map[string]string{
		"header": "%PDF-1.", "end": "%%EOF", "language": "/Lang (en)", "title": utf("Ravka’s match plan"),
		"subject": utf(doc.Subject), "date": "/CreationDate (D:20260518000000", "embedded font": "/FontFile2", "selectable": "/ToUnicode",
	} {
		if !bytes.Contains(data, []byte(must)) {
			t.Errorf("no %s in the file", what)
		}
	}
	if n := bytes.Count(data, []byte("/Type /Page\n")); n != len(doc.Pages) {
		t.Errorf("%d pages in the file, want %d", n, len(doc.Pages))
	}
}

// checkReferences follows the table at the end of the file: each object has to
// lie where it says.
func checkReferences(t *testing.T, data []byte) {
	t.Helper()
	start := regexp.MustCompile(`startxref\n(\d+)\n%%EOF`).FindSubmatch(data)
	if start == nil {
		t.Fatal("no table of objects")
	}
	at, _ := strconv.Atoi(string(start[1]))
	entries := regexp.MustCompile(`(\d{10}) 00000 n`).FindAllSubmatch(data[at:], -1)
	if len(entries) < 10 {
		t.Fatalf("%d objects", len(entries))
	}
	for i, e := range entries {
		offset, _ := strconv.Atoi(string(e[1]))
		if !bytes.HasPrefix(data[offset:], []byte(strconv.Itoa(i+1)+" 0 obj")) {
			t.Errorf("object %d is not at %d", i+1, offset)
		}
	}
}

// checkText reads the texts out of the file.
func checkText(t *testing.T, doc paper.Document, data []byte) {
	t.Helper()
	got, err := pdfread.Texts(data)
	if err != nil {
		t.Fatal(err)
	}
	if want := texts(doc); strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("the file says\n%q\nthe marks\n%q", got, want)
	}
}

// checkSelected asks another program what can be selected, where it is
// installed.
func checkSelected(t *testing.T, doc paper.Document, data []byte) {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Log("pdftotext is not installed: the text was read by this test alone")
		return
	}
	var trouble bytes.Buffer
	cmd := exec.Command(tool, "-raw", "-enc", "UTF-8", "-", "-")
	cmd.Stdin, cmd.Stderr = bytes.NewReader(data), &trouble
	out, err := cmd.Output()
	if err != nil || trouble.Len() > 0 {
		t.Fatalf("pdftotext: %v %s", err, trouble.String())
	}
	if got, want := letters(string(out)), letters(strings.Join(texts(doc), "")); got != want {
		t.Errorf("selected\n%s\nwant\n%s", got, want)
	}
}

// letters takes out all space.
func letters(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || unicode.IsControl(r) {
			return -1
		}
		return r
	}, s)
}

func BenchmarkAthletePage(b *testing.B) {
	p := press(b)
	for b.Loop() {
		if _, err := p.AthletePage(match()).PDF(day(5, 18)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPreview(b *testing.B) {
	doc := press(b).AthletePage(match())
	for b.Loop() {
		if _, err := doc.Picture(0, 5); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLayout(b *testing.B) {
	p := press(b)
	var doc paper.Document
	for b.Loop() {
		doc = p.AthletePage(twoSides())
	}
	_ = doc
}

// BenchmarkBaseline is an empty page: the file, and a typeface of no letters.
func BenchmarkBaseline(b *testing.B) {
	doc := paper.NewDocument(load(b), paper.A4(), []paper.Page{{}})
	for b.Loop() {
		if _, err := doc.PDF(day(5, 18)); err != nil {
			b.Fatal(err)
		}
	}
}
