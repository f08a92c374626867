package look

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// A form has two columns where there is room, one where there is not; a wide
// field has its own row, and a hidden one takes its words with it.
func TestFormRows(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(NewTheme(false, 100))
	box := func() fyne.CanvasObject { return Gap(20, 30) }
	a, b, c, d := box(), box(), box(), box()
	f := NewForm(NewEntry("a", a), NewEntry("b", b), NewEntry("c", c).Wide(), NewEntry("d", d))
	for _, at := range []struct {
		width float32
		want  []int
	}{{700, []int{2, 1, 1}}, {500, []int{1, 1, 1, 1}}} {
		rows := f.rows(at.width)
		var got []int
		for _, r := range rows {
			got = append(got, len(r.entries))
		}
		if len(got) != len(at.want) {
			t.Fatalf("at %g the rows have %v, want %v", at.width, got, at.want)
		}
		for i := range got {
			if got[i] != at.want[i] {
				t.Errorf("at %g the rows have %v, want %v", at.width, got, at.want)
			}
		}
		if height, want := f.HeightFor(at.width), float32(len(rows))*30+float32(len(rows)-1)*formGapY; height != want {
			t.Errorf("at %g it is %g high, want %g", at.width, height, want)
		}
	}
	for _, at := range []struct{ label, column, width, most, want, each float32 }{
		{112, 300, 700, 2, 2, 336}, {112, 300, 627, 2, 1, 627}, {132, 430, 1400, 0, 3, 448}, {132, 430, 1400, 2, 2, 686}, {132, 430, 100, 0, 1, 100},
	} {
		n, column := NewForm().Measured(at.label, at.column, int(at.most)).columns(at.width)
		if n != int(at.want) || column != at.each {
			t.Errorf("%+v: %d columns of %g", at, n, column)
		}
	}
	long := NewForm(NewEntry("number of the register", NewLabel("1", Body, Ink)), NewEntry("name", NewLabel("2", Body, Ink)))
	long.Resize(fyne.NewSize(700, 200))
	test.WidgetRenderer(long).Layout(long.Size())
	if e := long.entries[0]; !e.more.Visible() || e.label.Text()+" "+e.more.Text() != "number of the register" || e.more.Position().Y != round(Body.Height()) {
		t.Errorf("two lines read %q and %q", e.label.Text(), e.more.Text())
	}
	if first, second := long.entries[0], long.entries[1]; first.field.Position().Y != second.field.Position().Y || first.field.Position().Y == 0 || second.more.Visible() || long.HeightFor(700) != 2*Body.Height() {
		t.Errorf("the fields stand at %v and %v, %v high", first.field.Position(), second.field.Position(), long.HeightFor(700))
	}
	b.Hide()
	f.Resize(fyne.NewSize(700, 200))
	test.WidgetRenderer(f).Layout(f.Size())
	if f.entries[1].label.Visible() || len(f.rows(700)) != 3 || c.Size().Width != 700-formLabel {
		t.Errorf("a hidden field leaves %d rows, the wide one is %g wide", len(f.rows(700)), c.Size().Width)
	}
}
