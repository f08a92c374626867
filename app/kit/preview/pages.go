package preview

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
	"ebbwell/internal/handout/paper"
)

// Sizes of the preview, in px.
const (
	pageGap float32 = 16
	// widest is the most a page is enlarged, px a millimetre.
	widest float32 = 5.6
)

// Pages are pages as they will print, one below the other, as wide as there is room. Paper
// is white in a dark window too.
type Pages struct {
	widget.BaseWidget
	// onWidth is told a new width of the pages, in px.
	onWidth func(width float32)

	size   paper.Size
	sheets []*pageSheet
	width  float32
}

// pageSheet is one page.
type pageSheet struct {
	outline *look.Outline
	picture *canvas.Image
}

var _ look.Flowing = (*Pages)(nil)

// newPages makes a preview without pages.
func newPages(onWidth func(float32)) *Pages {
	p := &Pages{onWidth: onWidth, size: paper.A4()}
	p.ExtendBaseWidget(p)
	return p
}

// set shows other pages.
func (p *Pages) set(size paper.Size, pictures []*image.RGBA) {
	p.size = size
	for len(p.sheets) < len(pictures) {
		picture := canvas.NewImageFromImage(nil)
		picture.FillMode, picture.ScaleMode = canvas.ImageFillStretch, canvas.ImageScaleSmooth
		p.sheets = append(p.sheets, &pageSheet{look.NewOutline(), picture})
	}
	p.sheets = p.sheets[:len(pictures)]
	for i, picture := range pictures {
		p.sheets[i].picture.Image = picture
	}
	p.width = p.pageWidth(p.Size().Width, size)
	p.Refresh()
}

// Pictures are the pages that are shown, as they are drawn.
func (p *Pages) Pictures() []image.Image {
	var list []image.Image
	for _, s := range p.sheets {
		list = append(list, s.picture.Image)
	}
	return list
}

// Width is how wide a page stands, in px; 0 before it is laid out.
func (p *Pages) Width() float32 { return p.width }

// pageWidth is how wide a page of a size stands in some room.
func (p *Pages) pageWidth(room float32, size paper.Size) float32 {
	return min(room-2, look.Factor()*widest*float32(size.Width))
}

// pageHeight is how high a page of a width is.
func (p *Pages) pageHeight(width float32) float32 {
	return width * float32(p.size.Height/p.size.Width)
}

// HeightFor returns the height of all pages at a width.
func (p *Pages) HeightFor(width float32) float32 {
	n := float32(max(len(p.sheets), 1))
	return n*(p.pageHeight(p.pageWidth(width, p.size))+2) + (n-1)*pageGap
}

// CreateRenderer draws the pages.
func (p *Pages) CreateRenderer() fyne.WidgetRenderer { return &pagesRenderer{p} }

type pagesRenderer struct{ p *Pages }

func (r *pagesRenderer) Layout(size fyne.Size) {
	p := r.p
	width := p.pageWidth(size.Width, p.size)
	if width != p.width && width > 0 {
		p.width = width
		p.onWidth(width)
	}
	height, y := p.pageHeight(width), float32(0)
	for _, s := range p.sheets {
		x := float32(int((size.Width - width - 2) / 2))
		s.outline.Place(fyne.NewPos(x, y), fyne.NewSize(width+2, height+2))
		s.picture.Move(fyne.NewPos(x+1, y+1))
		s.picture.Resize(fyne.NewSize(width, height))
		y += height + 2 + pageGap
	}
}

func (r *pagesRenderer) MinSize() fyne.Size {
	width := r.p.Size().Width
	if width <= 0 {
		width = 300
	}
	return fyne.NewSize(300, r.p.HeightFor(width))
}

func (r *pagesRenderer) Refresh() {
	light, now := look.NewPalette(false), look.PaletteNow()
	for _, s := range r.p.sheets {
		s.outline.Paint(light.Sheet, now.Hairline, 1, 0)
		s.picture.Refresh()
	}
	r.Layout(r.p.Size())
	canvas.Refresh(r.p)
}

func (r *pagesRenderer) Objects() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	for _, s := range r.p.sheets {
		list = append(list, s.outline.With(s.picture)...)
	}
	return list
}

func (r *pagesRenderer) Destroy() {}
