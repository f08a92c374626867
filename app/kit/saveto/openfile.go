package saveto

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/words"
)

// Source is a file that is to be read.
type Source struct {
	// Name is how tests and drivers find the dialog: Name.path, Name.yes.
	Name            string
	Title, Sentence string
	// Endings of the files that are listed, small, with the point: ".gpx".
	Endings []string
	// Read reads it; it runs beside the window.
	Read func(ctx context.Context, path string) error
	// Wrong says in words why a file was not read, what is wrong first and what to do
	// second.
	Wrong func(err error) (title, sentence string)
	// Done is told that it was read, once the dialog is gone.
	Done func(path string)
}

// opening is the dialog.
type opening struct {
	desk    *desk.Desk
	source  Source
	path    *field.Line
	files   *field.Choice
	folder  *field.Choice
	trouble *look.Caution
	dialog  *field.Dialog
	busy    bool
}

// AskFile asks which file to read. The path may be typed; the files of the folder
// with the right endings are listed, the newest first.
func AskFile(d *desk.Desk, on fyne.Canvas, s Source) {
	o := &opening{desk: d, source: s, trouble: look.NewCaution("", "", nil), path: field.NewLine(d.Host, s.Name+".path", 1000)}
	o.files = field.NewChoice(d.Host, s.Name+".file", nil)
	o.files.SetPlaceholder(d.Words.Say("openfile.choose"))
	o.files.OnChosen = func(path string) { o.path.SetText(path); o.calm() }
	o.folder = field.NewChoice(d.Host, s.Name+".folder", nil)
	o.folder.OnChosen = func(folder string) { o.look(folder); o.calm() }
	o.path.OnChanged = func(string) { o.calm() }
	o.path.SetSpoken(d.Words.Say("openfile.path"))
	label := func(key string) fyne.CanvasObject { return look.NewLabel(d.Words.Say(key), look.Note, look.Ink2) }
	o.look(Folder())
	o.dialog = d.Host.Ask(on, field.Question{
		Name: s.Name, Title: s.Title, Sentence: s.Sentence, Width: 600,
		Content: look.VBox(10, label("openfile.path"), o.path, o.trouble, label("openfile.files"), o.files, label("saveto.in"), o.folder),
		Actions: []field.Action{
			{Name: "no", Text: d.Words.Say("field.ask.cancel")},
			{Name: "yes", Text: d.Words.Say("openfile.read"), Kind: field.Primary, Do: o.read},
		},
	})
}

// look lists what can be read in a folder, and where one can go from there. The path
// is that of the newest file.
func (o *opening) look(folder string) {
	list := filesIn(o.desk.Words, folder, o.source.Endings)
	o.files.SetOptions(list)
	o.folder.SetOptions(choices(o.desk.Words, folder))
	o.folder.Choose(folder)
	if len(list) > 0 {
		o.files.Choose(list[0].Key)
		o.path.SetText(list[0].Key)
		return
	}
	o.path.SetText(folder + string(filepath.Separator))
}

// mostFiles is how many files of a folder are listed.
const mostFiles = 60

// filesIn are the files of a folder with some endings, the newest first, named with the
// day they were written.
func filesIn(w *words.Words, folder string, endings []string) []field.Option {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil // the path is told to be wrong once it is read
	}
	var infos []fs.FileInfo
	for _, e := range entries {
		if !e.Type().IsRegular() || !slices.Contains(endings, strings.ToLower(filepath.Ext(e.Name()))) {
			continue
		}
		if info, err := e.Info(); err == nil {
			infos = append(infos, info)
		}
	}
	slices.SortStableFunc(infos, func(a, b fs.FileInfo) int { return b.ModTime().Compare(a.ModTime()) })
	var list []field.Option
	for _, info := range infos[:min(len(infos), mostFiles)] {
		list = append(list, field.Option{Key: filepath.Join(folder, info.Name()), Text: info.Name(), Note: w.Day(info.ModTime())})
	}
	return list
}

// calm takes away what was said of another path.
func (o *opening) calm() { o.trouble.SetText("", "") }

// read reads the file; the dialog closes when that went well.
func (o *opening) read() (stay bool) {
	path := whole(o.path.Text())
	if path == "" || o.busy {
		return true
	}
	o.busy = true
	o.desk.Beside.Run(func(ctx context.Context) error { return o.source.Read(ctx, path) }, func(err error) {
		o.busy = false
		if err != nil {
			o.trouble.SetText(o.wrong(err))
			return
		}
		Remember(filepath.Dir(path))
		o.dialog.Close()
		o.source.Done(path)
	})
	return true
}

// wrong says why a file was not read.
func (o *opening) wrong(err error) (title, sentence string) {
	say := o.desk.Words.Say
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return say("openfile.none"), say("openfile.none.do")
	case errors.Is(err, fs.ErrPermission):
		return say("openfile.permission"), say("openfile.permission.do")
	case errors.Is(err, ErrNotAFile):
		return say("openfile.notafile"), say("openfile.none.do")
	}
	return o.source.Wrong(err)
}

// ErrNotAFile means: a folder, a device, a pipe; reading it might never end.
var ErrNotAFile = errors.New("not a file")

// OpenFile opens a file to read, by its path as a person types it. It returns
// [ErrNotAFile] for anything else that has a path.
func OpenFile(path string) (*os.File, error) {
	path = whole(path)
	info, err := os.Stat(path)
	if err != nil {
		return nil, fmt.Errorf("open a file: %w", err)
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("open %s: %w", filepath.Base(path), ErrNotAFile)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("open a file: %w", err)
	}
	return f, nil
}
