package squad

import (
	"slices"
	"unicode"

	"fyne.io/fyne/v2"

	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// openRowAt opens the i-th row and gives the keyboard to a field, empty for the
// first that is to be filled.
func (v *View) openRowAt(i int, what string) {
	if i < 0 || i >= len(v.rows) || v.group != nil {
		return
	}
	if v.open != nil && v.at == i {
		v.open.focusFirst(what)
		return
	}
	if v.open != nil {
		v.open.commit()
	}
	v.wantsSecond = ""
	v.at, v.open = i, nil
	v.reopen()
	v.follow()
	if v.shown {
		v.open.focusFirst(what)
		v.revealRow()
	}
}

// revealRow brings the whole of the row at the scale into sight where there is room
// for it, and not only the field that has the keyboard; else what the panels say, where
// the keyboard is in one of them.
func (v *View) revealRow() {
	w, scroll := v.open.view, v.ui.scroll
	top, h := w.Position().Y, w.Size().Height
	if h > scroll.Size().Height {
		if !v.open.inPanels(v.canvas().Focused()) {
			return
		}
		top += w.below.Position().Y + v.open.panels.Position().Y
		h = v.open.panels.Size().Height
	}
	if h > 0 && h <= scroll.Size().Height {
		scroll.Reveal(top, top+h)
	}
}

// inPanels reports whether a field is one of the panels.
func (o *openRow) inPanels(f fyne.Focusable) bool {
	return slices.ContainsFunc(o.panelInputs, func(in *input) bool { return fyne.Focusable(in.control) == f })
}

// reopen builds the open row anew, after undo or where the window became narrow.
func (v *View) reopen() {
	if v.group != nil || v.at < 0 || v.at >= len(v.rows) {
		v.open = nil
		return
	}
	v.open = newOpenRow(v, v.at)
}

// rebuild builds the open row anew and gives the keyboard back to the field that had
// it.
func (v *View) rebuild() {
	had := ""
	if c := v.canvas(); c != nil && v.open != nil {
		for _, in := range append(slices.Clone(v.open.inputs), v.open.panelInputs...) {
			if fyne.Focusable(in.control) == c.Focused() {
				had = in.what
			}
		}
	}
	v.reopen()
	v.follow()
	if had != "" && v.open != nil {
		v.open.focusFirst(had)
	}
}

// stage are the fields of a row that are worked now: those before the session, or
// those after it; by station only those of the station.
func (o *openRow) stage(station string) []*input {
	r := o.row()
	before := []string{stationBefore, stationFilled}
	after := []string{stationBottles, stationAfter, stationUrine, stationPatch, stationAsk}
	wanted := after
	switch {
	case station != "":
		wanted = []string{station}
	case r.State == squad.ToWeighBefore, r.State == squad.Playing:
		wanted = before
	}
	var list []*input
	for _, in := range o.inputs {
		if slices.Contains(wanted, in.station) && !in.control.Disabled() {
			list = append(list, in)
		}
	}
	return list
}

// focusFirst gives the keyboard to a field by its name, else to the first of the
// stage that is empty.
func (o *openRow) focusFirst(what string) {
	if in := o.find(what); in != nil {
		in.control.Focus()
		return
	}
	list := o.stage(o.v.stationNow())
	for _, in := range list {
		if !in.has(o.row()) && !o.optional(in) {
			in.control.Focus()
			return
		}
	}
	needed := "reason"
	if r := o.row(); r.Flagged && !r.Flag.Told() {
		needed = "told"
	}
	if in := o.find(needed); in != nil {
		in.control.Focus()
		return
	}
	if len(list) > 0 {
		list[0].control.Focus()
	}
}

// optional reports whether a field is usually left empty.
func (o *openRow) optional(in *input) bool {
	return in.what == "estimate" || in.station == stationBottles && len(in.what) > 5 && in.what[len(in.what)-5:] == ".more" ||
		in.station == stationPatch && !o.row().Patch.On
}

// stationNow is the station being worked; empty by athlete.
func (v *View) stationNow() string {
	if !v.doc.Now().session.ByStation {
		return ""
	}
	return v.station
}

// enter goes on from a field as the hands do.
func (v *View) enter(what string) {
	o := v.open
	if o == nil {
		return
	}
	r := o.row()
	in := o.find(what)
	if in != nil && in.put != nil {
		in.put(in.control.Text())
		r = o.row()
	}
	if odd, ok := openOdd(r); ok && odd.WeighAgain && (what == string(odd.Moment)) || what == string(record.After) && r.Flagged && r.Flag.Gained && !r.Flag.Told() {
		v.follow()
		if second := o.find("second"); second != nil {
			second.control.Focus()
			return
		}
	}
	station := v.stationNow()
	if in != nil && station != "" && in.station != "" {
		station = in.station
		v.station = station
	}
	list := o.stage(station)
	at := slices.IndexFunc(list, func(x *input) bool { return x.what == what })
	if what == "second" {
		at = slices.IndexFunc(list, func(x *input) bool { return x.what == string(record.After) })
	}
	if what == "reason" || what == "told" {
		o.focusFirst("")
		return
	}
	for _, next := range list[at+1:] {
		if !next.has(r) && (next.station != stationPatch || r.Patch.On) {
			next.control.Focus()
			return
		}
	}
	v.onward(station)
}

// onward goes to the athlete whose turn it is: by station to the next in the order
// of the scale who has nothing at this station.
func (v *View) onward(station string) {
	if v.open != nil {
		v.open.commit()
	}
	if station != "" {
		for n := 1; n < len(v.rows); n++ {
			i := (v.at + n) % len(v.rows)
			if v.lacksAt(i, station) {
				v.openStation(i, station)
				return
			}
		}
		if i := slices.Index(stations(), station); i >= 0 && i+1 < len(stations()) {
			for _, later := range stations()[i+1:] {
				for i := range v.rows {
					if v.lacksAt(i, later) {
						v.station = later
						v.openStation(i, later)
						return
					}
				}
			}
		}
		return
	}
	if next := squad.Next(v.rows, v.at); len(next) > 0 {
		v.openRowAt(next[0], "")
	}
}

// stations lists the stations in the order of the day.
func stations() []string {
	return []string{stationBefore, stationFilled, stationBottles, stationAfter, stationUrine, stationPatch, stationAsk}
}

// openStation opens a row at the first empty field of a station.
func (v *View) openStation(i int, station string) {
	v.station = station
	v.openRowAt(i, "")
}

// lacksAt reports whether the i-th athlete has nothing yet at a station whose turn it
// is.
func (v *View) lacksAt(i int, station string) bool {
	r := v.rows[i]
	t := r.Sheet.Test
	if r.Closed {
		return false
	}
	before := len(squad.Masses(t, record.Before)) > 0
	ended := r.State != squad.ToWeighBefore && r.State != squad.Playing
	switch station {
	case stationBefore:
		return !before
	case stationFilled:
		return slices.ContainsFunc(t.Bottles, func(b record.Bottle) bool { return !weighedOr(b.Before, b) })
	case stationBottles:
		return before && ended && slices.ContainsFunc(t.Bottles, func(b record.Bottle) bool { return !weighedOr(b.After, b) })
	case stationAfter:
		return before && ended && len(squad.Masses(t, record.After)) == 0
	case stationUrine:
		return before && ended && !t.Loss.Urine.Known() && !t.Loss.NoUrine
	case stationPatch:
		return r.Patch.On && ended
	case stationAsk:
		return before && ended && len(r.Flag.Safety.Unasked()) > 0
	}
	return false
}

// key takes the letters that are keys: they act only in a field that is empty or all
// selected, but for those that no number has.
func (v *View) key(in *input, r rune) bool {
	empty := blank(in)
	free := in.what == "reason" || in.what == "told"
	switch {
	case free && !empty:
		return false
	case unicode.IsLetter(r) && empty && !free:
		v.beginJump(r)
	case r == '/': // no number has it, and no reason begins with it
		v.beginJump(0)
	case r == '*':
		v.togglePatch()
	case r == '+' && empty:
		v.wantSecond(in)
	case (r == '-' || r == '−') && empty:
		v.notNow()
	default:
		return false
	}
	return true
}

// blank reports whether a field is empty, or all of it is selected, so that what is
// typed takes its place.
func blank(in *input) bool {
	text := in.control.Text()
	s, ok := in.control.(interface{ SelectedText() string })
	return text == "" || ok && s.SelectedText() == text
}

// togglePatch puts the patches on, or takes them off, now.
func (v *View) togglePatch() {
	if v.open == nil {
		return
	}
	now := v.desk.Now()
	v.pick("squad.patch", v.open.id, func(s *sheet) { squad.TurnPatches(v.doc.Now().session, &s.Record, now) })
}

// wantSecond goes to the field of a second weighing.
func (v *View) wantSecond(in *input) {
	v.wantsSecond = record.After
	if in.station == stationBefore || in.station == stationFilled {
		v.wantsSecond = record.Before
	}
	v.follow()
	if second := v.open.find("second"); second != nil {
		second.control.Focus()
	}
}

// notNow leaves an athlete for the next.
func (v *View) notNow() {
	station := v.stationNow()
	if station != "" {
		v.onward(station)
		return
	}
	if next := squad.Next(v.rows, v.at); len(next) > 0 {
		v.openRowAt(next[0], "")
		return
	}
	v.openRowAt((v.at+1)%max(1, len(v.rows)), "")
}

// Key takes the keys no field has a use for.
func (v *View) Key(e *fyne.KeyEvent) {
	if v.doc == nil || v.group != nil {
		return
	}
	switch e.Name {
	case fyne.KeyUp:
		v.openRowAt(v.at-1, "")
	case fyne.KeyDown:
		v.openRowAt(v.at+1, "")
	case fyne.KeyF2:
		v.startOrEnd()
	case fyne.KeyReturn, fyne.KeyEnter:
		if v.open != nil {
			v.open.focusFirst("")
		}
	}
}

// Escape closes the findings of the group or the search for a row; closed is
// false where neither is open.
func (v *View) Escape() (closed bool) {
	switch {
	case v.group != nil:
		v.showRows()
	case v.jump != nil && v.jump.box.Visible():
		v.endJump(false)
	default:
		return false
	}
	return true
}

// Rune takes the letters typed where no field is: a name begins.
func (v *View) Rune(r rune) {
	switch {
	case v.doc == nil || v.group != nil:
	case unicode.IsLetter(r):
		v.beginJump(r)
	case r == '/':
		v.beginJump(0)
	}
}
