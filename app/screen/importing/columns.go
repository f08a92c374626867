package importing

import (
	"context"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/tables"
)

// columnsPart says what each column means, over its first values.
type columnsPart struct {
	p        *checkPage
	kind     *field.Choice
	sheet    *field.Choice
	heading  *field.Choice
	order    *field.Choice
	decimal  *field.Choice
	begin    *field.Clock
	both     *bothWays
	template *field.Line
	known    *look.Paragraph
	forget   *field.Link
	rows     []*columnRow
	list     *fyne.Container
	body     fyne.CanvasObject
}

// columnRow is one column of the file.
type columnRow struct {
	meaning *field.Choice
	unit    *field.Choice
	site    *field.Choice
}

// newColumnsPart builds it for the file that was read.
func newColumnsPart(p *checkPage) *columnsPart {
	v := p.v
	c := &columnsPart{p: p, list: look.VBox(0)}
	c.choices()
	c.both = newBothWays(v)
	form := look.NewForm(
		look.NewEntry(v.Say("import.kind"), c.kind), look.NewEntry(v.Say("import.sheet"), c.sheet), look.NewEntry(v.Say("import.heading"), c.heading),
		look.NewEntry(v.Say("import.order"), c.order), look.NewEntry(v.Say("import.decimal"), c.decimal), look.NewEntry(v.Say("import.begin"), c.begin),
	)
	c.known = look.NewParagraph("", look.Note, look.Ink2)
	c.template = field.NewLine(v.desk.Host, "import.template", 80)
	c.template.SetPlaceholder(v.Say("import.template.name"))
	keep := v.button("import.template.save", "import.template.save", c.saveTemplate)
	c.forget = field.NewLink(v.desk.Host, "import.template.remove", v.Say("import.template.remove"), c.removeTemplate)
	saved := look.MaxWidth(760, look.Columns(8, []look.Track{look.Share(1), look.Fit(), look.Fit()}, c.template, keep, c.forget))
	c.body = look.InMargin(look.PageScroll(look.VBox(14, c.both.box, look.NewSheet(look.VBox(12, form, c.known, saved)), look.NewSheet(c.list))))
	c.build()
	return c
}

// choices makes what is asked about the whole file.
func (c *columnsPart) choices() {
	v, h := c.p.v, c.p.v.desk.Host
	var kinds, orders, signs []field.Option
	for _, k := range []record.ImportKind{record.ImportTests, record.ImportAthletes, record.ImportLaboratory} {
		kinds = append(kinds, field.Option{Key: string(k), Text: v.Say("import.kind." + string(k))})
	}
	for _, o := range []tables.Order{tables.DayMonthYear, tables.MonthDayYear, tables.YearMonthDay} {
		orders = append(orders, field.Option{Key: string(o), Text: v.Say("import.order." + string(o))})
	}
	for _, s := range []string{"point", "comma"} {
		signs = append(signs, field.Option{Key: s, Text: v.Say("import.decimal." + s)})
	}
	c.kind = field.NewChoice(h, "import.kind", kinds)
	c.kind.OnChosen = func(key string) { v.remap(v.s.mapping.Of(record.ImportKind(key))) }
	var sheets []field.Option
	for _, s := range v.s.book.Sheets {
		name := s.Name
		if name == "" {
			name = v.Say("import.sheet.only")
		}
		sheets = append(sheets, field.Option{Key: s.Name, Text: name})
	}
	c.sheet = field.NewChoice(h, "import.sheet", sheets)
	c.sheet.OnChosen = c.toSheet
	c.heading = field.NewChoice(h, "import.heading", nil)
	c.heading.OnChosen = func(key string) {
		row, _ := strconv.Atoi(key)
		v.remap(tables.GuessSheet(v.s.sheet(), row, v.s.book.Separator, v.s.mapping.Order))
	}
	c.order = field.NewChoice(h, "import.order", orders)
	c.order.OnChosen = func(key string) {
		m := v.s.mapping
		m.Order, m.Ordered = tables.Order(key), true
		v.with(m)
	}
	c.decimal = field.NewChoice(h, "import.decimal", signs)
	c.decimal.OnChosen = func(key string) {
		m := v.s.mapping
		m.DecimalComma = key == "comma"
		v.with(m)
	}
	c.begin = field.NewClock(h, "import.begin")
	c.begin.OnLeft = func(at record.Clock, ok bool) {
		if ok && at != v.s.mapping.Begin {
			m := v.s.mapping
			m.Begin = at
			v.with(m)
		}
	}
}

// toSheet reads another sheet of the workbook.
func (c *columnsPart) toSheet(name string) {
	v := c.p.v
	for _, s := range v.s.book.Sheets {
		if s.Name == name {
			one := v.s.book
			one.Sheets = []tables.Sheet{s}
			v.remap(tables.Guess(one, v.s.mapping.Order))
		}
	}
}

// remap reads the file by a mapping whose columns are others.
func (v *View) remap(m tables.Mapping) {
	v.s.mapping, v.s.template = m, record.ImportTemplate{}
	v.ui.columns.build()
	v.with(m)
}

// build makes a row for each column.
func (c *columnsPart) build() {
	v := c.p.v
	columns := []look.Column{{Title: v.Say("import.column"), Width: look.Share(3)}, {Title: v.Say("import.means"), Width: look.Share(3)},
		{Title: v.Say("import.unit"), Width: look.Fixed(196)}, {Title: v.Say("import.values"), Width: look.Share(3)}}
	c.list.Objects, c.rows = []fyne.CanvasObject{look.HeaderRow(12, columns)}, nil
	for i, column := range v.s.mapping.Columns {
		row := c.row(i)
		c.rows = append(c.rows, row)
		name := v.Say("import.column.named", tables.Letters(i), shorten(column.Heading, 60))
		look.Speak(name, row.meaning)
		look.Speak(name, row.unit)
		look.Speak(name, row.site)
		c.list.Add(look.FieldRow(12, columns, look.NewParagraph(name, look.Body, look.Ink), row.meaning,
			look.VBox(4, row.unit, row.site), look.NewParagraph(v.firstValues(i), look.Note, look.Ink2)))
	}
	c.list.Refresh()
	c.follow()
}

// row makes the fields of a column.
func (c *columnsPart) row(i int) *columnRow {
	v, h := c.p.v, c.p.v.desk.Host
	name := "import.column." + strconv.Itoa(i+1)
	r := &columnRow{}
	options := []field.Option{{Key: "", Text: v.Say("import.target.unused")}}
	for _, t := range tables.Targets(v.s.mapping.Kind) {
		options = append(options, field.Option{Key: string(t), Text: v.target(t)})
	}
	r.meaning = field.NewChoice(h, name+".means", options)
	r.meaning.OnChosen = func(key string) { v.with(v.s.mapping.With(i, tables.Target(key))) }
	r.unit = field.NewChoice(h, name+".unit", nil)
	r.unit.OnChosen = func(key string) {
		m := v.s.mapping
		m.Columns = slices.Clone(m.Columns)
		m.Columns[i].Unit, m.Columns[i].FromValues = quantity.Unit(key), false
		v.with(m)
	}
	sites := []field.Option{{Key: "", Text: v.Say("import.site.column")}}
	for _, s := range tables.Sites() {
		sites = append(sites, field.Option{Key: string(s), Text: v.Say("testsheet.site." + string(s))})
	}
	r.site = field.NewChoice(h, name+".site", sites)
	r.site.OnChosen = func(key string) {
		m := v.s.mapping
		m.Columns = slices.Clone(m.Columns)
		m.Columns[i].Site = record.Site(key)
		v.with(m)
	}
	return r
}

// firstValues are the first values of a column.
func (v *View) firstValues(column int) string {
	const most = 3
	var list []string
	s := v.s.sheet()
	for _, row := range v.s.mapping.Rows(s) {
		if text := s.At(row, column).Text; text != "" {
			list = append(list, shorten(text, 18))
		}
		if len(list) == most {
			break
		}
	}
	return v.Words.Commas(list)
}

// follow shows the mapping as it is now.
func (c *columnsPart) follow() {
	v, m := c.p.v, c.p.v.s.mapping
	c.kind.Choose(string(m.Kind))
	c.sheet.Choose(m.Sheet)
	look.EnableIf(c.sheet, len(v.s.book.Sheets) > 1)
	c.headings()
	c.both.follow()
	c.order.Choose(string(m.Order))
	c.decimal.Choose(map[bool]string{true: "comma", false: "point"}[m.DecimalComma])
	c.begin.SetClock(m.Begin)
	look.EnableIf(c.begin, m.Kind == record.ImportTests)
	for i, r := range c.rows {
		column := m.Columns[i]
		r.meaning.Choose(string(column.Target))
		var units []field.Option
		for _, u := range column.Target.Units() {
			units = append(units, field.Option{Key: string(u), Text: string(u)})
		}
		r.unit.SetOptions(units)
		r.unit.Choose(string(column.Unit))
		look.ShowIf(r.unit, len(units) > 0)
		r.site.Choose(string(column.Site))
		look.ShowIf(r.site, column.Target.Sited())
	}
	text := "import.template.none"
	if v.s.template.ID != "" {
		text = "import.template.known"
	}
	c.known.SetText(v.Say(text, v.s.template.Name))
	look.ShowIf(c.forget, v.s.template.ID != "")
	c.body.Refresh()
}

// headings lists the rows in which the headings may be.
func (c *columnsPart) headings() {
	const most = 25
	v := c.p.v
	s := v.s.sheet()
	var options []field.Option
	for i := range min(len(s.Rows), most) {
		for _, cell := range s.Rows[i] {
			if cell.Text != "" {
				options = append(options, field.Option{Key: strconv.Itoa(i), Text: v.Say("import.heading.row", i+1), Note: shorten(cell.Text, 24)})
				break
			}
		}
	}
	c.heading.SetOptions(options)
	c.heading.Choose(strconv.Itoa(v.s.mapping.Heading))
}

// saveTemplate keeps how the file is read under a name.
func (c *columnsPart) saveTemplate() {
	v := c.p.v
	name := strings.TrimSpace(c.template.Text())
	if name == "" {
		name = v.s.template.Name
	}
	if name == "" {
		name = v.s.file
	}
	data, err := v.s.mapping.Marshal()
	if err == nil {
		v.s.template.Name, v.s.template.Mapping = name, data
		v.s.template, err = v.desk.Store.SaveTemplate(context.Background(), v.s.template)
	}
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.desk.Say(v.Say("import.template.saved", name), "", nil)
	c.follow()
}

// removeTemplate forgets the template the file was known by.
func (c *columnsPart) removeTemplate() {
	v := c.p.v
	if err := v.desk.Store.RemoveTemplate(context.Background(), v.s.template.ID); err != nil {
		v.desk.Trouble(err)
		return
	}
	v.desk.Say(v.Say("import.template.removed", v.s.template.Name), "", nil)
	v.s.template = record.ImportTemplate{}
	c.follow()
}

// target is the word for what a column means.
func (v *View) target(t tables.Target) string {
	if key, ok := targetWords()[t]; ok {
		return v.Say(key)
	}
	return v.Say("import.target." + string(t))
}

// targetWords are the words that profile and sheet have for a target.
func targetWords() map[tables.Target]string {
	return map[tables.Target]string{
		tables.Name: "profile.field.name", tables.Born: "profile.field.born", tables.Sex: "profile.field.sex", tables.Sport: "profile.field.sport",
		tables.Position: "profile.field.position", tables.Height: "profile.field.height", tables.UsualMass: "profile.field.usualMass",
		tables.Acclimatised: "profile.field.acclimatised",
		tables.Date:         "testsheet.field.session.date", tables.Start: "testsheet.field.session.start", tables.End: "testsheet.field.session.end",
		tables.Place: "testsheet.field.session.place", tables.Activity: "testsheet.field.session.activity", tables.Effort: "testsheet.field.session.effort",
		tables.Power: "testsheet.field.session.power", tables.Speed: "testsheet.field.session.speed", tables.Energy: "testsheet.field.session.energy",
		tables.Humidity: "testsheet.field.air.humidity", tables.Wbgt: "testsheet.field.air.wbgt",
		tables.Altitude: "testsheet.field.air.altitude", tables.Urine: "testsheet.field.loss.urine", tables.Stool: "testsheet.field.loss.stool",
		tables.Food: "testsheet.field.foods.mass", tables.BottleBefore: "testsheet.field.bottles.before", tables.BottleAfter: "testsheet.field.bottles.after",
		tables.Gravity: "testsheet.field.urine.gravity", tables.Osmolality: "testsheet.field.urine.osmolality", tables.Colour: "testsheet.field.urine.colour",
		tables.Sodium: "testsheet.field.patches.sodium", tables.Potassium: "testsheet.field.patches.potassium", tables.PatchSite: "testsheet.field.patches.site",
		tables.Thirst: "testsheet.field.feeling.thirst", tables.Stomach: "testsheet.field.feeling.stomach", tables.TestNote: "testsheet.field.note",
	}
}

// shorten cuts a text of a file to so many signs.
func shorten(text string, most int) string {
	runes := []rune(text)
	if len(runes) <= most {
		return text
	}
	return string(runes[:most-1]) + "…"
}
