// Package handoutview shows the pages of a plan as they will print: the
// athlete's page, the card for the kit bag, four cards on a sheet, the bands for
// bottles, and the blank test sheet. It saves them as PDF, keeps what was handed out of an agreed
// plan byte for byte, and lists it, to be saved again.
package handoutview

import (
	"bytes"
	"regexp"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// Page is a page that can be printed, as prints are kept under.
type Page string

// The pages.
const (
	AthletePage Page = "athlete-page"
	KitBagCard  Page = "kit-bag-card"
	KitBagCards Page = "kit-bag-cards"
	BottleBands Page = "bottle-bands"
	BlankSheet  Page = "blank-sheet"
)

// pages lists those there are with a plan, and without one.
func pages(planned bool) []Page {
	if !planned {
		return []Page{BlankSheet}
	}
	return []Page{AthletePage, KitBagCard, KitBagCards, BottleBands, BlankSheet}
}

// The sizes of paper.
const (
	a4     = "a4"
	letter = "letter"
)

// choice is what is to be printed, and how.
type choice struct {
	page   Page
	option record.ID
	size   string
	// words are the texts of the page, in its language.
	words *words.Words
	// compare puts the options side by side on the athlete's page.
	compare bool
	// short is the blank sheet on one side.
	short bool
}

// subject is whose pages they are. It is never changed once made, so that a
// page can be laid out beside the window.
type subject struct {
	athlete  record.Athlete
	practice record.Practice
	care     care.Care
	// planned is false where there is no plan, or nothing for it to be based on.
	planned  bool
	planCase consult.Case
	sport    func(w *words.Words) string
}

// laid is a page as it was laid out: with the cautions that were added to it.
type laid struct {
	document paper.Document
	cautions []string
}

// layOut lays a page out in its language. It may take a while.
func layOut(s subject, c choice) (laid, error) {
	w := c.words
	press, err := handout.NewPress(w, paperOf(c.size))
	if err != nil {
		return laid{}, err
	}
	if c.page == BlankSheet || !s.planned {
		sheet := handout.BlankSheet{Terms: handout.TermsOf(s.practice, s.care, w), Athlete: s.athlete.Name, Sport: s.sport(w), Short: c.short}
		return laid{press.BlankSheet(sheet), press.SheetCautions(sheet)}, nil
	}
	option := s.optionOf(c.option)
	page := handout.AthletePageOf(s.planCase, option, s.practice, w)
	page.Compare = c.compare
	out := laid{cautions: press.PageCautions(page)}
	switch card := handout.KitBagCardOf(s.planCase, option, s.practice, w); c.page {
	case KitBagCard:
		out.document, out.cautions = press.KitBagCard(card), card.Terms.Cautions
	case KitBagCards:
		out.document, out.cautions = press.KitBagCards(card), card.Terms.Cautions
	case BottleBands:
		bands := handout.BottleBandsOf(s.planCase, option, s.practice, w)
		out.document, out.cautions = press.BottleBands(bands), bands.Terms.Cautions
	default:
		out.document = press.AthletePage(page)
	}
	return out, nil
}

func paperOf(size string) paper.Size {
	if size == letter {
		return paper.Letter()
	}
	return paper.A4()
}

// optionOf is the option with an id, else the one in force.
func (s subject) optionOf(id record.ID) record.Option {
	if o, ok := consult.OptionByID(s.planCase.Plan, id); ok {
		return o
	}
	o, _ := consult.InForce(s.planCase.Plan)
	return o
}

// handsOut reports whether what is chosen is a page of what was agreed: that is
// kept with the records when it is saved.
func (s subject) handsOut(c choice) bool {
	if c.page == BlankSheet || !s.planned || s.planCase.Plan.State != record.PlanAgreed {
		return false
	}
	id := s.optionOf(c.option).ID
	if id == s.planCase.Plan.Agreement.OptionID {
		return true
	}
	for _, step := range s.planCase.Plan.Steps {
		if step.OptionID == id {
			return true
		}
	}
	return false
}

// sameButTime reports whether two PDFs are the same but for when they were made.
func sameButTime(a, b []byte) bool {
	made := regexp.MustCompile(`\(D:\d{14}[^)]*\)`)
	plain := func(pdf []byte) []byte { return made.ReplaceAll(pdf, []byte("(D:)")) }
	return bytes.Equal(plain(a), plain(b))
}

// printOf is a page as it is kept.
func (s subject) printOf(c choice, pdf []byte) record.Print {
	return record.Print{
		AthleteID: s.athlete.ID, Kind: record.KindPlan, Record: s.planCase.Plan.ID, Page: string(c.page), Language: c.words.Language().String(), Bytes: pdf,
	}
}

// pdf writes a page that was laid out.
func (l laid) pdf(made time.Time) ([]byte, error) { return l.document.PDF(made) }
