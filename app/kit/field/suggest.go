package field

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/internal/plain"
)

// Suggest is a line of text with a list of matches while typing: foods,
// sports, places. Down opens the list, Enter or Tab takes the match at hand,
// Escape closes the list and keeps the text.
type Suggest struct {
	entry

	// Matches lists what fits a text; it is asked at every keystroke.
	Matches func(text string) []Option
	// OnChosen is told the match the person took.
	OnChosen func(Option)
	// OnChanged is told the text at every keystroke, OnLeft when the keyboard
	// leaves; known is false for a text that is no match of the list.
	OnChanged func(text string)
	OnLeft    func(text string, known bool)

	free   bool
	choosy bool
	taken  Option
	open   *popup
}

var (
	_ Field      = (*Suggest)(nil)
	_ popupOwner = (*Suggest)(nil)
)

// NewSuggest makes an empty field. With free any text is allowed; without it a
// text that is no match is said to be none when the field is left.
func NewSuggest(h *Host, name string, free bool, matches func(text string) []Option) *Suggest {
	s := &Suggest{Matches: matches, free: free}
	s.editor.most = 120
	s.setup.least = 120
	s.hooks = entryHooks{changed: s.typed, left: s.leftText, key: s.openKey}
	s.start(s, h, name)
	return s
}

// Choosy has Enter take a match that does not read as the text only where it is the
// only one with a word that begins so: where matches differ in kind, as a run at one
// speed from a run at another, the person chooses. Where the text must be a match, Enter
// then marks the first, and a second Enter takes it. It returns the field.
func (s *Suggest) Choosy() *Suggest {
	s.choosy = true
	return s
}

// Set shows a match; nobody is told.
func (s *Suggest) Set(o Option) {
	s.taken = o
	s.SetText(o.Text)
	s.SetTrouble(Fine, "")
}

// Taken returns the match the text stands for; ok is false for a text that is
// no match.
func (s *Suggest) Taken() (o Option, ok bool) {
	return s.taken, s.taken.Text != "" && s.taken.Text == s.Text()
}

// matches asks for what fits the text.
func (s *Suggest) matches() []Option {
	if s.Matches == nil {
		return nil
	}
	return s.Matches(s.Text())
}

// typed follows the typing and keeps the list up to date.
func (s *Suggest) typed() {
	s.SetTrouble(Fine, "")
	tell(s.OnChanged, s.Text())
	s.suggest()
}

// suggest opens, changes or closes the list.
func (s *Suggest) suggest() {
	options := s.matches()
	switch {
	case s.Text() == "" || len(options) == 0 || !s.focused:
		s.shut()
	case s.open == nil:
		s.open = openPopup(s, options, s.hand(options))
	default:
		s.open.setOptions(options, s.hand(options))
	}
}

// eager is how many letters make the only match that begins with them the one
// at hand in free text.
const eager = 3

// hand is the match that Enter takes, -1 for none. Where the text must be a match it is
// the first; in free text one that reads the same, or is the only one that begins with
// the letters typed: where several do, the person chooses. A choosy field has none where
// several have a word that begins so. Escape keeps what was typed.
func (s *Suggest) hand(options []Option) int {
	for i, o := range options {
		if strings.EqualFold(o.Text, s.Text()) {
			return i
		}
	}
	switch {
	case s.choosy && severalNear(options, s.Text()):
		return -1
	case !s.free:
		return 0
	}
	typed, at := plain.Text(s.Text()), -1
	if len([]rune(typed)) < eager {
		return -1
	}
	for i, o := range options {
		if !strings.HasPrefix(plain.Text(o.Text), typed) {
			continue
		}
		if at >= 0 {
			return -1
		}
		at = i
	}
	return at
}

// waits reports whether Enter stays with the list until a match is chosen.
func (s *Suggest) waits() bool { return s.choosy && !s.free }

// shut closes the list.
func (s *Suggest) shut() {
	if s.open != nil {
		s.open.close()
	}
}

// Open shows the list for the text as it stands.
func (s *Suggest) Open() {
	if options := s.matches(); s.open == nil && len(options) > 0 && !s.Disabled() {
		s.open = openPopup(s, options, s.hand(options))
	}
}

func (s *Suggest) openKey(e *fyne.KeyEvent) bool {
	if e.Name != fyne.KeyDown {
		return false
	}
	s.Open()
	return true
}

// picked takes a match of the list.
func (s *Suggest) picked(_ int, o Option) {
	s.taken = o
	s.editor.set(o.Text)
	s.kept = s.Text()
	s.SetTrouble(Fine, "")
	s.Refresh()
	tell(s.OnChanged, o.Text)
	tell(s.OnChosen, o)
}

func (s *Suggest) closed()                       { s.open = nil }
func (s *Suggest) letter(r rune)                 { s.entry.TypedRune(r) }
func (s *Suggest) otherKey(e *fyne.KeyEvent)     { s.entry.TypedKey(e) }
func (s *Suggest) otherShortcut(c fyne.Shortcut) { s.entry.TypedShortcut(c) }

// leftText takes a text that reads like a match for it, and says when it must
// be one and is not.
func (s *Suggest) leftText() {
	_, known := s.Taken()
	if !known {
		for _, o := range s.matches() {
			if strings.EqualFold(o.Text, strings.TrimSpace(s.Text())) {
				s.Set(o)
				known = true
				tell(s.OnChosen, o)
				break
			}
		}
	}
	if !known && !s.free && s.Text() != "" {
		s.SetTrouble(Wrong, s.host.Words.Say("field.list.unknown"))
	}
	if s.OnLeft != nil {
		s.OnLeft(s.Text(), known)
	}
}
