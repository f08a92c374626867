// Ebbwell is the window: sweat tests in, drinking and fuelling plans out.
package main

import (
	"flag"
	"fmt"
	"os"

	"fyne.io/fyne/v2"
	fyneapp "fyne.io/fyne/v2/app"
	"golang.org/x/text/language"

	"ebbwell/app"
	"ebbwell/assets"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "ebbwell:", err)
		os.Exit(1)
	}
}

func run() error {
	dir := flag.String("data", "", "data folder (default: the user's own data folder)")
	demo := flag.Bool("demo", false, "open the invented practice in a temporary folder")
	places := flag.String("places", "", "write the places of all controls to this file, for tests that drive the window")
	flag.Parse()
	if *dir == "" {
		own, err := store.DefaultDir()
		if err != nil {
			return fmt.Errorf("find the data folder: %w", err)
		}
		*dir = own
	}
	texts, err := words.New(language.English)
	if err != nil {
		return fmt.Errorf("open the texts: %w", err)
	}
	a := fyneapp.NewWithID("desk.ebbwell")
	a.SetIcon(fyne.NewStaticResource("icon.png", assets.Icon()))
	w := a.NewWindow(texts.Say("program.name"))
	w.SetPadded(false)
	w.SetMaster()
	w.Resize(fyne.NewSize(1440, 900))
	shell := app.NewShell(a, w, texts, app.Options{Dir: *dir, Demo: *demo})
	shell.Start()
	if *places != "" {
		stop := app.ReportPlaces(w, *places)
		defer stop()
	}
	w.ShowAndRun()
	return shell.Close()
}
