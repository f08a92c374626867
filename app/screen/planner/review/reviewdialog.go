package review

import (
	"strings"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// sessionFields are what is recorded of a session done.
type sessionFields struct {
	day     *field.Date
	share   *field.Number
	drunk   *field.Number
	stomach *field.Rating
	heavier *field.Check
	note    *field.Line
	trouble *look.Paragraph
}

// AskSession asks what was done in a session.
func AskSession(v *part.Plan) {
	h, say := v.Desk.Host, v.Speaker.Say
	f := sessionFields{
		day: field.NewDate(h, "planner.done.day", field.Past), share: field.NewNumber(h, "planner.done.share", evidence.ShareDrunk, quantity.PerCent),
		drunk:   field.NewNumber(h, "planner.done.drunk", evidence.PouredVolume, quantity.Millilitre),
		stomach: field.NewRating(h, "planner.done.stomach", say("planner.stomach.low"), say("planner.stomach.high")),
		heavier: field.NewCheck(h, "planner.done.heavier", say("planner.done.heavier.check")),
		note:    field.NewLine(h, "planner.done.note", 400), trouble: look.NewParagraph("", look.Note, look.Ink),
	}
	f.day.SetDate(v.Desk.Today())
	f.drunk.SetShown(v.Speaker.By.Unit(quantity.Millilitre))
	f.day.SetBox(200)
	f.share.SetBox(96)
	f.drunk.SetBox(96)
	h.Ask(v.Canvas(), field.Question{
		Name: "planner.session.done", Title: say("planner.done.title"), Sentence: say("planner.done.sentence"), Width: 560,
		Content: look.VBox(8, part.NewForm(look.NewEntry(say("planner.done.form.day"), f.day), look.NewEntry(say("planner.done.form.share"), f.share), look.NewEntry(say("planner.done.form.drunk"), f.drunk),
			look.NewEntry(say("planner.done.form.stomach"), f.stomach), look.NewEntry(say("planner.done.form.note"), f.note)), f.heavier, f.trouble),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("planner.done.keep"), Kind: field.Primary, Do: func() (stay bool) {
				r, wrong := sessionOf(v, f)
				if wrong != "" {
					f.trouble.SetText(say(wrong))
					return true
				}
				keepReview(v, r)
				return false
			}},
		},
	})
}

// sessionOf reads the fields; wrong names the sentence for what is missing.
func sessionOf(v *part.Plan, f sessionFields) (r record.Review, wrong string) {
	step, _, _ := consult.StepNow(v.Now.Plan)
	r = record.Review{Meta: record.Meta{ID: record.NewID()}, PlanID: v.Now.Plan.ID, StepID: step.ID, Heavier: f.heavier.On(), Note: strings.TrimSpace(f.note.Text())}
	day, ok := f.day.Date()
	if !ok || day == "" {
		return r, "planner.done.noday"
	}
	r.Date = day
	share, drunk := f.share.Reading(), f.drunk.Reading()
	if !share.Usable() || drunk.State != field.Empty && !drunk.Usable() {
		return r, "planner.done.noshare"
	}
	r.DoneShare = record.Number{Value: &share.Value, Unit: share.Unit}
	if drunk.Usable() {
		r.Drunk = record.Number{Value: &drunk.Value, Unit: drunk.Unit}
	}
	if x := f.stomach.Value(); x != field.Unrated {
		r.Stomach = record.Num(float64(x), quantity.None)
	}
	return r, ""
}

// askDecision asks what was decided on the step in force. The rule only
// proposes; to decide otherwise takes a reason.
func askDecision(v *part.Plan, d record.Decision) {
	h, say := v.Desk.Host, v.Speaker.Say
	p := Proposal(v)
	step, _, _ := consult.StepNow(v.Now.Plan)
	why := field.NewLine(h, "planner.decision.why", 400)
	why.SetPlaceholder(say("planner.decision.why"))
	review := field.NewDate(h, "planner.decision.review", field.Coming)
	review.SetBox(200)
	review.SetDate(v.Now.Plan.Agreement.Review)
	trouble := look.NewParagraph("", look.Note, look.Ink)
	usual := look.NewParagraph(usualWords(v, d, p), look.Body, look.Ink)
	look.ShowIf(usual, usual.Text() != "")
	h.Ask(v.Canvas(), field.Question{
		Name: "planner.decision", Title: say("planner.decision.title", decisionWord(v, step.ID, d)), Sentence: proposalWords(v.Speaker, p), Width: 560,
		Content: look.VBox(8, usual, part.NewForm(look.NewEntry(say("planner.decision.why"), why), look.NewEntry(say("planner.decision.review"), review)), trouble),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("planner.decision.keep"), Kind: field.Primary, Do: func() (stay bool) {
				reason := strings.TrimSpace(why.Text())
				if reason == "" {
					if record.Decision(p.Decision) != d {
						trouble.SetText(say("planner.decision.needed"))
						return true
					}
					reason = say(p.Reason)
				}
				day, _ := review.Date()
				decided(v, d, reason, day, p.Usual)
				return false
			}},
		},
	})
}

// usualWords say that what the stomach is used to rises; empty where it does not.
func usualWords(v *part.Plan, d record.Decision, p plan.Proposal) string {
	before := v.File.Athlete.UsualDrinking
	if d != record.DecisionNext || !p.Usual.Known || before.Known() && p.Usual.LH <= *before.Value {
		return ""
	}
	if !before.Known() {
		return v.Speaker.Say("planner.usual.first", v.Speaker.Rate(p.Usual.LH))
	}
	return v.Speaker.Say("planner.usual.rises", v.Speaker.Rate(*before.Value), v.Speaker.Rate(p.Usual.LH))
}
