// Ebbwell is the window: sweat tests in, drinking and fuelling plans out.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"runtime"
	"syscall"

	"fyne.io/fyne/v2"
	fyneapp "fyne.io/fyne/v2/app"

	"ebbwell/app"
	"ebbwell/app/kit/saveto"
	"ebbwell/app/kit/sound"
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

// options are the flags.
type options struct {
	dir, places string
	demo        bool
	version     bool
}

// read reads the flags; a data folder beside the invented practice is refused,
// because that one lives in a folder of its own.
func read(texts *words.Words) (options, error) {
	var o options
	flag.StringVar(&o.dir, "data", "", "data folder (default: the user's own data folder)")
	flag.BoolVar(&o.demo, "demo", false, "open the invented practice in a temporary folder")
	flag.StringVar(&o.places, "places", "", "write the places of all controls to this file, for tests that drive the window")
	flag.BoolVar(&o.version, "version", false, "say which version this is, and end")
	flag.Parse()
	if o.demo && o.dir != "" {
		return o, errors.New(texts.Say("program.demodata"))
	}
	if o.dir == "" {
		own, err := store.DefaultDir()
		if err != nil {
			return o, fmt.Errorf("find the data folder: %w", err)
		}
		o.dir = own
	}
	return o, nil
}

func run() error {
	texts, err := words.New(words.Nearest(words.Languages(), locales(os.Getenv, systemLocale)...))
	if err != nil {
		return fmt.Errorf("open the texts: %w", err)
	}
	o, err := read(texts)
	if err != nil {
		return err
	}
	if o.version {
		_, err := fmt.Println(texts.Say("program.name"), assets.Version)
		return err
	}
	a := fyneapp.NewWithID("desk.ebbwell")
	fyne.SetCurrentApp(saveto.OpensFiles(a, runtime.GOOS, os.Getenv("FLATPAK_ID") != ""))
	a.SetIcon(fyne.NewStaticResource("icon.png", assets.Icon()))
	w := a.NewWindow(texts.Say("program.name"))
	w.SetPadded(false)
	w.SetMaster()
	place(a, w)
	shell := app.NewShell(a, w, texts, app.Options{Dir: o.dir, Demo: o.demo, Tour: true, OpenGL: true, Player: sound.System(), Closing: func() { remember(a, w) }})
	shell.Start()
	if o.places != "" {
		stop := app.ReportPlaces(w, o.places)
		defer stop()
	}
	a.Lifecycle().SetOnStarted(func() { closeOnSignals(shell) })
	w.ShowAndRun()
	return shell.Close()
}

// closeOnSignals lets a signal close the window as a person would. The toolkit
// listens too, and would end without asking where something cannot be saved:
// it is no longer told.
func closeOnSignals(shell *app.Shell) {
	list := []os.Signal{os.Interrupt, syscall.SIGTERM}
	signals := make(chan os.Signal, 1)
	signal.Reset(list...)
	signal.Notify(signals, list...)
	go shell.CloseOn(signals)
}
