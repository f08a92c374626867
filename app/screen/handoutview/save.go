package handoutview

import (
	"context"
	"fmt"
	"net/url"
	"path/filepath"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/saveto"
	"ebbwell/internal/record"
)

// Print asks where the page is to be kept as PDF, from where any reader of
// such files prints it.
func (v *View) Print() {
	w, c := v.desk.Words, v.choice
	name := w.Say("handoutview.file", v.file.subject.athlete.Name, w.Say("handoutview.page."+string(c.page)), string(v.desk.Today()))
	sentence := "handoutview.save.sentence"
	if v.file.subject.handsOut(c) {
		sentence = "handoutview.save.kept"
	}
	saveto.Ask(v.desk, v.canvas(), saveto.Request{
		Name: "handoutview.ask", Title: w.Say("handoutview.save.title", w.Say("handoutview.page."+string(c.page))), Sentence: w.Say(sentence),
		Yes: w.Say("handoutview.save.yes"), File: saveto.FileName(name, ".pdf"),
		Write: func(ctx context.Context, path string) error { return v.write(ctx, c, path) },
		Done: func(path string) {
			v.ui.prints.load()
			v.said(path)
		},
	})
}

// said says where a page was saved, and offers to open it.
func (v *View) said(path string) {
	w := v.desk.Words
	v.desk.Say(w.Say("handoutview.saved", path), w.Say("handoutview.open"), func() {
		at := url.URL{Scheme: "file", Path: filepath.ToSlash(path)}
		if err := fyne.CurrentApp().OpenURL(&at); err != nil {
			v.desk.Say(w.Say("handoutview.notopened", path), "", nil)
		}
	})
}

// write lays the page out, writes it to a file, and keeps what was handed out
// of an agreed plan with the records. A page that is the same as one that was
// kept is written from that, byte for byte.
func (v *View) write(ctx context.Context, c choice, path string) error {
	page, err := layOut(v.file.subject, c, v.desk.Words)
	if err != nil {
		return err
	}
	pdf, err := page.pdf(v.desk.Now())
	if err != nil {
		return err
	}
	if !v.file.subject.handsOut(c) {
		return v.desk.Store.WriteFile(ctx, path, pdf)
	}
	p := v.file.subject.printOf(c, pdf)
	kept, there, err := v.keptLike(ctx, p)
	if err != nil {
		return err
	}
	if there {
		return v.desk.Store.WriteFile(ctx, path, kept.Bytes)
	}
	if _, err := v.desk.Store.HandOut(ctx, p, path); err != nil {
		return fmt.Errorf("write and keep the page: %w", err)
	}
	return nil
}

// keptLike is an earlier print of the same page that says the same.
func (v *View) keptLike(ctx context.Context, p record.Print) (record.Print, bool, error) {
	list, err := v.desk.Store.PrintsOf(ctx, p.AthleteID)
	if err != nil {
		return record.Print{}, false, err
	}
	for _, old := range list {
		if old.Record != p.Record || old.Page != p.Page || old.Language != p.Language {
			continue
		}
		whole, err := v.desk.Store.LoadPrint(ctx, old.ID)
		if err != nil {
			return record.Print{}, false, err
		}
		if sameButTime(whole.Bytes, p.Bytes) {
			return whole, true, nil
		}
	}
	return record.Print{}, false, nil
}
