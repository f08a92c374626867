package giving

import (
	"bytes"
	"context"
	"errors"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/assets"
	"ebbwell/internal/bundle"
	"ebbwell/internal/lock"
)

// lockPart is the passphrase a file for a colleague is locked with, typed twice.
type lockPart struct {
	first, second *field.Line
	show          *field.Check
	trouble       *look.Paragraph
	body          fyne.CanvasObject
}

func newLockPart(d *desk.Desk) *lockPart {
	say, h := d.Words.Say, d.Host
	p := &lockPart{first: field.NewLine(h, "give.pass", 200), second: field.NewLine(h, "give.pass.again", 200), trouble: look.NewParagraph("", look.Note, look.Ink)}
	p.show = field.NewCheck(h, "give.pass.show", say("lock.show"))
	p.show.OnChanged = p.conceal
	p.conceal(false)
	p.body = look.VBox(8, look.NewForm(look.NewEntry(say("lock.phrase"), p.first).Wide(), look.NewEntry(say("lock.again"), p.second).Wide(), look.NewEntry("", p.show).Wide()).Measured(140, 300, 1),
		p.trouble, look.NewParagraph(say("lock.note", lock.ShortestPassphrase), look.Note, look.Ink2))
	return p
}

// conceal draws dots, or the letters.
func (p *lockPart) conceal(shown bool) {
	p.first.Conceal(!shown)
	p.second.Conceal(!shown)
}

// wrong says what is wrong with the passphrase; empty where nothing is.
func (p *lockPart) wrong(d *desk.Desk) string {
	switch {
	case len([]rune(p.first.Text())) < lock.ShortestPassphrase:
		return d.Words.Say("lock.short", lock.ShortestPassphrase)
	case p.first.Text() != p.second.Text():
		return d.Words.Say("lock.differ")
	}
	return ""
}

// locked makes the file for a colleague.
func (s state) locked(ctx context.Context, d *desk.Desk, passphrase string, work int) ([]byte, error) {
	b, err := d.Store.Pack(ctx, s.who(), d.Practice().Name)
	if err != nil {
		return nil, fmt.Errorf("put a colleague's file together: %w", err)
	}
	key, err := lock.NewKey(passphrase, work)
	if err != nil {
		return nil, fmt.Errorf("lock a colleague's file: %w", err)
	}
	var out bytes.Buffer
	w, err := key.Writer(&out)
	if err != nil {
		return nil, fmt.Errorf("lock a colleague's file: %w", err)
	}
	if err := errors.Join(bundle.Write(w, b, assets.Version), w.Close()); err != nil {
		return nil, fmt.Errorf("lock a colleague's file: %w", err)
	}
	return out.Bytes(), nil
}
