package practice

import (
	"context"
	"errors"
	"path/filepath"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/lock"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// backupAsk is what the dialog of a backup asks beside the place.
type backupAsk struct {
	phrase *field.Line
	repeat *field.Check
}

// askBackup asks where a copy of all records is to be kept, whether it is locked
// and whether it is made again by itself.
func (r *records) askBackup() {
	d := r.v.desk
	say := d.Words.Say
	if !r.v.b.FlushNow() {
		return
	}
	ask := backupAsk{
		phrase: field.NewLine(d.Host, "practice.backup.phrase", 200),
		repeat: field.NewCheck(d.Host, "practice.backup.repeat", say("practice.backup.repeat", store.BackupDays)),
	}
	ask.phrase.SetPlaceholder(say("practice.backup.phrase", lock.ShortestPassphrase))
	var made record.Backup
	saveto.Ask(d, r.v.canvas(), saveto.Request{
		Name: "practice.backup.ask", Title: say("practice.backup.title"), Sentence: say("practice.backup.sentence"), Yes: say("practice.backup.yes"),
		File:  saveto.FileName(say("practice.backup.file", string(d.Today())), ".db"),
		Extra: look.VBox(8, ask.phrase, look.NewParagraph(say("practice.backup.phrase.note"), look.Note, look.Ink2), ask.repeat),
		Write: r.backUp(&made, ask),
		Done: func(path string) {
			r.keepBackup(made)
			d.Say(say("practice.backedup", path), "", nil)
		},
	})
}

// backUp makes the copy; made becomes what is kept of it.
func (r *records) backUp(made *record.Backup, ask backupAsk) func(context.Context, string) error {
	d := r.v.desk
	return func(ctx context.Context, path string) error {
		b := d.Practice().Settings.Backup
		phrase := ask.phrase.Text()
		key := lock.Key{}
		if phrase != "" {
			var err error
			if key, err = lock.NewKey(phrase, lock.Work); err != nil {
				return err
			}
		}
		if err := d.Store.BackupWith(ctx, path, key); err != nil {
			return err
		}
		if ask.repeat.On() {
			b.Folder, b.Days, b.Key, b.To = filepath.Dir(path), store.BackupDays, key.Locked, key.To
		}
		now := d.Now().UTC()
		b.At = &now
		*made = b
		return nil
	}
}

// keepBackup keeps where, how often and when last copies are made.
func (r *records) keepBackup(b record.Backup) {
	r.v.b.Doc.Change("practice.backup", "practice.backup", func(s *sheet) { s.Record.Settings.Backup = b })
	r.v.b.Doc.EndVisit()
	r.v.left()
	r.tellBackup()
}

// tellBackup says when the last backup was made, and where they go by themselves.
func (r *records) tellBackup() {
	w, b := r.v.desk.Words, r.v.now().Settings.Backup
	last := w.Say("practice.backup.none")
	if b.At != nil {
		last = w.Say("practice.backup.last", r.moment(*b.At))
	}
	r.last.SetText(last)
	repeats := b.Folder != "" && b.Days > 0
	look.ShowIf(r.again, repeats)
	look.ShowIf(r.noMore, repeats)
	key := "practice.backup.again"
	if b.To != "" {
		key = "practice.backup.again.locked"
	}
	r.again.SetText(w.Say(key, b.Days, b.Folder))
}

// stopBackups makes no more copies by themselves; those there stay.
func (r *records) stopBackups() {
	b := r.v.now().Settings.Backup
	r.keepBackup(record.Backup{At: b.At})
}

// backupRows are the lines about backups in the panel of copies.
func (r *records) backupRows() []fyne.CanvasObject {
	say := r.v.desk.Words.Say
	r.last, r.again = look.NewParagraph("", look.Note, look.Ink2), look.NewParagraph("", look.Note, look.Ink2)
	r.noMore = field.NewLink(r.v.desk.Host, "practice.backup.stop", say("practice.backup.stop"), r.stopBackups)
	return []fyne.CanvasObject{r.last, r.again, look.HBox(0, r.noMore)}
}

// askFile asks for a backup file to restore.
func (r *records) askFile() {
	say, h := r.v.desk.Words.Say, r.v.desk.Host
	path := field.NewLine(h, "practice.restore.path", 1000)
	path.SetPlaceholder(say("practice.restore.path"))
	phrase := field.NewLine(h, "practice.restore.phrase", 200)
	phrase.SetPlaceholder(say("practice.restore.phrase"))
	chosen := false
	h.Ask(r.v.canvas(), field.Question{
		OnClosed: func() {
			if chosen {
				r.lookAt(path.Text(), phrase.Text())
			}
		},
		Name: "practice.restore.from", Title: say("practice.restore.title"), Sentence: say("practice.restore.file.sentence"),
		Content: look.VBox(8, path, phrase), Width: 600,
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("practice.restore.look"), Kind: field.Primary, Do: func() bool {
				chosen = path.Text() != ""
				return !chosen
			}},
		},
	})
}

// lookAt opens a backup beside the records and shows what is in both.
func (r *records) lookAt(path, phrase string) {
	d := r.v.desk
	if !r.v.b.FlushNow() {
		return
	}
	var opened *store.Opened
	var here store.Contents
	d.Beside.Run(func(ctx context.Context) (err error) {
		if opened, err = store.OpenBackup(ctx, path, phrase); err != nil {
			return err
		}
		here, err = d.Store.Contents(ctx)
		return err
	}, func(err error) {
		if err != nil {
			if opened != nil {
				err = errors.Join(err, opened.Close())
			}
			d.Say(d.Words.Say("practice.notrestored", r.whyLocked(err)), "", nil)
			return
		}
		r.compare(opened, here, filepath.Base(path))
	})
}

// compare shows a backup beside the records and asks before it takes their place.
func (r *records) compare(opened *store.Opened, here store.Contents, name string) {
	w, d := r.v.desk.Words, r.v.desk
	table := look.NewTable("practice.restore.compare", []look.Column{
		{Title: "", Width: look.Share(2)}, {Title: w.Say("practice.restore.now"), Width: look.Share(2), Right: true},
		{Title: w.Say("practice.restore.backup"), Width: look.Share(2), Right: true},
	})
	there := opened.Contents
	row := func(key, a, b string) []look.Cell {
		return []look.Cell{{Text: w.Say(key)}, {Text: a}, {Text: b}}
	}
	count := func(n int) string { return w.Number(float64(n), 0) }
	table.SetRows([][]look.Cell{
		row("practice.restore.athletes", count(here.Athletes), count(there.Athletes)),
		row("practice.restore.tests", count(here.Tests), count(there.Tests)),
		row("practice.restore.plans", count(here.Plans), count(there.Plans)),
		row("practice.restore.changed", r.since(here), r.since(there)),
	})
	done := func() {
		if err := opened.Close(); err != nil {
			d.Trouble(err)
		}
	}
	swapping := false
	d.Host.Ask(r.v.canvas(), field.Question{
		Name: "practice.restore.swap", Title: w.Say("practice.restore.title"), Sentence: w.Say("practice.restore.swap"), Width: 600,
		Content: look.VBox(10, table, r.sealed(opened.Seal)),
		OnClosed: func() {
			if !swapping {
				done()
			}
		},
		Actions: []field.Action{
			{Name: "no", Text: w.Say("field.ask.cancel")},
			{Name: "yes", Text: w.Say("practice.restore.yes"), Kind: field.Primary, Do: func() bool {
				swapping = true
				r.restoreFrom(store.Snapshot{Path: opened.Path}, name, done)
				return false
			}},
		},
	})
}

// sealed says what is known of the bytes of a backup.
func (r *records) sealed(seal store.Seal) fyne.CanvasObject {
	say := r.v.desk.Words.Say
	switch seal {
	case store.SealBroken:
		return look.NewCaution("", say("practice.restore.seal.broken"), nil)
	case store.SealNone:
		return look.NewParagraph(say("practice.restore.seal.none"), look.Note, look.Ink2)
	case store.SealWhole:
	}
	return look.NewParagraph(say("practice.restore.seal.whole"), look.Note, look.Ink2)
}

// since is when something was entered last.
func (r *records) since(c store.Contents) string {
	if c.Changed.IsZero() {
		return ""
	}
	return r.moment(c.Changed)
}

// whyLocked says what kept a backup from being opened.
func (r *records) whyLocked(err error) string {
	switch {
	case errors.Is(err, lock.ErrPassphrase):
		return r.v.desk.Words.Say("practice.restore.phrase.wrong")
	case errors.Is(err, lock.ErrDamaged):
		return r.v.desk.Words.Say("practice.restore.damaged")
	}
	return r.why(err)
}
