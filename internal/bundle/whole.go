package bundle

import (
	"reflect"
	"strings"

	"ebbwell/internal/record"
)

// inSafety are the lines about a red flag, which go on after a sheet was closed.
func inSafety(path string) bool { return strings.HasPrefix(path, "safety.") }

// inFollowUp is what belongs to the weeks after a plan was agreed.
func inFollowUp(path string) bool {
	parts := strings.Split(path, ".")
	return parts[0] == "reviews" || parts[0] == "corrected" || path == "agreement.review" ||
		len(parts) == 3 && parts[0] == "steps" && (parts[2] == "state" || parts[2] == "from")
}

// closedTest puts a sheet together that is closed on one side: it is taken whole, but
// for what was asked and done about a red flag.
func (m *merging) closedTest(p two, mine *record.Test, theirs record.Test) {
	bare := func(t record.Test) reflect.Value {
		t.Safety = nil
		return reflect.ValueOf(&t).Elem()
	}
	if !sameContent(bare(*mine), bare(theirs)) && m.takesWhole(p, inSafety, mine.Meta, theirs.Meta) {
		whole := theirs.Clone()
		whole.Meta, whole.ImportID, whole.Safety = mine.Meta, mine.ImportID, mine.Safety
		*mine = whole
	}
	m.rows(p, listNamed(reflect.ValueOf(mine).Elem(), "safety"), listNamed(reflect.ValueOf(&theirs).Elem(), "safety"), "")
}

// takesWhole decides whose a record is that is taken whole, and tells a conflict.
func (m *merging) takesWhole(p two, leave func(string) bool, mine, theirs record.Meta) bool {
	p.ours, p.others = p.ours.but(leave), p.others.but(leave)
	at := m.later(p, "", "", mine, theirs)
	theirsStand := at.theirs || at.tie && theirs.ChangedAt.After(mine.ChangedAt)
	if at.both {
		m.out.Conflicts = append(m.out.Conflicts, Conflict{Ref: p.ref, Athlete: p.athlete, OursAt: at.oursAt, TheirsAt: at.theirsAt, ByRow: at.byRow, TheirsStands: theirsStand})
	}
	m.whole[p.ref] = theirsStand
	return theirsStand
}

// plan takes one plan.
func (m *merging) plan(t record.Plan) {
	ref := record.Ref{Kind: record.KindPlan, ID: t.ID}
	t.Basis.StopID, t.Corrected = "", record.TestCorrected{}
	if m.stays(ref, t.AthleteID) || m.here.Gone[record.Ref{Kind: record.KindTest, ID: t.Basis.TestID}] && t.Basis.TestID != "" {
		return
	}
	i := m.indexOfPlan(t.ID)
	if i < 0 {
		m.out.NewPlans = append(m.out.NewPlans, t)
		return
	}
	mine := m.here.Plans[i].Clone()
	t.Basis.StopID = mine.Basis.StopID // the trip stays here
	before := mine.Clone()
	now, then := reflect.ValueOf(&mine).Elem(), reflect.ValueOf(&t).Elem()
	if t.AthleteID != mine.AthleteID || sameContent(now, then) {
		return
	}
	p := m.pair(record.KindPlan, t.ID, t.AthleteID)
	if mine.State == record.PlanDraft && t.State == record.PlanDraft {
		m.fields(p, now, then, "")
		m.lists(p, now, then, "")
	} else {
		m.agreedPlan(p, &mine, t)
	}
	if !sameContent(reflect.ValueOf(&before).Elem(), now) {
		m.out.Plans = append(m.out.Plans, mine)
	}
}

// indexOfPlan is where a plan is among those here.
func (m *merging) indexOfPlan(id record.ID) int {
	for i, h := range m.here.Plans {
		if h.ID == id {
			return i
		}
	}
	return -1
}

// agreedPlan puts a plan together that was agreed on one side. What was agreed here
// stands until somebody decides; a draft here gives way to what was agreed there.
// Reviews, and how far the steps are, come together.
func (m *merging) agreedPlan(p two, mine *record.Plan, theirs record.Plan) {
	bare := func(x record.Plan) reflect.Value {
		x = x.Clone()
		x.Reviews, x.Agreement.Review = nil, ""
		for i := range x.Steps {
			x.Steps[i].State, x.Steps[i].From = "", ""
		}
		return reflect.ValueOf(&x).Elem()
	}
	if !sameContent(bare(*mine), bare(theirs)) {
		_, changed := p.others.but(inFollowUp).within("")
		switch {
		case mine.State == record.PlanDraft:
			if m.takesWhole(p, inFollowUp, mine.Meta, theirs.Meta) {
				m.takePlan(mine, theirs)
			}
		case changed:
			m.decideWhole(p, theirs)
		}
	}
	now, then := reflect.ValueOf(mine).Elem(), reflect.ValueOf(&theirs).Elem()
	m.rows(p, listNamed(now, "reviews"), listNamed(then, "reviews"), "")
	m.field(p, "agreement.review", "", now, then, "agreement.review")
	for i := range mine.Steps {
		for j := range theirs.Steps {
			if mine.Steps[i].ID == theirs.Steps[j].ID {
				a, b := reflect.ValueOf(&mine.Steps[i]).Elem(), reflect.ValueOf(&theirs.Steps[j]).Elem()
				row := "steps." + string(mine.Steps[i].ID)
				m.field(p, row+".state", row, a, b, "state")
				m.field(p, row+".from", row, a, b, "from")
			}
		}
	}
}

// takePlan makes a plan here what it is there, but for its reviews.
func (m *merging) takePlan(mine *record.Plan, theirs record.Plan) {
	whole := theirs.Clone()
	whole.Meta, whole.Reviews, whole.Corrected, whole.Basis.StopID = mine.Meta, mine.Reviews, mine.Corrected, mine.Basis.StopID
	*mine = whole
}

// product takes one product: the practice's own stands where it is another.
func (m *merging) product(theirs record.Product) {
	ref := record.Ref{Kind: record.KindProduct, ID: theirs.ID}
	if m.stays(ref, "") {
		return
	}
	for _, mine := range m.here.Products {
		if mine.ID != theirs.ID {
			continue
		}
		if !sameContent(reflect.ValueOf(&mine).Elem(), reflect.ValueOf(&theirs).Elem()) {
			m.out.Conflicts = append(m.out.Conflicts, Conflict{Ref: ref, OursAt: mine.ChangedAt, TheirsAt: theirs.ChangedAt, ByRow: true})
		}
		return
	}
	m.out.NewProducts = append(m.out.NewProducts, theirs)
}

// listNamed is a list of a row.
func listNamed(v reflect.Value, name string) (found list) {
	eachList(v, func(l list) {
		if l.path == name {
			found = l
		}
	})
	return found
}
