package handoutview

import (
	"context"
	"fmt"
	"image"

	"ebbwell/app/kit/picture"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
)

// Print asks where the page is to be kept as PDF, from where any reader of
// such files prints it.
func (v *View) Print() {
	w, c := v.desk.Words, v.choice
	sentence := "handoutview.save.sentence"
	if v.file.subject.handsOut(c) {
		sentence = "handoutview.save.kept"
	}
	saveto.Ask(v.desk, v.canvas(), saveto.Request{
		Name: "handoutview.ask", Title: w.Say("handoutview.save.title", w.Say("handoutview.page."+string(c.page))), Sentence: w.Say(sentence),
		Yes: w.Say("handoutview.save.yes"), File: saveto.FileName(v.fileName(c), ".pdf"), Letters: v.lacking(c),
		Write: func(ctx context.Context, path string) error { return v.write(ctx, c, path) },
		Done: func(path string) {
			v.ui.prints.load()
			v.said(path)
			v.desk.HandedOut()
		},
	})
}

// said says where a page was saved, and offers to open it.
func (v *View) said(path string) {
	w := v.desk.Words
	v.desk.Say(w.Say("handoutview.saved", path), w.Say("saveto.open"), func() { saveto.Show(v.desk, path) })
}

// fileName is what a file of a page is called, without its ending.
func (v *View) fileName(c choice) string {
	w := v.desk.Words
	return w.Say("handoutview.file", v.file.subject.athlete.Name, w.Say("handoutview.page."+string(c.page)), string(v.desk.Today()))
}

// SavePicture asks where the page is to be kept as a picture.
func (v *View) SavePicture() {
	subject, c := v.file.subject, v.choice
	picture.Save(v.desk, v.canvas(), picture.Request{
		Name: "handoutview.askpicture", File: v.fileName(c), About: []record.ID{subject.athlete.ID},
		Pictures: func(context.Context) ([]image.Image, error) { return pictures(subject, c) },
	})
}

// pictures draws the pages of a choice.
func pictures(s subject, c choice) ([]image.Image, error) {
	page, err := layOut(s, c)
	if err != nil {
		return nil, err
	}
	return picture.OfPages(page.document)
}

// lacking are those of a page that cannot be printed, wherever they stand; the page is laid
// out for it where it is not shown yet.
func (v *View) lacking(c choice) []string {
	if v.render.fresh && v.render.asked == c {
		return v.render.laid.document.Lacks
	}
	page, err := layOut(v.file.subject, c)
	if err != nil {
		return nil // writing it says so
	}
	return page.document.Lacks
}

// letters are those of a page that cannot be printed, as far as it is known while the page
// is drawn.
func (v *View) letters(c choice) []string {
	if v.render.fresh && v.render.asked == c {
		return v.render.laid.document.Lacks
	}
	return v.desk.Unprintable(v.file.subject.athlete.Name)
}

// SendToPrinter prints the page through the system; what was handed out is kept with
// the records as when it is saved. Where letters of it cannot be printed it asks first.
func (v *View) SendToPrinter() {
	w := v.desk.Words
	if letters := v.lacking(v.choice); len(letters) > 0 {
		v.desk.Host.Confirm(v.canvas(), "handoutview.letters", w.Say("saveto.letters.title", w.Commas(letters)), w.Say("saveto.letters", paper.Lacking), w.Say("saveto.print"), v.send)
		return
	}
	v.send()
}

// send sends the page to the printer.
func (v *View) send() {
	c := v.choice
	saveto.Send(v.desk, saveto.Sending{
		File:    saveto.FileName(v.fileName(c), ".pdf"),
		Write:   func(ctx context.Context, path string) error { return v.write(ctx, c, path) },
		Printer: v.toPrinter,
		Done: func() {
			v.ui.prints.load()
			v.desk.HandedOut()
		},
		Failed: func(title, sentence string) {
			v.ui.prints.load()
			v.ui.trouble.SetText(title, sentence)
			v.ui.scroll.Refresh()
		},
	})
}

// write lays the page out, writes it to a file, and keeps what was handed out
// of an agreed plan with the records. A page that is the same as one that was
// kept is written from that, byte for byte.
func (v *View) write(ctx context.Context, c choice, path string) error {
	page, err := layOut(v.file.subject, c)
	if err != nil {
		return err
	}
	pdf, err := page.pdf(v.desk.Now())
	if err != nil {
		return err
	}
	if !v.file.subject.handsOut(c) {
		return v.desk.Store.WriteFile(ctx, path, pdf, v.file.subject.athlete.ID)
	}
	p := v.file.subject.printOf(c, pdf)
	kept, there, err := v.keptLike(ctx, p)
	if err != nil {
		return err
	}
	if there {
		return v.desk.Store.WriteFile(ctx, path, kept.Bytes, p.AthleteID)
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
