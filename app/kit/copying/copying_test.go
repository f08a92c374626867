package copying

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"pgregory.net/rapid"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/look"
)

// What a cell holds never breaks the table, and nothing in it runs as a formula.
func TestTableKeepsItsShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		columns := rapid.IntRange(1, 5).Draw(t, "columns")
		row := func() []string { return rapid.SliceOfN(rapid.String(), columns, columns).Draw(t, "row") }
		table := Table{Name: "any", Titles: row()}
		for range rapid.IntRange(0, 6).Draw(t, "rows") {
			table.Rows = append(table.Rows, row())
		}
		lines := strings.Split(strings.TrimSuffix(table.Text(), "\n"), "\n")
		want := len(table.Rows)
		if strings.Join(table.Titles, "") != "" {
			want++
		}
		if want > 0 && len(lines) != want {
			t.Fatalf("%d lines, want %d: %q", len(lines), want, table.Text())
		}
		for _, l := range lines {
			cells := strings.Split(l, "\t")
			if want > 0 && len(cells) != columns {
				t.Fatalf("%d cells, want %d: %q", len(cells), columns, l)
			}
			for _, c := range cells {
				if strings.HasPrefix(c, "=") || strings.HasPrefix(c, "@") {
					t.Fatalf("a formula: %q", c)
				}
			}
		}
	})
}

func TestCells(t *testing.T) {
	for text, want := range map[string]string{
		"1.36\u00a0L/h": "1.36 L/h", "−2.5 %": "−2.5 %", "-2.5": "-2.5", "+0.4 kg": "+0.4 kg", "=1+1": "'=1+1", "@x": "'@x", "-cmd|x": "'-cmd|x",
		"-1+cmd|' /C calc'!A0": "'-1+cmd|' /C calc'!A0", "+1 cmd|x": "'+1 cmd|x", "-2.5 L/h": "-2.5 L/h", "+12 %": "+12 %", "-1(2)": "'-1(2)", "＝1+1": "'＝1+1", "－x": "'－x", "+": "'+",
		" a\tb\r\nc ": "a b c", "": "", "-": "'-", "–": "–",
	} {
		if got := cell(text); got != want {
			t.Errorf("%q is copied as %q, want %q", text, got, want)
		}
	}
}

// The link copies what the widget shows, with its titles, from the keyboard as well, and
// says what.
func TestLinkCopies(t *testing.T) {
	d, _ := apptest.Desk(t)
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	table := look.NewTable("test.table", []look.Column{{Title: "what"}, {Title: "value"}})
	table.SetRows([][]look.Cell{{{Text: "Sweat rate"}, {Text: "1.36\u00a0L/h", Short: []string{""}}}, {{Text: "Deficit"}, {Text: "2.8\u00a0%"}}})
	w := apptest.Window(t, Link(d, "test.copy", "copy.table", func() Table { return Of("Findings", table) }), 300, 60, false, 100)
	apptest.Click(t, w, "test.copy")
	const want = "what\tvalue\nSweat rate\t1.36 L/h\nDeficit\t2.8 %\n"
	if got := fyne.CurrentApp().Clipboard().Content(); got != want {
		t.Errorf("copied %q, want %q", got, want)
	}
	if said != "Copied: Findings, 2 rows. Paste it into a spreadsheet or a letter." {
		t.Errorf("said %q", said)
	}
	fyne.CurrentApp().Clipboard().SetContent("")
	w.Canvas().FocusNext()
	apptest.Press(w, fyne.KeyReturn)
	if got := fyne.CurrentApp().Clipboard().Content(); got != want {
		t.Errorf("from the keyboard %q", got)
	}
}
