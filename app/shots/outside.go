package shots

import (
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/screen/welcome"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// outside are the pages of a window before there is a practice: the welcome, a folder that
// is being opened, one that cannot be, with copies to go back to and without.
func outside() []shot {
	const folder = "/home/practice/ebbwell"
	damaged := &store.Error{Code: store.CodeDamaged, Doing: "open", Path: folder + "/ebbwell.db", Snapshots: []store.Snapshot{
		{At: Now().Add(-20 * time.Hour), Reason: store.SnapshotDaily, Bytes: 4_300_000}, {At: Now().Add(-44 * time.Hour), Reason: store.SnapshotSchema, Bytes: 4_200_000},
	}}
	refusal := func(err, failed error) func(*field.Host) fyne.CanvasObject {
		return func(h *field.Host) fyne.CanvasObject {
			return welcome.NewRefusal(h, err, welcome.Rescue{
				Sentence: func(err error) string { return desk.Sentence(h.Words, err) }, Dir: folder, Failed: failed,
				Again: func() {}, Restore: func(store.Snapshot) {}, Quit: func() {},
			})
		}
	}
	return []shot{
		{name: "state-welcome", outside: func(h *field.Host) fyne.CanvasObject {
			return welcome.New(h, welcome.Actions{Try: func() {}, Begin: func(record.Practice) error { return nil }, Sentence: func(err error) string { return desk.Sentence(h.Words, err) }})
		}},
		{name: "state-opening", outside: func(h *field.Host) fyne.CanvasObject { return welcome.NewOpening(h, func() {}).Body() }},
		{name: "state-refusal", outside: refusal(&store.Error{Code: store.CodeInUse, Doing: "open"}, nil)},
		{name: "state-refusal-copies", outside: refusal(damaged, &store.Error{Code: store.CodeNoSpace, Doing: "restore"})},
	}
}
