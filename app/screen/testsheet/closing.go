package testsheet

import (
	"context"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// closeSheet closes the sheet with what it was calculated from: for good, or
// until the laboratory's sodium comes. A late value says which plans it
// changes.
func (v *View) closeSheet(code string) {
	ctx := context.Background()
	if !v.b.FlushNow() {
		return
	}
	s := v.b.Doc.Now()
	kept, err := v.desk.Store.LoadTest(ctx, s.Record.ID)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	texts := s.Texts(refOf(kept))
	// one that waited keeps the products and bands it was first closed with
	found := consult.FindAsClosed(kept, v.athlete, texts, v.kept, v.desk.Calculate())
	kept.State = record.TestClosed
	if code == stepWaiting {
		kept.State = record.TestWaiting
	}
	found.Test.State = kept.State
	inputs, results, err := consult.FreezeTest(found, v.athlete, texts, v.desk.Calculate())
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	why := ""
	if code == stepLate {
		why = v.b.Say("testsheet.late.why")
	}
	closed, err := v.desk.Store.CloseTest(ctx, kept, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version, Line: consult.LineOf(found), Why: why}, store.Edit{Why: why})
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.take(ctx, closed)
	if err := v.desk.NoteCorrected(ctx, closed); err != nil {
		v.desk.Trouble(err)
	}
	v.showPart(PartFindings)
	if code == stepLate {
		v.tellPlans(ctx, closed.ID)
	}
}

// take shows the sheet as the store has kept it.
func (v *View) take(ctx context.Context, t record.Test) {
	s := v.b.Doc.Now()
	var err error
	if v.kept, err = v.desk.Store.FrozenOf(ctx, refOf(t)); err != nil {
		v.desk.Trouble(err)
	}
	v.b.Doc.Replace(bind.Sheet[record.Test]{Record: t, Raw: s.Raw, Reasons: s.Reasons})
	v.tests = slices.DeleteFunc(slices.Clone(v.tests), func(old record.Test) bool { return old.ID == t.ID })
	v.fresh = false
	v.tests = append([]record.Test{t}, v.tests...)
	slices.SortStableFunc(v.tests, func(a, b record.Test) int { return strings.Compare(string(b.Session.Date), string(a.Session.Date)) })
	v.ui.tools.choice.SetOptions(v.testOptions())
	v.ui.tools.choice.Choose(string(t.ID))
	v.follow()
}

// tellPlans says which plans a late value changes, with the way to each.
func (v *View) tellPlans(ctx context.Context, test record.ID) {
	plans, err := v.desk.Store.PlansBasedOn(ctx, test)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	say := v.b.Say
	if len(plans) == 0 {
		v.desk.Say(say("testsheet.late.noplans"), "", nil)
		return
	}
	list := look.VBox(6)
	var dialog *field.Dialog
	for i, p := range plans {
		link := field.NewLink(v.desk.Host, "testsheet.late.plan."+strconv.Itoa(i+1), v.planName(p), func() {
			dialog.Close()
			v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.athlete.ID, Record: p.ID})
		})
		link.SetStyle(look.Body)
		list.Add(look.HBox(0, link))
	}
	dialog = v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "testsheet.late", Title: say("testsheet.late.title"), Sentence: say("testsheet.late", len(plans)), Content: list,
		Actions: []field.Action{{Name: "done", Text: say("testsheet.late.done"), Kind: field.Primary}},
	})
}

// planName says a plan in short.
func (v *View) planName(p record.Plan) string {
	name := p.Name
	if name == "" {
		name = p.Target.SessionName
	}
	if name == "" {
		name = v.b.Say("testsheet.plan.unnamed")
	}
	return v.b.Say("testsheet.plan.named", shorten(name, 60), v.b.Say("testsheet.plan."+string(p.State)))
}

// askCorrection asks why a closed sheet is to be corrected, and opens it.
func (v *View) askCorrection() {
	say := v.b.Say
	v.askWhy("testsheet.reopen", say("testsheet.reopen.title"), say("testsheet.reopen"), say("testsheet.reopen.yes"), func(why string) bool {
		opened, err := v.desk.Store.ReopenTest(context.Background(), v.b.Doc.Now().Record.ID, why)
		if err != nil {
			v.desk.Trouble(err)
			return false
		}
		v.take(context.Background(), opened)
		if err := v.desk.NoteCorrected(context.Background(), opened); err != nil {
			v.desk.Trouble(err)
		}
		return true
	})
}

// askReason asks why a value beyond its limits is kept.
func (v *View) askReason(w trouble) {
	say := v.b.Say
	title, sentence := v.speaker().trouble(v.b.Doc.Now().Record, w)
	v.askWhy("testsheet.reason", say("testsheet.reason.title"), title+" "+sentence, say("testsheet.reason.yes"), func(why string) bool {
		v.b.Pick("testsheet.reason", func(s *sheet) { s.Reasons[consult.ReasonPath(s.Record, w.problem)] = why })
		return true
	})
}

// dropReason takes a reason back; the value is refused again.
func (v *View) dropReason(w trouble) {
	v.b.Pick("testsheet.reason", func(s *sheet) { delete(s.Reasons, w.path) })
}

// askWhy asks for a written reason; without one nothing is done.
func (v *View) askWhy(name, title, sentence, yes string, do func(why string) (done bool)) {
	notes := field.NewNotes(v.desk.Host, name+".why", 3)
	trouble := look.NewParagraph("", look.Note, look.Ink)
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: name, Title: title, Sentence: sentence, Content: look.VBox(6, notes, trouble),
		Actions: []field.Action{
			{Name: "no", Text: v.b.Say("field.ask.cancel")},
			{Name: "yes", Text: yes, Kind: field.Primary, Do: func() (stay bool) {
				why := strings.TrimSpace(notes.Text())
				if why == "" {
					trouble.SetText(v.b.Say("testsheet.why.needed"))
					return true
				}
				return !do(why)
			}},
		},
	})
}

// endNextDay takes the offer that the session ended past midnight.
func (v *View) endNextDay() {
	v.b.Pick("testsheet.nextday", func(s *sheet) { s.Record.Session.EndsNextDay = true })
	v.b.Show()
	v.lock()
}

// remove deletes the sheet; the strip at the foot brings it back.
func (v *View) remove() {
	ctx, t := context.Background(), v.b.Doc.Now().Record
	say, ref := v.b.Say, refOf(t)
	if !v.b.FlushNow() {
		return
	}
	place := desk.Place{Screen: desk.Tests, Athlete: v.athlete.ID}
	err := v.desk.Store.Delete(ctx, ref, store.Edit{})
	if store.CodeOf(err) == store.CodeNotFound { // never kept: nothing was entered
		v.desk.Go(place)
		return
	}
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.desk.Go(place)
	v.desk.Say(say("testsheet.deleted", v.testName(t)), say("testsheet.undo"), func() {
		if err := v.desk.Store.Undelete(ctx, ref, store.Edit{}); err != nil {
			v.desk.Trouble(err)
			return
		}
		place.Record = t.ID
		v.desk.Go(place)
	})
}

// lock keeps a closed sheet from being changed; one that waits lets the
// laboratory's values in.
func (v *View) lock() {
	state := v.b.Doc.Now().Record.State
	for _, f := range v.b.Fields() {
		look.EnableIf(f.Field, state == record.TestOpen || state == record.TestWaiting && late(f.Name))
	}
	for _, d := range []*field.Link{v.ui.before.device, v.ui.after.device} {
		look.EnableIf(d, state == record.TestOpen)
	}
}

// late reports whether a control holds what comes from the laboratory.
func late(name string) bool {
	parts := strings.Split(name, ".")
	return len(parts) == 4 && parts[1] == "patch" &&
		slices.Contains([]string{"sodium", "potassium", "method", "condition", "atLaboratory"}, parts[3])
}

// showNotices says above the parts that a sheet is closed or waits, and that a
// consent is missing.
func (v *View) showNotices() {
	t, say, w := v.b.Doc.Now().Record, v.b.Say, v.desk.Words
	title, sentence := "", ""
	if t.State != record.TestOpen && t.ClosedAt != nil {
		title, sentence = say("testsheet.closed.title", w.Date(*t.ClosedAt), t.ClosedBy), v.keptWords()
		if t.State == record.TestWaiting {
			title = say("testsheet.waiting.title", w.Date(*t.ClosedAt), t.ClosedBy)
		}
	}
	v.ui.notice.SetText(title, sentence)
	v.ui.altered.SetText(v.alteredWords())
	v.ui.consents.SetText(v.profileWords())
	v.ui.urine.consent.SetText(v.consentWords(record.ConsentUrine))
	if root, ok := v.body.(*fyne.Container); ok && v.ui.foot.notices != title+v.consentTitle() {
		v.ui.foot.notices = title + v.consentTitle()
		root.Refresh()
	}
}

// profileWords say what the profile lacks: the birth date, without which body
// mass stays hidden, else the consent to a test.
func (v *View) profileWords() (title, sentence string) {
	if !care.AgeKnown(v.athlete, consult.TestDay(v.b.Doc.Now().Record)) {
		return v.b.Say("testsheet.born.title"), v.b.Say("testsheet.born")
	}
	return v.consentWords(record.ConsentTest)
}

// consentTitle is the title of the caution about the profile, as it stands.
func (v *View) consentTitle() string {
	title, _ := v.ui.consents.Text()
	return title
}

// consentWords say that a consent for a purpose is missing or has ended on the
// day of the test; they do not stand in the way. A closed sheet says nothing.
func (v *View) consentWords(p record.Purpose) (title, sentence string) {
	t := v.b.Doc.Now().Record
	if t.State != record.TestOpen {
		return "", ""
	}
	day, ended := record.DateOf(consult.TestDay(t)), record.Date("")
	for _, c := range v.athlete.Consents {
		switch {
		case c.Purpose != p || c.Deleted():
		case c.Holds(day):
			return "", ""
		case c.Withdrawn != "":
			ended = c.Withdrawn
		case c.Until != "" && c.Until < day:
			ended = c.Until
		}
	}
	say := v.b.Say
	if ended == "" && p == record.ConsentTest && v.athlete.BothAgreed(day) {
		return "", ""
	}
	if at, ok := ended.Time(); ok {
		return say("testsheet.consent."+string(p)+".ended", v.desk.Words.Date(at)), say("testsheet.consent")
	}
	return say("testsheet.consent." + string(p) + ".missing"), say("testsheet.consent")
}
