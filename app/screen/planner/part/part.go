package part

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/record"
)

// Shell is what the screen does for the parts of a plan.
type Shell interface {
	// Canvas is the canvas the plan stands on.
	Canvas() fyne.Canvas
	// Changed takes in what was changed in the record.
	Changed()
	// Reopen makes the case anew for a changed plan and shows it.
	Reopen(p record.Plan)
	// Show shows the plan in all parts.
	Show()
	// ChooseOption selects another option.
	ChooseOption(id record.ID)
	// OpenTab opens what stands behind a tab.
	OpenTab(key string)
	// Lay lays the page out anew, after something came or went.
	Lay()
	// CorrectAgreed opens the question why an agreed plan is corrected.
	CorrectAgreed()
	// Undo takes back the last step.
	Undo() bool
}

// Plan is the plan that is open, as the parts of the screen work with it.
type Plan struct {
	Shell
	Desk    *desk.Desk
	File    File
	Speaker wording.Speaker
	// Binder is nil where no plan is open.
	Binder *Binder
	Now    state.State
	Live   state.Calculation
}

// Binder ties fields to the plan that is open.
type Binder = bind.Binder[record.Plan]

// Sheet is the plan with the texts kept beside it.
type Sheet = bind.Sheet[record.Plan]

// Part is what stands behind a tab.
type Part interface {
	// Body is what is shown.
	Body() fyne.CanvasObject
	// Open shows another case, follow what a movement of a slider changed.
	Open()
	Follow()
}

// RefOf names a plan in the data file.
func RefOf(p record.Plan) record.Ref { return record.Ref{Kind: record.KindPlan, ID: p.ID} }

// Replace shows the plan as the store has kept it; it is no step back.
func (v *Plan) Replace(p record.Plan) {
	s := v.Binder.Doc.Now()
	v.Binder.Doc.Replace(bind.Sheet[record.Plan]{Record: p, Raw: s.Raw, Reasons: s.Reasons})
	for i := range v.File.Plans {
		if v.File.Plans[i].ID == p.ID {
			v.File.Plans[i] = p
		}
	}
	v.Reopen(p)
}

// The tabs below the panels, as places name them.
const (
	TabBeside  = "beside"
	TabSteps   = "steps"
	TabBreaks  = "breaks"
	TabDay     = "day"
	TabSession = "session"
)
