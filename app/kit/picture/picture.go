// Package picture keeps what a screen shows as a PNG file: a page as it prints, a
// chart as it stands in the window. It draws with the toolkit's own software painter,
// which needs no screen.
package picture

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"
	"path/filepath"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/software"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
)

// Request is what is to be kept.
type Request struct {
	// Name is how tests and drivers find the dialog.
	Name string
	// File is the name offered, without its ending.
	File string
	// Pictures draws what is kept; it runs beside the window. Of several each has a
	// file of its own, numbered.
	Pictures func(ctx context.Context) ([]image.Image, error)
	// About are the athletes they show something of.
	About []record.ID
	// Done is told the path of the first file.
	Done func(path string)
}

// Save asks where the pictures are to be kept, and keeps them.
func Save(d *desk.Desk, on fyne.Canvas, r Request) {
	w := d.Words
	saveto.Ask(d, on, saveto.Request{
		Name: r.Name, Title: w.Say("picture.title"), Sentence: w.Say("picture.sentence"), Yes: w.Say("picture.yes"),
		File:  saveto.FileName(r.File, ".png"),
		Write: func(ctx context.Context, path string) error { return write(ctx, d, path, r) },
		Done: func(path string) {
			if r.Done != nil {
				r.Done(path)
				return
			}
			d.Say(w.Say("picture.saved", path), w.Say("saveto.open"), func() { saveto.Show(d, path) })
		},
	})
}

// write writes each picture into its file.
func write(ctx context.Context, d *desk.Desk, path string, r Request) error {
	list, err := r.Pictures(ctx)
	if err != nil {
		return err
	}
	_, err = writeAll(ctx, d, path, list, r.About)
	return err
}

// writeAll writes pictures of athletes, and returns where each lies; those written before one
// failed too.
func writeAll(ctx context.Context, d *desk.Desk, path string, list []image.Image, about []record.ID) (paths []string, err error) {
	for i, img := range list {
		var out bytes.Buffer
		if err := png.Encode(&out, img); err != nil {
			return paths, fmt.Errorf("write a picture: %w", err)
		}
		to := numbered(path, i)
		if err := d.Store.WriteFile(ctx, to, out.Bytes(), about...); err != nil {
			return paths, err
		}
		paths = append(paths, to)
	}
	return paths, nil
}

// numbered is the path of the i-th picture: the path itself, then "name 2.png". Only for
// the first was asked whether a file may be replaced: the others take names that are free.
func numbered(path string, i int) string {
	if i == 0 {
		return path
	}
	folder, name := filepath.Split(path)
	ending := filepath.Ext(name)
	return saveto.Free(folder, strings.TrimSuffix(name, ending)+" "+strconv.Itoa(i+1)+ending)
}

// Dots is how fine a picture of a page is, pixels a millimetre: about 200 an inch.
const Dots = 8

// OfPages draws the sides of a document that is to be printed.
func OfPages(doc paper.Document) ([]image.Image, error) {
	var list []image.Image
	for i := range doc.Pages {
		img, err := doc.Picture(i, Dots)
		if err != nil {
			return nil, fmt.Errorf("draw a page: %w", err)
		}
		list = append(list, img)
	}
	return list, nil
}

// WritePages writes each side of a document about athletes as a picture: the first to a path,
// the others numbered beside it. It returns the paths.
func WritePages(ctx context.Context, d *desk.Desk, path string, doc paper.Document, about []record.ID) ([]string, error) {
	list, err := OfPages(doc)
	if err != nil {
		return nil, err
	}
	return writeAll(ctx, d, path, list, about)
}

// scale is how many pixels of a chart's picture stand for a px of the window.
const scale = 2

// Of draws a chart as it stands in the window, on the ground of a sheet, at twice its
// size. It is to be called on the window's own goroutine; the chart is drawn from a
// copy of the canvas and stays where it is.
func Of(o fyne.CanvasObject) image.Image {
	size := o.Size()
	at := o.Position()
	defer func() {
		o.Move(at)
		o.Resize(size)
	}()
	c := software.NewTransparentCanvas()
	c.SetPadded(false)
	c.SetScale(scale)
	ground := canvas.NewRectangle(look.PaletteNow().Sheet)
	c.SetContent(container.NewStack(ground, o))
	c.Resize(size)
	return c.Capture()
}

// Whose tells whose charts are saved.
type Whose func() []record.ID

// One is one athlete.
func One(id record.ID) Whose { return func() []record.ID { return []record.ID{id} } }

// Link is the words that save the picture of a chart; file names it, without its
// ending.
func Link(d *desk.Desk, name, file string, whose Whose, chart func() fyne.CanvasObject) *field.Link {
	return field.NewLink(d.Host, name, d.Words.Say("picture.title"), func() { saveCharts(d, name, file, whose(), []fyne.CanvasObject{chart()}) })
}

// Button is the same as a button for the head of a screen.
func Button(d *desk.Desk, name, file string, whose Whose, chart func() fyne.CanvasObject) *field.Button {
	return ButtonOf(d, name, file, whose, func() []fyne.CanvasObject { return []fyne.CanvasObject{chart()} })
}

// ButtonOf saves several charts, those that are shown, each as a picture of its own.
func ButtonOf(d *desk.Desk, name, file string, whose Whose, charts func() []fyne.CanvasObject) *field.Button {
	return field.NewButton(d.Host, name, d.Words.Say("picture.title"), field.Outline, func() { saveCharts(d, name, file, whose(), charts()) })
}

// saveCharts asks where the pictures of those of the charts that are shown are to be kept.
func saveCharts(d *desk.Desk, name, file string, about []record.ID, charts []fyne.CanvasObject) {
	var on fyne.Canvas
	var list []image.Image
	for _, o := range charts {
		if c := fyne.CurrentApp().Driver().CanvasForObject(o); c != nil && o.Visible() && o.Size().Width > 0 {
			on = c
			list = append(list, Of(o))
		}
	}
	if len(list) == 0 {
		return
	}
	Save(d, on, Request{Name: name + ".ask", File: file, About: about, Pictures: func(context.Context) ([]image.Image, error) { return list, nil }})
}
