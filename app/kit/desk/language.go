package desk

import (
	"slices"

	"golang.org/x/text/language"

	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// PageLanguage is the language of pages for colleagues and of blank sheets: the
// practice's, else the window's.
func (d *Desk) PageLanguage() language.Tag {
	return d.offeredOr(d.Practice().Settings.PageLanguage, d.Words.Language())
}

// ReadBy is the language of the pages an athlete is handed: the athlete's own, else
// the practice's.
func (d *Desk) ReadBy(a record.Athlete) language.Tag {
	return d.offeredOr(a.PageLanguage, d.PageLanguage())
}

// offeredOr is a language as it is kept, where it can be chosen.
func (d *Desk) offeredOr(kept string, otherwise language.Tag) language.Tag {
	if tag, err := language.Parse(kept); err == nil && slices.Contains(d.Languages, tag) {
		return tag
	}
	return otherwise
}

// LanguageOptions are the languages that can be chosen, each by its own name.
func (d *Desk) LanguageOptions() []field.Option {
	var list []field.Option
	for _, tag := range d.Languages {
		list = append(list, field.Option{Key: tag.String(), Text: d.Words.Say("language." + tag.String())})
	}
	return list
}

// In is the desk with its texts, foods and activities in another language: for pages
// that are in another than the window's.
func (d *Desk) In(tag language.Tag) (*Desk, error) {
	if tag == d.Words.Language() {
		return d, nil
	}
	w, err := words.New(tag)
	if err != nil {
		return nil, err
	}
	other := *d
	other.Words, other.pantry, other.past = w, nil, past{}
	other.activities, other.generic = d.activities.Named(w.Activity), d.generic.Named(w.Food, w.Portion)
	return &other, nil
}
