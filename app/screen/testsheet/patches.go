package testsheet

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// patches are the sweat patches of a sheet.
type patches struct {
	b     *binder
	rows  []*patchRow
	list  *fyne.Container
	add   *field.Button
	empty *look.Paragraph
	body  fyne.CanvasObject
}

// newPatches builds the sheet of patches.
func newPatches(b *binder) *patches {
	say := b.Say
	p := &patches{b: b, list: look.VBox(12), empty: look.NewParagraph(say("testsheet.patches.none"), look.Note, look.Ink2)}
	p.add = field.NewButton(b.Desk.Host, "testsheet.patch.add", say("testsheet.patch.add"), field.Outline, func() {
		b.Pick("testsheet.patch.add", func(s *sheet) { addPatch(&s.Record) })
		b.Show()
		b.GoTo("testsheet.patch." + strconv.Itoa(len(b.Doc.Now().Record.Patches)) + ".site")
	})
	p.body = panel(say("testsheet.patches"), "", p.empty, p.list, look.HBox(0, p.add),
		look.NewParagraph(say("testsheet.patches.note"), look.Note, look.Ink2))
	return p
}

// show follows the sheet.
func (p *patches) show(s sheet, f consult.Findings) {
	n := len(s.Record.Patches)
	for len(p.rows) < n {
		r := newPatchRow(p, len(p.rows))
		p.rows = append(p.rows, r)
		p.list.Add(r.box)
	}
	for i, r := range p.rows {
		look.ShowIf(r.box, i < n)
		r.show(s, f)
	}
	look.ShowIf(p.empty, n == 0)
	look.ShowIf(p.list, n > 0)
	look.ShowIf(p.add, s.Record.State == record.TestOpen)
}

// patchRow is one patch.
type patchRow struct {
	p      *patches
	i      int
	off    *field.Clock
	site   *field.Choice
	remove *field.Link
	result *look.Paragraph
	box    fyne.CanvasObject
}

// newPatchRow makes the fields of the i-th patch.
func newPatchRow(p *patches, i int) *patchRow {
	r := &patchRow{p: p, i: i, result: look.NewParagraph("", look.Note, look.Ink2)}
	b, say := p.b, p.b.Say
	r.site = r.choice("site", "testsheet.site.", sites(), func(p *record.Patch) string { return string(p.Site) }, func(p *record.Patch, w string) { p.Site = record.Site(w) })
	side := r.choice("side", "testsheet.side.", []string{"left", "right"}, func(p *record.Patch) string { return p.Side }, func(p *record.Patch, w string) { p.Side = w })
	condition := r.choice("condition", "testsheet.condition.", []string{string(record.PatchGood), string(record.PatchDetached), string(record.PatchSaturated)},
		func(p *record.Patch) string { return string(p.Condition) }, func(p *record.Patch, w string) { p.Condition = record.Condition(w) })
	method := r.choice("method", "testsheet.method.", methods(), func(p *record.Patch) string { return string(p.Method) }, func(p *record.Patch, w string) { p.Method = record.Method(w) })
	on := r.clock("on", func(p *record.Patch) *record.Clock { return &p.On })
	r.off = r.clock("off", func(p *record.Patch) *record.Clock { return &p.Off })
	sodium, potassium := r.number("sodium"), r.number("potassium")
	laboratory := b.Check(PartUrine, r.name("atLaboratory"), say("testsheet.patch.laboratory"), func(t record.Test) bool {
		patch := patchAt(&t, i)
		return patch != nil && patch.AtLaboratory
	}, func(s *sheet, on bool) {
		if patch := patchAt(&s.Record, i); patch != nil {
			patch.AtLaboratory = on
		}
	})
	r.remove = field.NewLink(b.Desk.Host, r.name("remove"), say("testsheet.patch.remove"), r.takeOut)
	r.remove.PassBy()
	title := look.NewLabel(say("testsheet.patch.title", b.Desk.Words.Number(float64(i+1), 0)), look.Strong, look.Ink)
	form := newForm(
		look.NewEntry(say("testsheet.patch.site"), look.MaxWidth(220, r.site)), look.NewEntry(say("testsheet.patch.side"), small(side)),
		look.NewEntry(say("testsheet.patch.on"), small(on)), look.NewEntry(say("testsheet.patch.off"), small(r.off)),
		look.NewEntry(say("testsheet.patch.condition"), look.MaxWidth(160, condition)), look.NewEntry("", laboratory),
		look.NewEntry(say("testsheet.patch.sodium"), small(sodium)), look.NewEntry(say("testsheet.patch.potassium"), small(potassium)),
		look.NewEntry(say("testsheet.patch.method"), look.MaxWidth(260, method)).Wide(),
	)
	r.box = look.VBox(8, look.HBox(12, look.Grow(title), r.remove), form, r.result, look.NewRule())
	return r
}

// sites lists where a patch may sit, those with an equation first.
func sites() []string {
	var list []string
	for _, s := range []record.Site{
		record.SiteForearmDorsal, record.SiteThigh, record.SiteFiveMean, record.SiteForearmVentral, record.SiteUpperArm,
		record.SiteChest, record.SiteBack, record.SiteForehead, record.SiteCalf,
	} {
		list = append(list, string(s))
	}
	return list
}

// methods lists how the sodium may have been measured.
func methods() []string {
	var list []string
	for _, m := range []record.Method{
		record.MethodDirectElectrode, record.MethodIndirectElectrode, record.MethodFlame, record.MethodConductivity, record.MethodIonChromatography,
	} {
		list = append(list, string(m))
	}
	return list
}

// name is the name of one of the patch's controls.
func (r *patchRow) name(what string) string {
	return "testsheet.patch." + strconv.Itoa(r.i+1) + "." + what
}

// choice binds one of a closed list.
func (r *patchRow) choice(what, beginning string, keys []string, get func(p *record.Patch) string, set func(p *record.Patch, w string)) *field.Choice {
	return r.p.b.Choice(PartUrine, r.name(what), r.p.b.Options(beginning, keys...), word(func(t record.Test) string {
		if patch := patchAt(&t, r.i); patch != nil {
			return get(patch)
		}
		return ""
	}, func(t *record.Test, w string) {
		if patch := patchAt(t, r.i); patch != nil {
			set(patch, w)
		}
	}))
}

// clock binds a time of the patch.
func (r *patchRow) clock(what string, of func(p *record.Patch) *record.Clock) *field.Clock {
	return r.p.b.Clock(PartUrine, r.name(what), func(t *record.Test) (*record.Clock, string) {
		if patch := patchAt(t, r.i); patch != nil {
			return of(patch), "patches." + string(patch.ID) + "." + what
		}
		return new(record.Clock), ""
	})
}

// number binds a value of the laboratory.
func (r *patchRow) number(name string) *field.Number {
	f, _ := record.SheetFieldOf("patches.*." + name)
	return bind.SheetRowNumber(r.p.b, f, record.SheetRow{Number: r.i + 1}, func(t *record.Test, _ bool) (any, string) {
		patch := patchAt(t, r.i)
		if patch == nil {
			return nil, ""
		}
		return patch, "patches." + string(patch.ID)
	})
}

// takeOut takes the patch out of the sheet.
func (r *patchRow) takeOut() {
	b := r.p.b
	b.Pick(r.name("remove"), func(s *sheet) {
		forget(s, "patches."+string(s.Record.Patches[r.i].ID))
		removePatch(&s.Record, r.i)
	})
	b.Show()
	b.Desk.Offer(b.Say("testsheet.patch.removed", strconv.Itoa(r.i+1)), b.Say("testsheet.undo"), func() { b.Undo() })
}

// show follows the sheet where the fields do not by themselves.
func (r *patchRow) show(s sheet, f consult.Findings) {
	look.ShowIf(r.remove, s.Record.State == record.TestOpen)
	text := ""
	for _, p := range f.Sweat.Sodium.Patches {
		if p.Item == r.i+1 {
			text = patchWords(r.p.b, p)
			r.showTimes(p)
		}
	}
	r.result.SetText(text)
	look.ShowIf(r.result, text != "")
}

// showTimes says at the field that a patch came off before it went on.
func (r *patchRow) showTimes(p sweat.PatchResult) {
	weight, text := field.Fine, ""
	switch _, readable := r.off.Clock(); {
	case !readable:
		weight, text = r.off.Trouble()
	case p.Reason == sweat.LeftTimes && r.p.b.Typing() != r.name("off"):
		weight, text = field.Wrong, r.p.b.Say("testsheet.patch.order")
	}
	r.off.SetTrouble(weight, text)
}

// patchWords say what a patch gave, or why it gives no figure.
func patchWords(b *binder, p sweat.PatchResult) string {
	switch {
	case p.Reason != "" && p.Predicted.Ranged:
		return b.Say("testsheet.left."+p.Reason) + " " + b.Say("testsheet.patch.range", b.By.Range(p.Predicted))
	case p.Reason != "":
		return b.Say("testsheet.left." + p.Reason)
	case p.Predicted.Known:
		return b.Say("testsheet.patch.gives", b.By.Found(p.Predicted), b.By.Range(p.Predicted))
	}
	return ""
}
