package profile

import (
	"context"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// groupsPart is the groups an athlete belongs to, and a field to add one; a name
// nobody has had makes a new group.
type groupsPart struct {
	v     *View
	list  *fyne.Container
	add   *field.Suggest
	shown []record.ID
	body  fyne.CanvasObject
}

func newGroupsPart(v *View) *groupsPart {
	p := &groupsPart{v: v, list: look.VBox(2)}
	p.list.Hide()
	p.add = field.NewSuggest(v.desk.Host, "profile.group.add", true, p.others)
	p.add.SetPlaceholder(v.sp.Say("profile.group.add"))
	p.add.OnChosen = func(o field.Option) { p.enter(o.Text) }
	p.add.OnLeft = func(text string, _ bool) { p.enter(text) }
	p.body = look.VBox(4, p.list, p.add)
	return p
}

// others are the groups the athlete is not in that fit a text.
func (p *groupsPart) others(text string) []field.Option {
	var list []field.Option
	in := p.v.now().Memberships
	for _, g := range p.v.groups {
		if !slices.ContainsFunc(in, func(m record.Membership) bool { return m.GroupID == g.ID }) {
			list = append(list, field.Option{Key: string(g.ID), Text: g.Name})
		}
	}
	return field.Matching(list, text)
}

// enter puts the athlete into the group of a name, making it where there is
// none.
func (p *groupsPart) enter(name string) {
	name = strings.TrimSpace(name)
	if name == "" {
		return
	}
	g, ok := groupNamed(p.v.groups, name)
	if !ok {
		kept, err := p.v.desk.Store.SaveGroup(context.Background(), record.Group{Meta: record.Meta{ID: record.NewID()}, Name: name}, store.Edit{})
		if err != nil {
			p.v.desk.Trouble(err)
			return
		}
		g = kept
		p.v.groups = append(p.v.groups, g)
		p.v.desk.Say(p.v.sp.Say("profile.group.made", name), p.v.sp.Say("field.strip.undo"), func() { p.unmake(g.ID) })
	}
	p.add.SetText("")
	p.v.b.Pick("profile.groups", func(s *sheet) { join(&s.Record, g.ID) })
}

// unmake takes a group back that was only half a name.
func (p *groupsPart) unmake(id record.ID) {
	p.v.b.Pick("profile.groups", func(s *sheet) { leave(&s.Record, id) })
	if !p.v.b.FlushNow() {
		return
	}
	if err := p.v.desk.Store.Delete(context.Background(), record.Ref{Kind: record.KindGroup, ID: id}, store.Edit{}); err != nil {
		p.v.desk.Trouble(err)
		return
	}
	p.v.groups = slices.DeleteFunc(p.v.groups, func(g record.Group) bool { return g.ID == id })
}

// name is the name of a group.
func (p *groupsPart) name(id record.ID) string {
	for _, g := range p.v.groups {
		if g.ID == id {
			return g.Name
		}
	}
	return ""
}

// follow shows the groups anew where they changed.
func (p *groupsPart) follow(a record.Athlete) {
	var ids []record.ID
	for _, m := range a.Memberships {
		if p.name(m.GroupID) != "" && !m.Deleted() {
			ids = append(ids, m.GroupID)
		}
	}
	if slices.Equal(ids, p.shown) {
		return
	}
	p.shown = ids
	show(p.list, len(ids) > 0)
	p.list.Objects = nil
	for i, id := range ids {
		out := field.NewLink(p.v.desk.Host, field.PartName("profile.group", i, "leave"), p.v.sp.Say("profile.group.leave"), func() {
			p.v.b.Pick("profile.groups", func(s *sheet) { leave(&s.Record, id) })
		})
		out.SetSpoken(p.v.sp.Say("profile.group.leave.spoken", p.name(id)))
		p.list.Add(look.Columns(10, []look.Track{look.Share(1), look.Fit()}, look.NewLabel(p.name(id), look.Body, look.Ink).Shorten(), out))
	}
	p.list.Refresh()
}
