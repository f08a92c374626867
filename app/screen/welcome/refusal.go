package welcome

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/store"
)

// Rescue is what can be done about a data folder that cannot be opened.
type Rescue struct {
	// Sentence says an error in words.
	Sentence func(error) string
	// Dir is the data folder.
	Dir string
	// Again tries to open it once more.
	Again func()
	// AsItIs opens it though a value in the file became another.
	AsItIs func()
	// Restore puts a snapshot in the place of the file, beside the window.
	Restore func(store.Snapshot)
	// Failed is why a snapshot could not be restored before; nil when none was tried.
	Failed error
	Quit   func()
}

// NewRefusal says why the data folder cannot be opened, what is kept, and what
// to do; it lists the snapshots there are.
func NewRefusal(h *field.Host, err error, r Rescue) fyne.CanvasObject {
	say := h.Words.Say
	trouble := look.NewCaution("", "", nil)
	if r.Failed != nil {
		trouble.SetText(say("refusal.notrestored"), r.Sentence(r.Failed))
	}
	parts := []fyne.CanvasObject{
		look.NewLabel(say("program.name"), look.Key, look.Ink),
		look.NewCaution(say("refusal.title"), r.Sentence(err), nil),
		look.NewParagraph(say("refusal.folder", r.Dir), look.Note, look.Ink3),
	}
	if list := snapshotsOf(err); len(list) > 0 {
		parts = append(parts, snapshotSheet(h, list, r))
	}
	again := field.NewButton(h, "refusal.again", say("refusal.again"), field.Primary, r.Again)
	quit := field.NewButton(h, "refusal.quit", say("refusal.quit"), field.Outline, r.Quit)
	row := look.HBox(12, again, quit)
	if store.CodeOf(err) == store.CodeAltered {
		row.Objects = []fyne.CanvasObject{again, field.NewButton(h, "refusal.asitis", say("refusal.asitis"), field.Outline, r.AsItIs), quit}
	}
	parts = append(parts, trouble, row)
	return look.NewScroll(container.New(centred{}, look.VBox(16, parts...)))
}

// snapshotsOf are the snapshots an error offers.
func snapshotsOf(err error) []store.Snapshot {
	var e *store.Error
	if errors.As(err, &e) {
		return e.Snapshots
	}
	return nil
}

// snapshotSheet lists snapshots to restore, the newest first.
func snapshotSheet(h *field.Host, list []store.Snapshot, r Rescue) fyne.CanvasObject {
	w := h.Words
	rows := []fyne.CanvasObject{
		look.NewLabel(w.Say("refusal.snapshots"), look.Strong, look.Ink),
		look.NewParagraph(w.Say("refusal.snapshots.sentence"), look.Note, look.Ink2),
	}
	for i, snap := range list[:min(len(list), 8)] {
		restore := field.NewButton(h, "refusal.restore."+w.Number(float64(i+1), 0), w.Say("refusal.restore"), field.Outline, func() { r.Restore(snap) })
		when := w.Say("refusal.snapshot", w.Date(snap.At), w.Clock(snap.At), w.Say("snapshot."+string(snap.Reason)))
		rows = append(rows, look.Columns(12, []look.Track{look.Share(1), look.Fit()}, look.NewLabel(when, look.Body, look.Ink), restore))
	}
	return look.NewSheet(look.VBox(10, rows...))
}
