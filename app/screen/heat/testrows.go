package heat

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// testRows are the tests beside a session, one below the other. How far a test
// holds may take two lines: it is the point of the table.
type testRows struct {
	lines []*testLine
	box   *fyne.Container
}

// testLine is one test.
type testLine struct {
	day, holds       *look.Paragraph
	air, effort, sun *look.Label
	box              fyne.CanvasObject
}

// testTracks are the columns of the table.
func testTracks() []look.Track {
	return []look.Track{look.Share(27), look.Fixed(78), look.Fixed(62), look.Fixed(136), look.Share(38)}
}

// The gap between columns and the room around a line, in px.
const (
	testGap float32 = 12
	testPad float32 = 8
	linePad float32 = 5
)

func newTestRows(say func(string, ...any) string) *testRows {
	note := func(key string) *look.Label { return look.NewLabel(say(key), look.Note, look.Ink2) }
	head := look.Columns(testGap, testTracks(), note("heat.column.test"), note("heat.column.air").Right(), note("heat.column.effort").Right(),
		note("heat.column.sun").Right(), note("heat.column.holds"))
	return &testRows{box: look.VBox(0, look.Pad(0, testPad, 6, testPad, head), look.NewRule())}
}

// show shows tests.
func (t *testRows) show(rows []Row) {
	for len(t.lines) < len(rows) {
		t.add()
	}
	for i, l := range t.lines {
		look.ShowIf(l.box, i < len(rows))
		if i >= len(rows) {
			continue
		}
		r, tone := rows[i], look.Ink2
		if r.Used {
			tone = look.Ink
		}
		l.day.SetText(r.Day)
		l.air.SetText(r.Air)
		l.effort.SetText(r.Effort)
		l.sun.SetText(r.Sun)
		l.holds.SetText(r.Holds)
		l.holds.SetTone(tone)
	}
}

// add makes a further line.
func (t *testRows) add() {
	right := func() *look.Label { return look.NewLabel("", look.Body, look.Ink).Right().Shorten() }
	l := &testLine{day: look.NewParagraph("", look.Body, look.Ink), holds: look.NewParagraph("", look.Body, look.Ink), air: right(), effort: right(), sun: right()}
	row := look.Columns(testGap, testTracks(), l.day, l.air, l.effort, l.sun, l.holds)
	l.box = look.VBox(0, look.Pad(linePad, testPad, linePad, testPad, row), look.NewRule())
	t.lines = append(t.lines, l)
	t.box.Add(l.box)
}
