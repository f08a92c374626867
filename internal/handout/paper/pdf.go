package paper

import (
	"bytes"
	"fmt"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"ebbwell/assets"
)

// PDF writes the document as a PDF. The same document and time give the same
// bytes. It returns an error when the document has no page or cannot be
// written.
func (d Document) PDF(made time.Time) ([]byte, error) {
	if len(d.Pages) == 0 {
		return nil, fmt.Errorf("write a PDF: the document has no page")
	}
	p := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: d.Size.Width, Ht: d.Size.Height}})
	d.describe(p, made)
	for i, data := range [][]byte{assets.FontRegular(), assets.FontMedium(), assets.FontSemiBold()} {
		// The writer may write into the font while it takes out the letters used.
		p.AddUTF8FontFromBytes(family(Weight(i)), "", bytes.Clone(data))
	}
	for _, page := range d.Pages {
		p.AddPage()
		for _, m := range page.Marks {
			writeMark(p, m)
		}
	}
	var out bytes.Buffer
	if err := p.Output(&out); err != nil {
		return nil, fmt.Errorf("write a PDF: %w", err)
	}
	return out.Bytes(), nil
}

// describe sets what a reader of the file is told, and makes it repeatable.
func (d Document) describe(p *fpdf.Fpdf, made time.Time) {
	p.SetCatalogSort(true)
	p.SetCreationDate(made.UTC())
	p.SetModificationDate(made.UTC())
	p.SetProducer("Ebbwell", true)
	p.SetCreator("Ebbwell", true)
	p.SetTitle(d.faces.Clean(d.Title), true)
	p.SetSubject(d.faces.Clean(d.Subject), true)
	p.SetAuthor(d.faces.Clean(d.Author), true)
	p.SetLang(d.Language)
	p.SetMargins(0, 0, 0)
	p.SetAutoPageBreak(false, 0)
}

// family is the name of a weight inside the file.
func family(w Weight) string {
	switch w {
	case Medium:
		return "plexmedium"
	case SemiBold:
		return "plexsemibold"
	}
	return "plex"
}

// writeMark draws one mark.
func writeMark(p *fpdf.Fpdf, m Mark) {
	switch m := m.(type) {
	case Text:
		r, g, b := m.Ink.RGB()
		p.SetTextColor(int(r), int(g), int(b))
		p.SetFont(family(m.Weight), "", 0)
		p.SetFontUnitSize(m.Size)
		p.Text(m.X, m.Y, m.Text)
	case Line:
		writeLine(p, m)
	case Box:
		writeBox(p, m)
	case Check:
		writeBox(p, m.box())
	case Hatch:
		for _, l := range m.lines() {
			writeLine(p, l)
		}
	}
}

func writeLine(p *fpdf.Fpdf, m Line) {
	r, g, b := m.Ink.RGB()
	p.SetDrawColor(int(r), int(g), int(b))
	p.SetLineWidth(m.Width)
	setDash(p, m.Dash)
	p.Line(m.X1, m.Y1, m.X2, m.Y2)
}

func writeBox(p *fpdf.Fpdf, m Box) {
	style := ""
	if m.Fill != NoInk {
		r, g, b := m.Fill.RGB()
		p.SetFillColor(int(r), int(g), int(b))
		style += "F"
	}
	if m.Stroke != NoInk {
		r, g, b := m.Stroke.RGB()
		p.SetDrawColor(int(r), int(g), int(b))
		p.SetLineWidth(m.Width)
		setDash(p, m.Dash)
		style += "D"
	}
	switch {
	case style == "":
	case m.Radius > 0:
		p.RoundedRect(m.X, m.Y, m.W, m.H, m.Radius, "1234", style)
	default:
		p.Rect(m.X, m.Y, m.W, m.H, style)
	}
}

// setDash sets the dashes of what follows; 0 for an unbroken line.
func setDash(p *fpdf.Fpdf, dash float64) {
	if dash > 0 {
		p.SetDashPattern([]float64{dash, dash}, 0)
	} else {
		p.SetDashPattern(nil, 0)
	}
}
