package app

import (
	"runtime"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// showKeys lists the keys of the window and of its fields.
func (p *Program) showKeys() {
	say := p.desk.Words.Say
	list := look.VBox(5)
	line := func(key, words string) {
		list.Add(look.Columns(12, []look.Track{look.Fixed(132), look.Share(1)},
			look.NewLabel(key, look.Strong, look.Ink), look.NewParagraph(words, look.Body, look.Ink)))
	}
	for _, k := range []string{"enter", "tab", "down", "escape"} {
		line(say("keys.key."+k), say("keys."+k))
	}
	for _, s := range p.keyList() {
		line(keyWords(s.key.KeyName, s.key.Modifier), say(s.words))
	}
	actions := []field.Action{{Name: "close", Text: say("keys.close"), Kind: field.Primary}}
	if p.desk.Tour != nil {
		actions = append([]field.Action{{Name: "tour", Text: say("tour.again"), Do: func() (stay bool) {
			p.desk.Tour()
			return false
		}}}, actions...)
	}
	p.desk.Host.Ask(p.shell.window.Canvas(), field.Question{
		Name: "keys", Title: say("keys.title"), Content: list, Width: 480,
		Actions: actions,
	})
}

// keyWords writes a key as it stands on the keyboard: "Ctrl+PgDn".
func keyWords(k fyne.KeyName, m fyne.KeyModifier) string {
	names := map[fyne.KeyName]string{fyne.KeyPageDown: "PgDn", fyne.KeyPageUp: "PgUp", fyne.KeyLeft: "\u2190"}
	var parts []string
	add := func(with fyne.KeyModifier, name string) {
		if m&with != 0 {
			parts = append(parts, name)
		}
	}
	add(fyne.KeyModifierControl, "Ctrl")
	add(fyne.KeyModifierSuper, "Cmd")
	if runtime.GOOS == "darwin" {
		add(fyne.KeyModifierAlt, "Option")
	} else {
		add(fyne.KeyModifierAlt, "Alt")
	}
	add(fyne.KeyModifierShift, "Shift")
	name, ok := names[k]
	if !ok {
		name = string(k)
	}
	return strings.Join(append(parts, name), "+")
}
