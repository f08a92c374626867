package tables

import (
	"strings"

	"ebbwell/internal/record"
)

// result puts the values of a laboratory onto the patches of a kept sheet.
func (w *builder) result(who record.Athlete) {
	day, ok := w.sampleDay()
	if !ok {
		return
	}
	sheet, code := w.sheetOf(who, day)
	if code != "" {
		column := w.m.first(Sample)
		if who.Name != "" {
			column = max(w.m.first(Name), w.m.first(FamilyName))
		}
		w.cellFault(column, code)
		return
	}
	byPatch := map[record.ID]*Result{}
	var order []record.ID
	for i, c := range w.m.Columns {
		if !c.Target.Sited() {
			continue
		}
		n, ok := w.value(i, 0)
		if !ok {
			continue
		}
		patch, code := w.patchOf(sheet, c)
		if code != "" {
			w.cellFault(max(w.m.first(PatchSite), 0), code)
			return
		}
		r := byPatch[patch.ID]
		if r == nil {
			r = &Result{Test: sheet.ID, Patch: patch.ID}
			byPatch[patch.ID], order = r, append(order, patch.ID)
		}
		w.onto(r, patch, c.Target, n, i)
	}
	w.addResults(byPatch, order)
}

// onto takes a value for a patch unless it is there already.
func (w *builder) onto(r *Result, p record.Patch, t Target, n record.Number, column int) {
	old, into := p.Sodium, &r.Sodium
	if t == Potassium {
		old, into = p.Potassium, &r.Potassium
	}
	switch {
	case old.Known() && *old.Value == *n.Value:
		w.ask(Question{Column: column, Code: QuestionThere})
		return
	case old.Known():
		w.ask(Question{Column: column, Code: QuestionReplaces})
	}
	*into = n
}

// addResults adds the row with what it puts onto patches.
func (w *builder) addResults(by map[record.ID]*Result, order []record.ID) {
	if w.bad {
		return
	}
	if len(order) == 0 {
		w.cellFault(-1, FaultNoValue)
		return
	}
	if w.sampled == nil {
		w.sampled = map[record.ID]bool{}
	}
	row := RowDraft{Row: w.at, Twin: Twin{Row: -1}}
	for _, id := range order {
		if w.sampled[id] {
			w.cellFault(-1, FaultTwice)
			return
		}
		w.sampled[id] = true
		if r := by[id]; r.Sodium.Known() || r.Potassium.Known() {
			row.Results = append(row.Results, *r)
		}
	}
	if len(row.Results) > 0 {
		w.d.Rows = append(w.d.Rows, row)
	}
}

// sampleDay is the day of the session.
func (w *builder) sampleDay() (record.Date, bool) {
	text, column := w.text(Date)
	if text == "" {
		w.cellFault(column, FaultNoDate)
		return "", false
	}
	day, _, err := parseDay(text, w.m.Order, w.o.Today, false)
	if err != nil {
		w.cellFault(column, FaultDay)
		return "", false
	}
	return day, true
}

// sheetOf finds the sheet of a result: by the athlete's name or the label, and the
// day. The label may be a bib, or hold the name.
func (w *builder) sheetOf(who record.Athlete, day record.Date) (record.Test, FaultCode) {
	label, _ := w.text(Sample)
	if who.Name == "" && label == "" {
		return record.Test{}, FaultNoName
	}
	var onDay, open []record.Test
	known := false
	for _, a := range w.o.Known.Athletes {
		mine := w.isMine(a, who, label)
		known = known || mine
		for _, t := range w.o.Known.Sheets {
			bib := who.Name == "" && w.o.Known.Bibs[t.ID] != "" && strings.EqualFold(w.o.Known.Bibs[t.ID], label)
			if t.AthleteID != a.ID || t.Session.Date != day || !mine && !bib {
				continue
			}
			known = true
			onDay = append(onDay, t)
			if t.State != record.TestClosed {
				open = append(open, t)
			}
		}
	}
	switch {
	case len(open) == 1:
		return open[0], ""
	case len(open) > 1:
		return record.Test{}, FaultWho
	case len(onDay) > 0:
		return record.Test{}, FaultClosed
	case known:
		return record.Test{}, FaultNoSheet
	}
	return record.Test{}, FaultNobody
}

// isMine reports whether a result is of an athlete.
func (w *builder) isMine(a, who record.Athlete, label string) bool {
	if who.Name != "" {
		return NameKey(a.Name) == NameKey(who.Name) && (who.Born == "" || a.Born == "" || who.Born == a.Born)
	}
	return NameKey(a.Name) != "" && holdsAll(wordsOf(label), wordsOf(a.Name))
}

// patchOf finds the patch a value is of: that at the site, or the only one.
func (w *builder) patchOf(t record.Test, c Column) (record.Patch, FaultCode) {
	site, side, ok := w.siteOf(c)
	if !ok {
		label, _ := w.text(Sample)
		if site, ok = SiteOf(label); ok {
			side = sideOf(label)
		}
	}
	if !ok {
		if text, _ := w.text(PatchSite); text != "" {
			return record.Patch{}, FaultChoice
		}
		if len(t.Patches) == 1 {
			return t.Patches[0], ""
		}
		if len(t.Patches) == 0 {
			return record.Patch{}, FaultNoPatch
		}
		return record.Patch{}, FaultNoSite
	}
	var found []record.Patch
	for _, p := range t.Patches {
		if p.Site == site && (side == "" || p.Side == "" || p.Side == side) {
			found = append(found, p)
		}
	}
	switch {
	case len(found) == 0:
		return record.Patch{}, FaultNoPatch
	case len(found) > 1:
		return record.Patch{}, FaultNoSite
	}
	return found[0], ""
}
