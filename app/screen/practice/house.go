package practice

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// The words of the settings, as they are kept.
const (
	metric  = "metric"
	us      = "us"
	light   = "light" // kept as nothing
	dark    = "dark"
	bySetup = "system"
)

// house is who makes the entries and how the window looks.
type house struct {
	v       *View
	caution *look.Caution
	body    fyne.CanvasObject
}

// newHouse builds the tab.
func newHouse(v *View) *house {
	h := &house{v: v, caution: look.NewCaution("", "", nil)}
	say := v.desk.Words.Say
	names := v.panel(say("practice.house"), say("practice.house.note"), h.names(), h.caution)
	looks := v.panel(say("practice.looks"), say("practice.looks.note"), h.looks())
	h.body = scrolled(look.NewPair(0.55, twoColumns, look.VBox(0, names), look.VBox(0, looks)))
	return h
}

func (h *house) box() fyne.CanvasObject { return h.body }

// follow says what is missing: a page without a number to call, entries without
// a name.
func (h *house) follow() {
	say, p := h.v.desk.Words.Say, h.v.now()
	h.caution.SetText("", "")
	switch {
	case p.Practitioner == "":
		h.caution.SetText(say("practice.noname"), say("practice.noname.sentence"))
	case p.Emergency == "":
		h.caution.SetText(say("practice.noemergency"), say("practice.noemergency.sentence"))
	}
	h.body.Refresh()
}

// names are the lines of the house.
func (h *house) names() fyne.CanvasObject {
	b := h.v.b
	line := func(name string, most int, at bind.Text[record.Practice]) look.Entry {
		return look.NewEntry(b.Say("practice."+name), b.Line("", "practice."+name, most, at)).Wide()
	}
	return look.NewForm(
		line("name", 120, func(p *record.Practice) *string { return &p.Name }),
		line("practitioner", 120, func(p *record.Practice) *string { return &p.Practitioner }),
		line("registration", 120, func(p *record.Practice) *string { return &p.Registration }),
		line("telephone", 60, func(p *record.Practice) *string { return &p.Telephone }),
		line("emergency", 24, func(p *record.Practice) *string { return &p.Emergency }))
}

// looks are units, light, size of the text, and the languages of window and pages.
func (h *house) looks() fyne.CanvasObject {
	v, b := h.v, h.v.b
	toggle := func(name string, keys []string, get func(record.Settings) string, set func(*record.Settings, string)) *field.Toggle {
		t := b.Toggle("", "practice."+name, b.Options("practice."+name+".", keys...), bind.Word[record.Practice]{
			Get: func(p record.Practice) string { return get(p.Settings) },
			Set: func(p *record.Practice, key string) { set(&p.Settings, key) },
		})
		t.OnChosen = v.redrawn(t.OnChosen)
		return t
	}
	units := toggle("units", []string{metric, us}, unitsOf, func(s *record.Settings, key string) { s.Units = key })
	theme := toggle("theme", []string{light, dark, bySetup}, themeOf, setTheme)
	size := toggle("text", []string{"100", "125", "150"}, textOf, func(s *record.Settings, key string) { s.TextSize, _ = strconv.Atoi(key) })
	window := b.Choice("", "practice.window", v.desk.LanguageOptions(), bind.Word[record.Practice]{
		Get: func(record.Practice) string { return v.desk.Words.Language().String() },
		Set: func(p *record.Practice, key string) { p.Settings.Language = key },
	})
	window.OnChosen = v.redrawn(window.OnChosen)
	language := b.Choice("", "practice.language", v.desk.LanguageOptions(), bind.Word[record.Practice]{
		Get: func(record.Practice) string { return v.desk.PageLanguage().String() },
		Set: func(p *record.Practice, key string) { p.Settings.PageLanguage = key },
	})
	set := func(name string, f fyne.CanvasObject) fyne.CanvasObject {
		return look.VBox(4, look.NewLabel(b.Say("practice."+name), look.Body, look.Ink2), f)
	}
	spoken := look.VBox(6, set("window", window), look.NewParagraph(b.Say("practice.window.note"), look.Note, look.Ink2))
	pages := look.VBox(6, set("language", language), look.NewParagraph(b.Say("practice.language.note"), look.Note, look.Ink2))
	for _, o := range []fyne.CanvasObject{spoken, pages} {
		look.ShowIf(o, len(v.desk.Languages) > 1) // nothing to choose from one
	}
	return look.VBox(14,
		look.VBox(6, set("units", units), look.NewParagraph(b.Say("practice.units.note"), look.Note, look.Ink2)),
		set("theme", theme), set("text", size), spoken, pages)
}

func unitsOf(s record.Settings) string {
	if s.Units == us {
		return us
	}
	return metric
}

func themeOf(s record.Settings) string {
	if s.Theme == "" {
		return light
	}
	return s.Theme
}

func setTheme(s *record.Settings, key string) {
	s.Theme = key
	if key == light {
		s.Theme = ""
	}
}

func textOf(s record.Settings) string {
	if s.TextSize == 0 {
		return "100"
	}
	return strconv.Itoa(s.TextSize)
}
