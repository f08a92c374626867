package practice

import (
	"math"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// standards are the bands of the urine marker, the method of the sweat rate and
// the limit of the deficit.
type standards struct {
	v       *View
	bands   *look.Table
	source  *look.Paragraph
	own     *look.Form
	caution *look.Caution
	bandBox *fyne.Container
	body    fyne.CanvasObject
}

// twoColumns is the width, in px at 100 % text, under which the parts of a tab stand one
// below the other.
const twoColumns float32 = 1010

// newStandards builds the tab.
func newStandards(v *View) *standards {
	say := v.desk.Words.Say
	s := &standards{v: v, source: look.NewParagraph("", look.Note, look.Ink2), caution: look.NewCaution("", "", nil)}
	s.bands = look.NewTable("practice.bands.table", []look.Column{
		{Title: say("practice.bands.marker"), Width: look.Share(5)}, {Title: say("practice.bands.from"), Width: look.Share(6)},
		{Title: say("practice.bands.band"), Width: look.Share(8)},
	})
	s.own = s.edges()
	s.bandBox = look.VBox(12, s.sets(), s.own, s.caution, s.bands, s.source)
	urine := v.panel(say("practice.bands"), say("practice.bands.note"), s.bandBox)
	deficit := v.panel(say("practice.deficit"), say("practice.deficit.note"), s.limit(),
		look.VBox(4, look.NewLabel(say("practice.deficit.for"), look.NoteStrong, look.Ink), look.NewParagraph(s.viewFor(), look.Body, look.Ink)),
		look.VBox(4, look.NewLabel(say("practice.deficit.against"), look.NoteStrong, look.Ink), look.NewParagraph(s.viewAgainst(), look.Body, look.Ink)),
		look.NewParagraph(say("practice.deficit.ends"), look.Note, look.Ink2))
	s.body = scrolled(look.NewPair(0.52, twoColumns, look.VBox(14, urine, s.proposals()), look.VBox(14, s.method(), s.breaks(), deficit)))
	return s
}

func (s *standards) box() fyne.CanvasObject { return s.body }

// sets is the choice of a band set.
func (s *standards) sets() fyne.CanvasObject {
	b := s.v.b
	return b.Toggle("", "practice.bands", b.Options("practice.bands.", evidence.SetACSM, evidence.SetNATA, evidence.SetOwn), bind.Word[record.Practice]{
		Get: func(p record.Practice) string {
			if p.Settings.UrineBands == "" {
				return evidence.SetACSM
			}
			return p.Settings.UrineBands
		},
		Set: func(p *record.Practice, key string) { p.Settings.UrineBands = key },
	})
}

// method is the choice between corrected sweat rates and the field method; it
// holds for all tests.
func (s *standards) method() fyne.CanvasObject {
	b := s.v.b
	toggle := b.Toggle("", "practice.method", b.Options("practice.method.", methodCorrected, methodField), bind.Word[record.Practice]{
		Get: func(p record.Practice) string {
			if p.Settings.FieldMethod {
				return methodField
			}
			return methodCorrected
		},
		Set: func(p *record.Practice, key string) { p.Settings.FieldMethod = key == methodField },
	})
	return s.v.panel(b.Say("practice.method"), b.Say("practice.method.note"), toggle,
		look.NewParagraph(b.Desk.Words.Say("practice.method.bias", b.Desk.Words.Number(evidence.UncorrectedBias, 2)), look.Note, look.Ink2))
}

// breaks is the choice how far a schedule fills them.
func (s *standards) breaks() fyne.CanvasObject {
	b := s.v.b
	toggle := b.Toggle("", "practice.breaks", b.Options("practice.breaks.", breaksFull, breaksComfortable), bind.Word[record.Practice]{
		Get: func(p record.Practice) string {
			if p.Settings.ComfortableOnly {
				return breaksComfortable
			}
			return breaksFull
		},
		Set: func(p *record.Practice, key string) { p.Settings.ComfortableOnly = key == breaksComfortable },
	})
	return s.v.panel(b.Say("practice.breaks"), b.Say("practice.breaks.note"), toggle)
}

// How far a schedule fills breaks.
const (
	breaksFull        = "full"
	breaksComfortable = "comfortable"
)

// The methods of the sweat rate.
const (
	methodCorrected = "corrected"
	methodField     = "field"
)

// edges are the practice's own.
func (s *standards) edges() *look.Form {
	b := s.v.b
	edge := func(name, code string, of func(p *record.Practice) *record.Number) look.Entry {
		n := b.Number("", "practice.edge."+name, evidence.USG, quantity.None, bind.At("settings.ownGravity"+code, of))
		n.SetDecimals(3)
		s.v.onlyUsable(n)
		return look.NewEntry(b.Say("practice.edge."+name), look.MaxWidth(150, n)).Wide()
	}
	return look.NewForm(
		edge("well", "Well", func(p *record.Practice) *record.Number { return &p.Settings.OwnGravityWell }),
		edge("minimal", "Minimal", func(p *record.Practice) *record.Number { return &p.Settings.OwnGravityMinimal }),
		edge("great", "Great", func(p *record.Practice) *record.Number { return &p.Settings.OwnGravityGreat }))
}

// limit is the default limit of the deficit.
func (s *standards) limit() fyne.CanvasObject {
	b := s.v.b
	n := b.Number("", "practice.deficit", evidence.AimDeficit, quantity.PerCent,
		bind.At("settings.deficitAim", func(p *record.Practice) *record.Number { return &p.Settings.DeficitAim }))
	n.SetPlaceholder(b.Desk.Words.Number(evidence.DeficitAim, 0))
	s.v.onlyUsable(n)
	return look.NewForm(look.NewEntry(b.Say("practice.deficit.limit"), look.MaxWidth(150, n)).Wide())
}

// viewFor is the evidence for a limit, viewAgainst that against one.
func (s *standards) viewFor() string {
	w := s.v.desk.Words
	return w.Say("practice.deficit.for.words", w.Number(evidence.DeficitAim, 0), w.Number(evidence.DeficitHarmHeatLow, 0), w.Number(evidence.DeficitHarmHeatHigh, 0))
}

func (s *standards) viewAgainst() string {
	w := s.v.desk.Words
	return w.Say("practice.deficit.against.words", w.Number(evidence.DeficitSelfPaced, 0))
}

// follow shows the bands of the chosen set.
func (s *standards) follow() {
	w, settings := s.v.desk.Words, s.v.now().Settings
	set := consult.BandsOf(settings)
	var rows [][]look.Cell
	marker, source := evidence.Marker(""), w.Say("practice.bands.source", set.Source.Title(w.Say))
	for _, r := range bandRows(set) {
		name := look.Cell{}
		if r.marker != marker {
			name.Text, marker = w.Say("practice.marker."+string(r.marker)), r.marker
			source += "\n" + w.Say("practice.bands.sure", name.Text, desk.Sureness(w, r.sure))
		}
		rows = append(rows, []look.Cell{name, {Text: s.between(r)}, {Text: w.Say("band." + r.code)}})
	}
	s.bands.SetRows(rows)
	s.source.SetText(source)
	own := settings.UrineBands == evidence.SetOwn
	look.ShowIf(s.own, own)
	s.caution.SetText("", "")
	if own && !edgesInOrder(settings) {
		s.caution.SetText(w.Say("practice.edges.order"), w.Say("practice.edges.order.sentence"))
	}
	s.bandBox.Refresh()
	s.body.Refresh()
}

// between writes where a band lies: "1.010 to 1.020".
func (s *standards) between(r bandRow) string {
	w := s.v.desk.Words
	decimals := map[evidence.Marker]int{evidence.GravityMarker: 3}[r.marker]
	number := func(x float64) string { return w.Number(x, decimals) + markerUnit(r.marker) }
	switch {
	case math.IsInf(r.low, -1) && r.open:
		return w.Say("practice.bands.below", number(r.high))
	case math.IsInf(r.low, -1):
		return w.Say("practice.bands.upto", number(r.high))
	case math.IsInf(r.high, 1):
		return w.Say("practice.bands.above", number(r.low))
	}
	return w.Say("practice.bands.between", w.Number(r.low, decimals), number(r.high))
}

// markerUnit is the unit of a marker behind its number.
func markerUnit(m evidence.Marker) string {
	switch m {
	case evidence.OsmolalityMarker:
		return "\u00a0" + string(quantity.MilliosmolePerKilogram)
	case evidence.MorningMassMarker:
		return "\u00a0" + string(quantity.PerCent)
	}
	return ""
}
