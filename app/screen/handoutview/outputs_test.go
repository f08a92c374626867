package handoutview

import (
	"bytes"
	"context"
	"image"
	imgdraw "image/draw"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/picture"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/handout/pdfread"
)

// The options are on the page only when asked for; the switch is for the
// athlete's page alone.
func TestOptionsSideBySideWhenAsked(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Dorian")
	if strings.Contains(text(v), "Your options compared") {
		t.Error("the options are on the page without being asked for")
	}
	v.ui.compare.OnChanged(true)
	if !strings.Contains(text(v), "Your options compared") || len(v.render.laid.document.Pages) != 1 {
		t.Errorf("%d pages: %s", len(v.render.laid.document.Pages), text(v))
	}
	v.ui.page.OnChosen(string(KitBagCard))
	if v.ui.compare.Visible() {
		t.Error("the card offers to compare")
	}
}

// Bottles are asked for beside the bands, kept with the athlete, and put on the page;
// what is no measure is refused, what no bottle has is questioned.
func TestBottlesAreMeasured(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := open(t, d, "Kester")
	if v.ui.bottles.box.Visible() {
		t.Error("bottles are asked for on the athlete's page")
	}
	v.ui.page.OnChosen(string(BottleBands))
	if !v.ui.bottles.box.Visible() || !strings.Contains(text(v), "no band, because its mark was not measured") {
		t.Fatalf("the bands say %s", text(v))
	}
	for name, x := range map[string]string{
		"1.name": "Black bottle", "1.full": "1000", "1.height": "260", "1.low": "50", "1.lowheight": "20", "2.name": "White bottle", "2.full": "750", "2.height": "200,5",
	} {
		apptest.Type(t, w, "handoutview.bottle."+name, x)
	}
	v.ui.bottles.save()
	if title, _ := v.ui.bottles.trouble.Text(); title != "" {
		t.Fatalf("refused: %s", title)
	}
	kept, err := d.Store.LoadAthlete(context.Background(), v.file.subject.athlete.ID)
	if err != nil {
		t.Fatal(err)
	}
	list := consult.OwnBottles(kept)
	if len(list) != 2 || list[0].Name != "Black bottle" || list[1].FullMM != 200.5 || list[1].Low != 0 {
		t.Errorf("kept are %+v", list)
	}
	v.ui.page.OnChosen(string(AthletePage))
	if !strings.Contains(text(v), "Black bottle") {
		t.Errorf("the page does not name the bottle: %s", text(v))
	}
	v.ui.page.OnChosen(string(BottleBands))
	apptest.Type(t, w, "handoutview.bottle.1.height", "900")
	v.ui.bottles.save()
	if title, _ := v.ui.bottles.trouble.Text(); title != "Measure it again" {
		t.Errorf("a straw is not questioned: %q", title)
	}
	apptest.Type(t, w, "handoutview.bottle.1.height", "tall")
	v.ui.bottles.save()
	if title, _ := v.ui.bottles.trouble.Text(); title != "Not a bottle" {
		t.Errorf("a word is taken as a height: %q", title)
	}
}

// A page is sent to the system's printing and kept as handed out; without a printer it
// is said.
func TestPrintedThroughTheSystem(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Ravka")
	said, sent := "", ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	v.toPrinter = func(_ context.Context, path string) error {
		data, err := os.ReadFile(path)
		if err == nil && bytes.HasPrefix(data, []byte("%PDF-")) {
			sent = path
		}
		return err
	}
	v.SendToPrinter()
	if sent == "" || !strings.HasSuffix(sent, ".pdf") || said != "Sent to the printer." || v.ui.prints.table.Rows() != 1 {
		t.Errorf("sent %q, said %q, %d prints", sent, said, v.ui.prints.table.Rows())
	}
	v.toPrinter = func(context.Context, string) error { return saveto.ErrNoPrinting }
	v.SendToPrinter()
	if !strings.Contains(said, "print it from there") && !strings.Contains(said, "It is here") {
		t.Errorf("without a printer it says %q", said)
	}
	if err := os.RemoveAll(filepath.Dir(sent)); err != nil {
		t.Error(err)
	}
}

// Each page of what is shown is a picture of about 200 dots an inch.
func TestPageAsPicture(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Ravka")
	list, err := pictures(v.file.subject, v.choice)
	if err != nil || len(list) != 1 || list[0].Bounds().Dx() != 210*picture.Dots {
		t.Errorf("%d pictures, %v", len(list), err)
	}
}

// The blank sheet can be had on one side; the switch is for that sheet alone.
func TestShortBlankSheet(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Ravka")
	if v.ui.short.Visible() {
		t.Error("the athlete's page offers a short form")
	}
	v.ui.page.OnChosen(string(BlankSheet))
	if !v.ui.short.Visible() || len(v.render.laid.document.Pages) < 2 {
		t.Errorf("%d sides of the long form", len(v.render.laid.document.Pages))
	}
	v.ui.short.OnChanged(true)
	if len(v.render.laid.document.Pages) != 1 {
		t.Errorf("%d sides of the short form", len(v.render.laid.document.Pages))
	}
}

// The picture that is saved is the page that is printed: each text of the page is in the
// PDF, and each is drawn in the picture.
func TestPictureIsThePage(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := open(t, d, "Ravka")
	for _, p := range []Page{AthletePage, KitBagCard} {
		v.ui.page.OnChosen(string(p))
		page, err := layOut(v.file.subject, v.choice)
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "page.png")
		v.SavePicture()
		apptest.Type(t, w, "handoutview.askpicture.path", path)
		apptest.Click(t, w, "handoutview.askpicture.yes")
		holdPicture(t, path, page.document)
		holdTexts(t, page.document)
	}
}

// holdPicture holds a saved picture against the first page of a document, pixel by pixel.
func holdPicture(t *testing.T, path string, doc paper.Document) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	saved, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	want, err := doc.Picture(0, picture.Dots)
	if err != nil {
		t.Fatal(err)
	}
	got := image.NewRGBA(saved.Bounds())
	imgdraw.Draw(got, got.Bounds(), saved, saved.Bounds().Min, imgdraw.Src)
	if got.Bounds() != want.Bounds() || !bytes.Equal(got.Pix, want.Pix) {
		t.Errorf("the picture saved is not the page: %v, %v", got.Bounds(), want.Bounds())
	}
}

// holdTexts looks for the texts of a document's first page in its PDF and, for some of
// them, in its picture: without the text the picture is another.
func holdTexts(t *testing.T, doc paper.Document) {
	t.Helper()
	data, err := doc.PDF(apptest.Now())
	if err != nil {
		t.Fatal(err)
	}
	list, err := pdfread.Texts(data)
	if err != nil {
		t.Fatal(err)
	}
	printed := strings.Join(list, "\n")
	whole, err := doc.Picture(0, paper.MinScale)
	if err != nil {
		t.Fatal(err)
	}
	drawn := 0
	marks := doc.Pages[0].Marks
	for i, m := range marks {
		text, ok := m.(paper.Text)
		if !ok || strings.TrimSpace(text.Text) == "" {
			continue
		}
		if !strings.Contains(printed, text.Text) {
			t.Errorf("not in the PDF: %q", text.Text)
		}
		if i%7 != 0 {
			continue
		}
		without := doc
		without.Pages = []paper.Page{{Marks: slices.Delete(slices.Clone(marks), i, i+1)}}
		other, err := without.Picture(0, paper.MinScale)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Equal(other.Pix, whole.Pix) {
			t.Errorf("not in the picture: %q", text.Text)
		}
		drawn++
	}
	if drawn < 4 {
		t.Errorf("%d texts looked for in the picture", drawn)
	}
}
