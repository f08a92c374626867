package paper

// Size is a sheet of paper in millimetres.
type Size struct {
	Width, Height float64
}

// A4 is the sheet of ISO 216.
func A4() Size { return Size{Width: 210, Height: 297} }

// Letter is the sheet of ANSI/ASME Y14.1, 8.5 by 11 inches.
func Letter() Size { return Size{Width: 215.9, Height: 279.4} }

// Quarter is a quarter of the sheet, upright: A6 from A4.
func (s Size) Quarter() Size { return Size{Width: s.Width / 2, Height: s.Height / 2} }

// Page is one side of a sheet.
type Page struct {
	Marks []Mark
}

// Texts lists the texts of a page in the order they were laid out.
func (p Page) Texts() []string {
	var list []string
	for _, m := range p.Marks {
		if t, ok := m.(Text); ok {
			list = append(list, t.Text)
		}
	}
	return list
}

// Scaled returns the page made smaller or larger about its top left corner.
func (p Page) Scaled(by float64) Page {
	if by == 1 {
		return p
	}
	out := Page{Marks: make([]Mark, len(p.Marks))}
	for i, m := range p.Marks {
		out.Marks[i] = m.scaled(by)
	}
	return out
}

// Document is a set of pages with what a reader of the file is told about it.
type Document struct {
	Title, Subject, Author string
	// Language is a BCP 47 tag such as "en".
	Language string
	Size     Size
	Pages    []Page
	// Lacks are letters of its texts that cannot be printed; [Lacking] stands for them.
	Lacks []string
	// Folded are codes of what is left out so that it is one side.
	Folded []string
	faces  *Faces
}

// NewDocument makes a document of pages that were laid out with these faces.
func NewDocument(f *Faces, size Size, pages []Page) Document {
	return Document{Size: size, Pages: pages, faces: f}
}

// Ink is a colour with a meaning. Paper is always light, so an ink is one colour.
type Ink uint8

// The inks. Water, drink, food, loss and salt are for shapes, never for text.
const (
	NoInk Ink = iota
	Black
	Grey
	Faint
	Hairline
	Sunk
	White
	Water
	Drink
	Food
	Loss
	LossPale
	Salt
	// WaterPale and DrinkPale are tints, for what is drunk now.
	WaterPale
	DrinkPale
)

// RGB returns the colour of an ink. The hues of the substances are those of
// the colour-blind-safe palette of Okabe and Ito (2008).
func (k Ink) RGB() (r, g, b uint8) {
	switch k {
	case Black:
		return 0x1D, 0x22, 0x27
	case Grey:
		return 0x56, 0x5C, 0x63
	case Faint:
		return 0x67, 0x6C, 0x72
	case Hairline:
		return 0xD8, 0xD2, 0xC4
	case Sunk:
		return 0xEC, 0xE7, 0xDC
	case Water:
		return 0x00, 0x72, 0xB2
	case Drink:
		return 0x00, 0x9E, 0x73
	case Food:
		return 0xCC, 0x79, 0xA7
	case Loss:
		return 0xD5, 0x5E, 0x00
	case LossPale:
		return 0xF6, 0xDC, 0xC9
	case Salt:
		return 0x8A, 0x8F, 0x96
	case WaterPale:
		return 0xB8, 0xD8, 0xEA
	case DrinkPale:
		return 0xBF, 0xE6, 0xDB
	}
	return 0xFF, 0xFF, 0xFF
}
