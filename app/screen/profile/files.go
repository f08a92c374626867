package profile

import (
	"slices"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/store"
)

// mostFiles is how many files of a list are named; how many more there are is said.
const mostFiles = 6

// filesPart says which files were saved outside the data folder before an athlete is
// erased, and asks whether those of nobody else are deleted too.
type filesPart struct {
	box    *fyne.Container
	remove *field.Check
}

// newFilesPart lists what there is; empty where nothing was saved.
func newFilesPart(v *View, files []store.Saved) *filesPart {
	p := &filesPart{box: look.VBox(6)}
	say := v.sp.Say
	own := slices.DeleteFunc(slices.Clone(files), func(f store.Saved) bool { return f.Shared })
	shared := slices.DeleteFunc(slices.Clone(files), func(f store.Saved) bool { return !f.Shared || !there(f) })
	if len(own) > 0 {
		p.box.Add(look.NewParagraph(say("profile.erase.files", len(own)), look.Body, look.Ink))
		p.box.Add(fileList(v, own))
	}
	if n := removable(own); n > 0 {
		p.remove = field.NewCheck(v.desk.Host, "profile.erase.files", say("profile.erase.files.remove", n))
		p.box.Add(p.remove)
	}
	if len(shared) > 0 {
		p.box.Add(look.NewParagraph(say("profile.erase.shared", len(shared)), look.Body, look.Ink))
		p.box.Add(fileList(v, shared))
	}
	return p
}

// asked reports whether the files are to be deleted.
func (p *filesPart) asked() bool { return p.remove != nil && p.remove.On() }

// there reports whether a file may still hold the athlete where it was saved.
func there(f store.Saved) bool { return f.State != store.FileGone && f.State != store.FileRemoved }

// removable counts the files that are still what was saved.
func removable(files []store.Saved) int {
	n := 0
	for _, f := range files {
		if f.State == store.FileThere {
			n++
		}
	}
	return n
}

// fileList names files, each with what became of it.
func fileList(v *View, files []store.Saved) fyne.CanvasObject {
	list := look.VBox(2)
	for _, f := range files[:min(len(files), mostFiles)] {
		list.Add(look.NewParagraph(v.sp.Say("profile.file", f.Path, v.sp.Say("profile.file."+string(f.State))), look.Note, look.Ink2))
	}
	if more := len(files) - mostFiles; more > 0 {
		list.Add(look.NewParagraph(v.sp.Say("profile.files.more", more), look.Note, look.Ink2))
	}
	return list
}

// tellFiles says what was deleted besides, and lists what may hold the athlete still;
// then goes on.
func (p *leavingPart) tellFiles(on fyne.Canvas, name string, files []store.Saved, then func()) {
	v, say := p.v, p.v.sp.Say
	deleted, left := 0, []store.Saved(nil)
	for _, f := range files {
		switch {
		case f.State == store.FileRemoved:
			deleted++
		case f.State == store.FileGone && f.Shared:
		default:
			left = append(left, f)
		}
	}
	if deleted > 0 {
		v.desk.Say(say("profile.erased.files", deleted, name), "", nil)
	}
	if len(left) == 0 || on == nil {
		then()
		return
	}
	v.desk.Host.Ask(on, field.Question{
		Name: "profile.files", Title: say("profile.files.title"), Sentence: say("profile.files", name), Content: fileList(v, left), Width: 620,
		Actions:  []field.Action{{Name: "close", Text: say("profile.files.close"), Kind: field.Primary}},
		OnClosed: then,
	})
}
