package app

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// The narrower the head, the less of the least needed it says; the name, the tabs
// and the alert always find room.
func TestHeadFitsItsWidth(t *testing.T) {
	app := test.NewTempApp(t)
	app.Settings().SetTheme(look.NewTheme(false, 100).Still())
	d, _ := apptest.Desk(t)
	f := newFrame(d, nil, nil, nil, nil)
	f.build(look.Gap(0, 0), look.Gap(0, 0))
	button := func(text string) []fyne.CanvasObject {
		return []fyne.CanvasObject{field.NewButton(d.Host, text, text, field.Outline, nil)}
	}
	f.known = alertWords{"past low blood sodium +1", "2 alerts"}
	f.showHead(desk.Head{
		Title: "Ravka Oldenmoor", Under: "27 · field hockey, midfield · 64.0 kg", Short: "27 · field hockey · 64.0 kg",
		Athlete: "a", Tab: desk.Overview, Spare: button("New test"), Actions: button("Profile"),
	}, true)
	for _, c := range []struct {
		width float32
		want  headFit
	}{
		{1600, headFit{"27 · field hockey, midfield · 64.0 kg", "past low blood sodium +1", true, false}},
		{1048, headFit{"27 · field hockey", "2 alerts", false, false}},
		{700, headFit{"27 · field hockey · 64.0 kg", "past low blood sodium +1", false, true}},
		{300, headFit{"", "2 alerts", false, true}},
	} {
		if got := f.fitHead(c.width); got != c.want {
			t.Errorf("%g px: %+v, want %+v", c.width, got, c.want)
		}
	}
}
