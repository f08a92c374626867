package practice

import (
	"testing"

	"ebbwell/app/apptest"
)

// What proposals keep to in the practice is kept as typed, and the desk knows it.
func TestProposalSettingsAreKept(t *testing.T) {
	d, _ := apptest.Desk(t)
	_, w := open(t, d, PartStandards)
	for name, text := range map[string]string{"carbohydrateAim": "45", "stepFluid": "0.1", "stepCarbohydrate": "12", "drinkStep": "125"} {
		apptest.Type(t, w, "practice.proposal."+name, text)
		apptest.Leave(w)
	}
	apptest.Click(t, w, "practice.proposal.whole")
	s, known := kept(t, d).Settings, d.Calculate().Settings
	if s.CarbohydrateAim.Or(0) != 45 || s.StepFluid.Or(0) != 0.1 || s.StepCarbohydrate.Or(0) != 12 || !s.WholeSteps || s.DrinkStep.Or(0) != 125 {
		t.Errorf("kept %+v", s)
	}
	if known.StepFluid.Or(0) != 0.1 || !known.WholeSteps || known.DrinkStep.Or(0) != 125 {
		t.Errorf("the desk knows %+v", known)
	}
}
