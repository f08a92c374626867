package app

import (
	"testing"

	"fyne.io/fyne/v2"
)

// ruled is an app whose texts are measured by a ruler.
type ruled struct {
	fyne.App
	ruler *ruler
}

func (a ruled) Driver() fyne.Driver { return a.ruler }

// ruler measures a text as the sum of its letters, each measured once as the painters draw
// it: all that is missing is how near two letters stand. Where nothing is drawn, that is
// near enough to break lines and to shorten texts, and no line of text is shaped again.
type ruler struct {
	fyne.Driver
	cases map[typeface]*letters
	at    typeface // in the hand, and its letters
	hand  *letters
}

// typeface is what the letters of a text have in common.
type typeface struct {
	size float32
	text fyne.TextStyle
	font string
}

// letters of one typeface, by their code.
type letters struct {
	latin [0x250]extent
	other map[rune]extent
}

type extent struct {
	known bool
	size  fyne.Size
	base  float32
}

// RenderedTextSize is the size of a text and its baseline.
func (d *ruler) RenderedTextSize(text string, size float32, style fyne.TextStyle, source fyne.Resource) (fyne.Size, float32) {
	at := typeface{size: size, text: style}
	if source != nil {
		at.font = source.Name()
	}
	d.take(at)
	var all extent
	for _, r := range text {
		one := d.hand.of(r)
		if !one.known {
			one.known = true
			one.size, one.base = d.Driver.RenderedTextSize(string(r), size, style, source)
			d.hand.keep(r, one)
		}
		all.size.Width += one.size.Width
		all.size.Height, all.base = max(all.size.Height, one.size.Height), max(all.base, one.base)
	}
	if text == "" {
		return d.Driver.RenderedTextSize(text, size, style, source)
	}
	return all.size, all.base
}

// take takes the letters of a typeface in the hand.
func (d *ruler) take(at typeface) {
	if d.hand != nil && d.at == at {
		return
	}
	d.at, d.hand = at, d.cases[at]
	if d.hand == nil {
		d.hand = &letters{other: map[rune]extent{}}
		d.cases[at] = d.hand
	}
}

func (l *letters) of(r rune) extent {
	if int(r) < len(l.latin) {
		return l.latin[r]
	}
	return l.other[r]
}

func (l *letters) keep(r rune, e extent) {
	if int(r) < len(l.latin) {
		l.latin[r] = e
	} else {
		l.other[r] = e
	}
}

// byRuler measures the texts of the app in use by a ruler, with the letters measured so far.
func byRuler(t *testing.T, cases map[typeface]*letters) {
	t.Helper()
	app := fyne.CurrentApp()
	fyne.SetCurrentApp(ruled{App: app, ruler: &ruler{Driver: app.Driver(), cases: cases}})
	t.Cleanup(func() { fyne.SetCurrentApp(app) })
}
