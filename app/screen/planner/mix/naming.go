package mix

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// naming is the beginning of a slider's row: the square of its substance, its
// name, what may stand behind it (the strength of a powder), and a note; below it
// the amount in words. Where room is short the note gives way first; a name that is longer
// than its line goes on below, in the place of the words. Where the mix is tight, the words
// stand in the place of the note, and such a name is shortened.
type naming struct {
	widget.BaseWidget
	swatch *look.Swatch
	name   *look.Label
	// more is the rest of a long name; whole is all of it.
	more   *look.Label
	whole  string
	behind fyne.CanvasObject
	note   *look.Label
	words  *look.Label
	tight  bool
	// long and short are the amount in words.
	long, short string
	// line is the width that the name's line has.
	line float32
}

var (
	_ look.Based  = (*naming)(nil)
	_ look.Holder = (*naming)(nil)
)

func newNaming(of look.Substance, behind fyne.CanvasObject) *naming {
	n := &naming{
		swatch: look.NewSwatch(of), name: look.NewLabel("", look.Strong, look.Ink).Shorten(), more: look.NewLabel("", look.Strong, look.Ink).Shorten(), behind: behind,
		note: look.NewLabel("", look.Note, look.Ink2), words: look.NewLabel("", look.Note, look.Ink),
	}
	n.ExtendBaseWidget(n)
	return n
}

// set changes name and note; what reads the same is left alone.
func (n *naming) set(name, note string) {
	if n.whole == name && n.note.Text() == note {
		return
	}
	n.whole = name
	n.note.SetText(note)
	n.place()
}

// say changes the amount in words; short stands in their place on a tight line.
func (n *naming) say(words, short string) {
	if n.long != words || n.short != short {
		n.long, n.short = words, short
		n.place()
	}
}

// Parts returns what stands in the row.
func (n *naming) Parts() []fyne.CanvasObject {
	return []fyne.CanvasObject{n.swatch, n.name, n.more, n.behind, n.note, n.words}
}

// Baseline is that of the name: in the middle of a row of controls where the mix is
// tight, at the top of two lines elsewhere.
func (n *naming) Baseline() float32 {
	if n.tight {
		return float32(int((look.ControlHeight()-look.Strong.Height())/2)) + look.Strong.Baseline()
	}
	return look.Strong.Baseline()
}

// place sets the parts.
func (n *naming) place() {
	size, base := n.Size(), n.Baseline()
	line := min(size.Width, n.line)
	x := float32(0)
	put := func(o fyne.CanvasObject, baseline, width, height float32) {
		o.Move(fyne.NewPos(x, base-baseline))
		o.Resize(fyne.NewSize(width, height))
		x += width
	}
	square := n.swatch.MinSize()
	put(n.swatch, n.swatch.Baseline(), square.Width, square.Height)
	x += 8
	behind := float32(0)
	if n.behind.Visible() {
		behind = n.behind.MinSize().Width + 8
	}
	n.breakName(line - x - behind)
	put(n.name, n.name.Baseline(), max(min(look.Strong.Width(n.name.Text())+1, line-x-behind), 0), look.Strong.Height())
	x += 8
	if behind > 0 {
		least := n.behind.MinSize()
		drop, _ := look.BaselineOf(n.behind)
		put(n.behind, drop, least.Width, least.Height)
		x += 8
	}
	n.placeWords(x, line, square.Width+8)
}

// overlong reports that the name has no room on its line, as it was placed last.
func (n *naming) overlong() bool {
	wide := n.swatch.MinSize().Width + 8 + look.Strong.Width(n.whole)
	if n.behind.Visible() {
		wide += n.behind.MinSize().Width + 8
	}
	return n.line > 0 && wide > min(n.Size().Width, n.line)
}

// breakName gives the name as much as has room on its line, and the rest to the line below.
func (n *naming) breakName(room float32) {
	first, rest := n.whole, ""
	if !n.tight && room > 0 && look.Strong.Width(n.whole) > room {
		first = look.Wrap(n.whole, look.Strong, room)[0]
		rest = strings.TrimSpace(n.whole[len(first):])
	}
	n.name.SetText(first)
	n.more.SetText(rest)
	indent := n.swatch.MinSize().Width + 8
	n.more.Move(fyne.NewPos(indent, look.Strong.Height()))
	n.more.Resize(fyne.NewSize(max(min(look.Strong.Width(rest)+1, n.Size().Width-indent), 0), look.Strong.Height()))
	look.ShowIf(n.more, rest != "")
}

// placeWords sets note and words: whole, or not at all.
func (n *naming) placeWords(x, line, indent float32) {
	n.words.SetText(n.long)
	if n.tight && x+look.Note.Width(n.long) > line {
		n.words.SetText(n.short)
	}
	note, words, base := n.note.MinSize().Width, n.words.MinSize().Width, n.Baseline()
	at := fyne.NewPos(x, base-look.Note.Baseline())
	n.note.Move(at)
	n.note.Resize(fyne.NewSize(note, look.Note.Height()))
	if n.tight {
		n.words.Move(at)
		look.ShowIf(n.words, words > 0 && x+words <= line)
		look.ShowIf(n.note, note > 0 && !n.words.Visible() && x+note <= line)
	} else {
		n.words.Move(fyne.NewPos(indent, look.Strong.Height()))
		look.ShowIf(n.words, words > 0 && indent+words <= n.Size().Width && !n.more.Visible())
		look.ShowIf(n.note, note > 0 && x+note <= line)
	}
	n.words.Resize(fyne.NewSize(words, look.Note.Height()))
}

// CreateRenderer places the parts.
func (n *naming) CreateRenderer() fyne.WidgetRenderer { return &namingRenderer{n} }

type namingRenderer struct{ n *naming }

func (r *namingRenderer) Layout(fyne.Size) { r.n.place() }

func (r *namingRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(120), look.ControlHeight())
}

func (r *namingRenderer) Refresh() {
	r.n.place()
	r.n.swatch.Refresh()
}

func (r *namingRenderer) Objects() []fyne.CanvasObject { return r.n.Parts() }
func (r *namingRenderer) Destroy()                     {}
