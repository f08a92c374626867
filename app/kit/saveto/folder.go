package saveto

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/internal/words"
)

// folderKey is where the folders used last are kept among the program's preferences, the
// newest first, a line each.
const folderKey = "saveto.folders"

// mostFolders is how many are remembered.
const mostFolders = 4

// Folders are the folders in which something was kept, the newest first, as far as
// they are still there.
func Folders() []string {
	var list []string
	for _, folder := range strings.Split(fyne.CurrentApp().Preferences().String(folderKey), "\n") {
		if info, err := os.Stat(folder); err == nil && info.IsDir() {
			list = append(list, folder)
		}
	}
	return list
}

// Folder is where the next file is offered to be kept: the folder used last, else the
// user's documents.
func Folder() string {
	if list := Folders(); len(list) > 0 {
		return list[0]
	}
	return Documents()
}

// Remember puts a folder first among those used.
func Remember(folder string) {
	list := slices.DeleteFunc(Folders(), func(f string) bool { return f == folder })
	list = append([]string{folder}, list...)
	fyne.CurrentApp().Preferences().SetString(folderKey, strings.Join(list[:min(mostFolders, len(list))], "\n"))
}

// choices are the folders to go to from one: those used last, the user's own, the one
// above, and those inside it.
func choices(w *words.Words, here string) []field.Option {
	var list []field.Option
	add := func(path, text string) {
		if path != "" && !slices.ContainsFunc(list, func(o field.Option) bool { return o.Key == path }) {
			list = append(list, field.Option{Key: path, Text: text})
		}
	}
	add(here, here)
	for _, folder := range Folders() {
		add(folder, w.Say("saveto.last", folder))
	}
	add(Documents(), Documents())
	if home, err := os.UserHomeDir(); err == nil {
		for _, name := range []string{"Desktop", "Downloads"} {
			if info, err := os.Stat(filepath.Join(home, name)); err == nil && info.IsDir() {
				add(filepath.Join(home, name), filepath.Join(home, name))
			}
		}
		add(home, home)
	}
	if above := filepath.Dir(here); above != here {
		add(above, w.Say("saveto.above", above))
	}
	for _, name := range inside(here) {
		add(filepath.Join(here, name), w.Say("saveto.into", name))
	}
	return list
}

// mostInside is how many folders of a folder are listed.
const mostInside = 60

// inside are the folders of a folder that are not hidden.
func inside(folder string) []string {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil // the path is told to be wrong once something is kept in it
	}
	var list []string
	for _, e := range entries {
		if e.IsDir() && !strings.HasPrefix(e.Name(), ".") && len(list) < mostInside {
			list = append(list, e.Name())
		}
	}
	return list
}
