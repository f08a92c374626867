package field

import (
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// Weight is how much a trouble with what was typed matters.
type Weight int

// The weights.
const (
	// Fine: nothing to say.
	Fine Weight = iota
	// Odd: what was typed is used, with a question beside it.
	Odd
	// Wrong: what was typed is not used.
	Wrong
)

// entry is the line editor that [Line], [Number], [Date], [Clock] and
// [Suggest] are made of.
type entry struct {
	control

	editor editor
	// kept is the text when the keyboard came; Escape goes back to it.
	kept  string
	setup entrySetup
	hooks entryHooks
	// first is the first rune in sight.
	first   int
	trouble trouble
	// letters says how many letters of the text no font here draws.
	letters *look.Paragraph
	mouse   entryMouse
	shift   bool
}

// entrySetup is how an entry looks, decided when it is made.
type entrySetup struct {
	right       bool
	placeholder string
	suffix      string
	style       look.Style
	// least is the least width, box the width of the box; zero is free. Px at
	// 100 % text.
	least, box float32
	// quiet leaves the words of a trouble to someone else.
	quiet bool
	// room keeps the place of a one-line note free.
	room bool
	// covered draws dots in place of the text while the keyboard is elsewhere.
	covered bool
	// concealed draws a dot for each letter, also while it is typed.
	concealed bool
	// caret draws a small triangle for what opens a list.
	caret bool
}

// entryHooks are what the widget around the entry wants to know.
type entryHooks struct {
	// changed follows every change by the person, left the loss of the
	// keyboard; enter reports whether it had a use for the key.
	changed, left func()
	enter         func() bool
	// key may take a key first, rune a letter.
	key  func(*fyne.KeyEvent) bool
	rune func(rune) bool
}

// trouble is what is wrong with the text, in words.
type trouble struct {
	weight Weight
	note   *look.Paragraph
}

// entryMouse counts clicks and knows how the keyboard came.
type entryMouse struct {
	clicks int
	last   time.Time
	at     fyne.Position
	// down is true while a click gives the keyboard; clicked from MouseDown
	// until the Tapped that belongs to it.
	down, clicked bool
}

// start makes the entry part of a widget.
func (t *entry) start(self Field, h *Host, name string) {
	t.trouble.note = look.NewParagraph("", look.Note, look.Ink2)
	t.letters = look.NewParagraph("", look.Note, look.Ink2)
	t.init(self, h, name)
}

// Text returns what was typed.
func (t *entry) Text() string { return t.editor.string() }

// SetText replaces the text; nobody is told.
func (t *entry) SetText(text string) {
	if t.editor.string() == oneLine(text) {
		return
	}
	t.editor.set(text)
	t.kept = t.editor.string()
	t.first = 0
	t.followLetters()
	t.self.Refresh()
}

// SetPlaceholder sets the words that stand in an empty box.
func (t *entry) SetPlaceholder(text string) {
	t.setup.placeholder = text
	t.self.Refresh()
}

// Placeholder returns the words that stand in an empty box.
func (t *entry) Placeholder() string { return t.setup.placeholder }

// SetStyle sets the type of the text; Body unless said.
func (t *entry) SetStyle(s look.Style) {
	t.setup.style = s
	t.self.Refresh()
}

// SetLeast sets the least width in px at 100 % text.
func (t *entry) SetLeast(px float32) {
	t.setup.least = px
	t.self.Refresh()
}

// SetBox sets the width of the box in px at 100 % text, so that a note below
// may be wider than the box. Zero fills the width.
func (t *entry) SetBox(px float32) {
	t.setup.box = px
	t.self.Refresh()
}

// KeepNoteRoom keeps the place of a one-line note free, so that nothing moves
// when one appears.
func (t *entry) KeepNoteRoom() {
	t.setup.room = true
	t.self.Refresh()
}

// TakeRunes lets a screen take a letter before it is put in; it reports whether it
// had a use for it.
func (t *entry) TakeRunes(take func(r rune) bool) { t.hooks.rune = take }

// SelectAll selects the whole text.
func (t *entry) SelectAll() {
	t.editor.selectAll()
	t.self.Refresh()
}

// SelectedText returns what is selected.
func (t *entry) SelectedText() string { return t.editor.selected() }

// Trouble returns what is wrong with the text, and in which words.
func (t *entry) Trouble() (Weight, string) { return t.trouble.weight, t.trouble.note.Text() }

// SetTrouble shows that something is odd or wrong: a bar of ink in the box and
// a note below, unless someone else shows the note.
func (t *entry) SetTrouble(w Weight, note string) {
	if t.trouble.weight == w && t.trouble.note.Text() == note {
		return
	}
	t.trouble.weight = w
	t.trouble.note.SetText(note)
	t.self.Refresh()
}

// Parts returns what stands below the box.
func (t *entry) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{t.trouble.note, t.letters} }

// followLetters says below the box that the screen cannot show all that was typed; of a
// text that is covered nothing is told.
func (t *entry) followLetters() {
	text := ""
	if !t.setup.covered && !t.setup.concealed {
		text = t.host.lettersNote(t.setup.style, t.editor.string())
	}
	t.letters.SetText(text)
}

// Baseline is where the text stands.
func (t *entry) Baseline() float32 {
	s := t.setup.style
	return float32(int((look.ControlHeight()-s.Height())/2)) + s.Baseline()
}

// noteHeight is the height of the notes with the gap above them.
func (t *entry) noteHeight(width float32) float32 {
	h := look.HeightFor(t.letters, width)
	if !t.setup.quiet && !t.untold() {
		h += look.HeightFor(t.trouble.note, width)
		if t.setup.room {
			h = max(h, look.Note.Height())
		}
	}
	if h > 0 {
		h += noteGap
	}
	return h
}

// HeightFor returns the height of box and note at a width.
func (t *entry) HeightFor(width float32) float32 {
	return look.ControlHeight() + t.noteHeight(width)
}

// changed tells the owner that the person changed the text.
func (t *entry) changed() {
	if t.hooks.changed != nil {
		t.hooks.changed()
	}
	t.self.Refresh()
}

// revert goes back to what stood when the keyboard came; it reports whether
// there was anything to go back from.
func (t *entry) revert() bool {
	if t.editor.string() == t.kept {
		return false
	}
	t.editor.set(t.kept)
	t.changed()
	return true
}
