// Package saveto asks where a file is to be kept, and keeps it there: a page as
// PDF, a backup. The place is a plain path that may be typed; a file that is
// there already is replaced only when that was said; a folder that cannot be
// written is told in words beside the path.
package saveto

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"unicode"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/lock"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// Request is what is to be kept.
type Request struct {
	// Name is how tests and drivers find the dialog: Name.path, Name.yes.
	Name            string
	Title, Sentence string
	// Yes is the word on the button that keeps it.
	Yes string
	// File is the name offered, with its ending, in the user's documents; empty where a
	// folder is asked for, into which Write puts files of its own.
	File string
	// Letters are those of the page that cannot be printed: it is said before anything
	// is kept.
	Letters []string
	// Extra is what else is asked in the dialog; may be nil.
	Extra fyne.CanvasObject
	// Below is what the dialog shows under what it asks; may be nil. Width is the dialog's,
	// in px at 100 % text; 600 where it is zero.
	Below fyne.CanvasObject
	Width float32
	// Help names the page of help; empty for that of the screen below.
	Help string
	// Write keeps it; it runs beside the window, and is stopped when the dialog is closed.
	Write func(ctx context.Context, path string) error
	// Busy is said while it is written; may be empty.
	Busy string
	// Done is told where it was kept.
	Done func(path string)
	// Stopped is told that the dialog was closed while it was written; may be nil.
	Stopped func(path string)
	// Others are further forms in which it can be kept.
	Others []Other
	// Actions are further buttons, before those that keep it.
	Actions []field.Action
	// OnClosed is told when the dialog is gone; may be nil.
	OnClosed func()
}

// Other is another form of what is kept, with a button of its own.
type Other struct {
	Name, Text string
	// Ending takes the place of that of the file's name. No file that is there is replaced.
	Ending string
	// Write and Done are as those of a [Request].
	Write func(ctx context.Context, path string) error
	Done  func(path string)
}

// asking is the dialog.
type asking struct {
	desk    *desk.Desk
	request Request
	path    *field.Line
	folder  *field.Choice
	trouble *look.Caution
	dialog  *field.Dialog
	// agreed is the path whose file may be replaced.
	agreed string
	busy   bool
	stop   func()
}

// dialogWidth is the width of the dialog in px at 100 % text.
const dialogWidth float32 = 600

// Ask asks where to keep something. It returns the dialog.
func Ask(d *desk.Desk, on fyne.Canvas, r Request) *field.Dialog { return open(d, on, r).dialog }

// open opens the dialog.
func open(d *desk.Desk, on fyne.Canvas, r Request) *asking {
	a := &asking{desk: d, request: r, trouble: look.NewCaution("", "", nil), path: field.NewLine(d.Host, r.Name+".path", 1000), stop: func() {}}
	a.path.SetText(a.in(Folder(), r.File))
	a.path.OnChanged = func(string) { a.calm() }
	a.folder = field.NewChoice(d.Host, r.Name+".folder", nil)
	a.folder.OnChosen = a.goTo
	a.look(Folder())
	width := r.Width
	if width == 0 {
		width = dialogWidth
	}
	a.dialog = d.Host.Ask(on, field.Question{
		Name: r.Name, Title: r.Title, Sentence: r.Sentence, Content: a.content(), Width: width, Actions: a.actions(), Help: r.Help,
		OnClosed: func() {
			a.stop()
			if r.OnClosed != nil {
				r.OnClosed()
			}
		},
	})
	return a
}

// content is what is asked. The path comes first: it has the keyboard, and Enter saves.
func (a *asking) content() fyne.CanvasObject {
	content := look.VBox(10)
	if len(a.request.Letters) > 0 {
		content.Add(LettersCaution(a.desk.Words, a.request.Letters))
	}
	for _, o := range []fyne.CanvasObject{a.path, a.trouble, look.NewLabel(a.desk.Words.Say("saveto.in"), look.Note, look.Ink2), a.folder, a.request.Extra, a.request.Below} {
		if o != nil {
			content.Add(o)
		}
	}
	return content
}

// actions are the buttons: what is done instead of keeping it, then the forms it is kept in.
func (a *asking) actions() []field.Action {
	list := append([]field.Action{{Name: "no", Text: a.desk.Words.Say("field.ask.cancel")}}, a.request.Actions...)
	for _, o := range a.request.Others {
		list = append(list, field.Action{Name: o.Name, Text: o.Text, Do: func() bool {
			path := whole(a.path.Text())
			if a.request.File != "" {
				path = Free(filepath.Dir(path), strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))+o.Ending)
			}
			return a.write(path, o.Write, o.Done)
		}})
	}
	return append(list, field.Action{Name: "yes", Text: a.request.Yes, Kind: field.Primary, Do: a.keep})
}

// in is the path of a name in a folder, one that no file has yet; the folder itself where
// a folder is asked for.
func (a *asking) in(folder, name string) string {
	if a.request.File == "" {
		return folder
	}
	return Free(folder, name)
}

// LettersCaution names letters that cannot be printed, and what the page shows for them.
func LettersCaution(w *words.Words, letters []string) *look.Caution {
	return look.NewCaution(w.Say("saveto.letters.title", w.Commas(letters)), w.Say("saveto.letters", paper.Lacking), nil)
}

// goTo takes the file's name to another folder.
func (a *asking) goTo(folder string) {
	name := filepath.Base(whole(a.path.Text()))
	if name == "." || name == string(filepath.Separator) {
		name = a.request.File
	}
	a.path.SetText(a.in(folder, name))
	a.calm()
	a.look(folder)
}

// look lists where one can go from a folder.
func (a *asking) look(folder string) {
	a.folder.SetOptions(choices(a.desk.Words, folder))
	a.folder.Choose(folder)
}

// calm takes a question back once another path is typed.
func (a *asking) calm() {
	a.agreed = ""
	a.trouble.SetText("", "")
	a.dialog.Action("yes").SetText(a.request.Yes)
}

// keep keeps the file; the dialog closes when that went well.
func (a *asking) keep() (stay bool) {
	w := a.desk.Words
	path := whole(a.path.Text())
	if path == "" || a.busy {
		return true
	}
	if info, err := os.Stat(path); err == nil && a.agreed != path && a.request.File != "" {
		if info.IsDir() {
			a.trouble.SetText(w.Say("saveto.folder"), "")
			return true
		}
		a.agreed = path
		a.trouble.SetText(w.Say("saveto.there"), w.Say("saveto.there.sentence"))
		a.dialog.Action("yes").SetText(w.Say("saveto.replace"))
		return true
	}
	return a.write(path, a.request.Write, a.request.Done)
}

// write writes beside the window; the dialog closes when that went well, and closing it
// stops the writing.
func (a *asking) write(path string, write func(ctx context.Context, path string) error, done func(path string)) (stay bool) {
	if path == "" || a.busy {
		return true
	}
	w := a.desk.Words
	a.busy = true
	a.trouble.SetText(a.request.Busy, "")
	a.stop = a.desk.Beside.Run(func(ctx context.Context) error { return write(ctx, path) }, func(err error) {
		a.busy, a.stop = false, func() {}
		switch {
		case errors.Is(err, context.Canceled):
			if a.request.Stopped != nil {
				a.request.Stopped(path)
			}
			return
		case err != nil:
			a.trouble.SetText(w.Say("saveto.failed"), Reason(w, err))
			return
		}
		folder := path
		if a.request.File != "" {
			folder = filepath.Dir(path)
		}
		Remember(folder)
		a.dialog.Close()
		if done != nil {
			done(path)
		}
	})
	return true
}

// whole is a typed path as the machine needs it: a leading ~ is the user's
// home.
func whole(text string) string {
	text = strings.TrimSpace(text)
	if rest, ok := strings.CutPrefix(text, "~"); ok && (rest == "" || rest[0] == '/' || rest[0] == filepath.Separator) {
		if home, err := os.UserHomeDir(); err == nil {
			text = home + rest
		}
	}
	return text
}

// Documents is the user's folder for documents: their home where there is none.
func Documents() string {
	home, err := os.UserHomeDir()
	if err != nil {
		return ""
	}
	if info, err := os.Stat(filepath.Join(home, "Documents")); err == nil && info.IsDir() {
		return filepath.Join(home, "Documents")
	}
	return home
}

// most is how long a file's name gets, in runes, before its ending.
const most = 80

// FileName makes a text fit for a file's name on every system: what a name may
// not hold becomes a stroke.
func FileName(text, ending string) string {
	clean := strings.Map(func(r rune) rune {
		switch {
		case strings.ContainsRune(`/\:*?"<>|`, r):
			return '-'
		case unicode.IsControl(r) || !unicode.IsPrint(r):
			return -1
		}
		return r
	}, text)
	if runes := []rune(clean); len(runes) > most {
		clean = string(runes[:most])
	}
	if clean = strings.Trim(clean, " ."); clean == "" {
		clean = "Ebbwell"
	}
	return clean + ending
}

// Free is a path in a folder that no file has yet: a number is put behind the
// name of one that has.
func Free(folder, name string) string {
	ending := filepath.Ext(name)
	stem := strings.TrimSuffix(name, ending)
	path := filepath.Join(folder, name)
	for i := 2; i < 1000; i++ {
		if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
			return path
		}
		path = filepath.Join(folder, stem+" "+strconv.Itoa(i)+ending)
	}
	return path
}

// Reason says in words why a file was not kept.
func Reason(w *words.Words, err error) string {
	code := store.CodeOf(err)
	switch {
	case errors.Is(err, fs.ErrPermission) || code == store.CodeReadOnly:
		return w.Say("saveto.permission")
	case errors.Is(err, fs.ErrNotExist):
		return w.Say("saveto.nofolder")
	case code == store.CodeNoSpace || errors.Is(err, syscall.ENOSPC):
		return w.Say("saveto.nospace")
	case code == store.CodeInvalid:
		return w.Say("saveto.inside")
	case errors.Is(err, lock.ErrShort):
		return w.Say("saveto.short", lock.ShortestPassphrase)
	}
	return w.Say("saveto.other", err.Error())
}
