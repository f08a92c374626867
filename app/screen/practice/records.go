package practice

import (
	"context"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// records are the copies of the data file, what was deleted, and how long
// records are kept.
type records struct {
	v       *View
	list    recordLists
	copies  *look.Table
	take    *look.Paragraph
	restore *field.Button
	deleted *look.Table
	// deletedBox keeps room for the list of them.
	deletedBox fyne.CanvasObject
	// copiesBox is the table of copies in its room.
	copiesBox *fyne.Container
	back      *field.Button
	none      *look.Paragraph
	keeping   *keeping
	folder    *look.Paragraph
	// last and again tell about backups, noMore stops those made by themselves.
	last, again *look.Paragraph
	noMore      *field.Link
	body        fyne.CanvasObject
}

// recordLists are what is listed.
type recordLists struct {
	copies  []store.Snapshot
	deleted []store.DeletedRecord
}

// newRecords builds the tab.
func newRecords(v *View) *records {
	say, h := v.desk.Words.Say, v.desk.Host
	r := &records{v: v, none: look.NewParagraph(say("practice.deleted.none"), look.Body, look.Ink2)}
	r.copies = look.NewTable("practice.copies", []look.Column{
		{Title: say("practice.copies.when"), Width: look.Share(3)}, {Title: say("practice.copies.why"), Width: look.Share(2)},
		{Title: say("practice.copies.size"), Width: look.Fixed(60), Right: true, From: 420},
	}).Scrolling()
	r.take = look.NewParagraph("", look.Note, look.Ink2)
	r.copies.OnChosen = func(int) { r.enable() }
	r.copies.OnOpened = func(int) { r.askRestore() }
	r.restore = field.NewButton(h, "practice.restore", say("practice.restore"), field.Outline, r.askRestore)
	backup := field.NewButton(h, "practice.backup", say("practice.backup"), field.Primary, r.askBackup)
	from := field.NewButton(h, "practice.restore.file", say("practice.restore.file"), field.Outline, r.askFile)
	r.deleted = look.NewTable("practice.deleted", []look.Column{
		{Title: say("practice.deleted.what"), Width: look.Share(4)}, {Title: say("practice.deleted.when"), Width: look.Share(3)},
		{Title: say("practice.deleted.by"), Width: look.Share(2), From: 420},
	}).Scrolling()
	r.deleted.OnChosen = func(int) { r.enable() }
	r.deleted.OnOpened = func(int) { r.bringBack() }
	r.deletedBox = look.MinSized(0, 130, r.deleted)
	r.back = field.NewButton(h, "practice.bringback", say("practice.bringback"), field.Outline, r.bringBack)
	r.keeping = newKeeping(v)
	r.folder = look.NewParagraph(v.desk.Store.Dir(), look.Body, look.Ink)
	r.copiesBox = look.MinSized(0, 190, r.copies)
	backups := look.VBox(4, r.backupRows()...)
	copies := v.panel(say("practice.copies"), say("practice.copies.note", store.SnapshotDays, store.SnapshotWeeks, store.SnapshotMonths), look.NewParagraph(say("practice.copies.sealed"), look.Note, look.Ink2), r.copiesBox, r.take,
		look.HBox(8, r.restore), look.NewRule(), look.HBox(8, backup, from), backups)
	imports := field.NewButton(h, "practice.import", say("practice.import.button"), field.Outline, func() { v.desk.Go(desk.Place{Screen: desk.Import}) })
	into := v.panel(say("practice.import"), say("practice.import.note"), look.HBox(0, imports))
	out := v.panel(say("practice.export"), say("practice.export.note"), r.exportRow())
	folder := v.panel(say("practice.folder"), "", r.folder, look.NewParagraph(say("practice.folder.note"), look.Note, look.Ink2),
		look.NewParagraph(say("practice.folder.encryption"), look.Note, look.Ink2))
	gone := v.panel(say("practice.deleted"), say("practice.deleted.note"), r.none, r.deletedBox, look.HBox(8, r.back))
	left, right := look.VBox(14, copies, folder), look.VBox(14, gone, r.keeping.panel, into, out)
	r.body = scrolled(look.Panels(14, []look.Track{look.Share(1), look.Share(1)}, left, right))
	r.load()
	return r
}

func (r *records) box() fyne.CanvasObject { return r.body }

// follow works out who is past the time records are kept for.
func (r *records) follow() {
	r.keeping.follow()
	r.tellBackup()
}

// load lists copies and deleted records.
func (r *records) load() {
	var err error
	if r.list.copies, err = r.v.desk.Store.Snapshots(); err != nil {
		r.v.desk.Trouble(err)
	}
	if r.list.deleted, err = r.v.desk.Store.Deleted(context.Background()); err != nil {
		r.v.desk.Trouble(err)
	}
	r.fillCopies()
	r.fillDeleted()
	r.enable()
}

func (r *records) fillCopies() {
	w := r.v.desk.Words
	var rows [][]look.Cell
	var bytes int64
	for _, c := range r.list.copies {
		bytes += c.Bytes
		rows = append(rows, []look.Cell{
			{Text: r.moment(c.At)}, {Text: w.Say("snapshot." + string(c.Reason)), Tone: look.Ink2},
			{Text: w.Say("practice.megabytes", w.Number(float64(c.Bytes)/1e6, 1)), Tone: look.Ink2},
		})
	}
	r.copies.SetRows(rows)
	look.ShowIf(r.copiesBox, len(rows) > 0)
	look.ShowIf(r.restore, len(rows) > 0)
	r.take.SetText(w.Say("practice.copies.none"))
	if len(rows) > 0 {
		r.take.SetText(w.Say("practice.copies.take", len(rows), w.Say("practice.megabytes", w.Number(float64(bytes)/1e6, 1))))
	}
}

func (r *records) fillDeleted() {
	var rows [][]look.Cell
	for _, d := range r.list.deleted {
		rows = append(rows, []look.Cell{
			{Text: r.nameOf(d)}, {Text: r.moment(d.At), Tone: look.Ink2}, {Text: d.By, Tone: look.Ink2},
		})
	}
	r.deleted.SetRows(rows)
	look.ShowIf(r.none, len(rows) == 0)
	look.ShowIf(r.deletedBox, len(rows) > 0)
	look.ShowIf(r.back, len(rows) > 0)
}

// moment writes a day and a time as the clock on the wall has it.
func (r *records) moment(at time.Time) string {
	w := r.v.desk.Words
	at = at.In(r.v.desk.Now().Location())
	return w.Say("practice.moment", w.Date(at), w.Clock(at))
}

// nameOf says what was deleted: "Plan Match", "Test of 14 May".
func (r *records) nameOf(d store.DeletedRecord) string {
	w := r.v.desk.Words
	name := d.Name
	if day, ok := d.Date.Time(); ok && name == "" {
		name = w.Date(day)
	}
	if name == "" {
		name = w.Say("practice.deleted.unnamed")
	}
	return w.Say("practice.deleted."+string(d.Ref.Kind), name)
}

// enable lets what needs a chosen row be pressed only with one.
func (r *records) enable() {
	look.EnableIf(r.restore, r.copies.Chosen() >= 0)
	look.EnableIf(r.back, r.deleted.Chosen() >= 0)
}

// bringBack takes the chosen delete back.
func (r *records) bringBack() {
	i := r.deleted.Chosen()
	if i < 0 || i >= len(r.list.deleted) {
		return
	}
	gone, d := r.list.deleted[i], r.v.desk
	if err := d.Store.Undelete(context.Background(), gone.Ref, store.Edit{}); err != nil {
		d.Trouble(err)
		return
	}
	if gone.Ref.Kind == record.KindProduct {
		d.ProductsChanged()
	}
	r.load()
	r.keeping.follow()
	r.body.Refresh()
	d.Say(d.Words.Say("practice.broughtback", r.nameOf(gone)), "", nil)
}

// askRestore asks before the chosen copy takes the place of the records.
func (r *records) askRestore() {
	i := r.copies.Chosen()
	if i < 0 || i >= len(r.list.copies) {
		return
	}
	w, c := r.v.desk.Words, r.list.copies[i]
	when := r.moment(c.At)
	days := ago(c.At, r.v.desk.Now())
	r.v.desk.Host.Confirm(r.v.canvas(), "practice.restore.ask", w.Say("practice.restore.title"),
		w.Say("practice.restore.sentence", when, w.Say("practice.days", days)), w.Say("practice.restore.yes"), func() { r.restoreFrom(c, when, func() {}) })
}

// restoreFrom puts a copy in the place of the records. What is there now is set
// aside first, so that a wrong copy can be undone. done is told at the end, however
// it went.
func (r *records) restoreFrom(c store.Snapshot, when string, done func()) {
	d := r.v.desk
	if !r.v.b.FlushNow() {
		done()
		return
	}
	d.Beside.Run(func(ctx context.Context) error { return d.Store.Restore(ctx, c) }, func(err error) {
		done()
		if err != nil {
			d.Say(d.Words.Say("practice.notrestored", r.why(err)), "", nil)
			return
		}
		d.PracticeChanged()
		d.ProductsChanged()
		d.SettingsChanged()
		d.Say(d.Words.Say("practice.restored", when), "", nil)
	})
}

// why says what kept a copy from being restored; words that speak of the
// records would be wrong of a copy.
func (r *records) why(err error) string {
	w := r.v.desk.Words
	if key := "practice.restore." + string(store.CodeOf(err)); w.Has(key) {
		return w.Say(key)
	}
	return w.Say("trouble.unexpected", err.Error())
}
