package squad

import (
	"context"
	"flag"
	"fmt"
	"maps"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
)

// keystrokes are how many keys and clicks all seeds press together; the whole is
// done by -keys 10000.
var keystrokes = flag.Int("keys", 400, "how many keys and clicks TestRandomInput presses over its eight seeds") //nolint:gochecknoglobals // a flag

// TestRandomInput presses keys and clicks at random over the day, on eight seeds: it
// does not panic, and what was written down before of athletes whose rows are not
// open is neither lost nor moved to another.
func TestRandomInput(t *testing.T) {
	for seed := range int64(8) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) { pressAtRandom(t, seed, *keystrokes/8) })
	}
}

// numbersOf are the numbers of a sheet by path, for comparing.
func numbersOf(t record.Test) map[string]float64 {
	list := map[string]float64{}
	for i, w := range t.Weighings {
		list[fmt.Sprint("weighing ", i, w.Moment)] = w.Mass.Or(-1)
	}
	for i, b := range t.Bottles {
		list[fmt.Sprint("bottle ", i, " before")], list[fmt.Sprint("bottle ", i, " after")] = b.Before.Or(-1), b.After.Or(-1)
		for j, r := range b.Refills {
			list[fmt.Sprint("bottle ", i, " refill ", j)] = r.Added.Or(-1)
		}
	}
	list["urine"] = t.Loss.Urine.Or(-1)
	return list
}

// lost reports whether a number that stood is another, or gone. A bottle that was added
// for all is none.
func lost(was, now map[string]float64) bool {
	for path, x := range was {
		if y, there := now[path]; x >= 0 && (!there || x != y) {
			return true
		}
	}
	return false
}

func pressAtRandom(t *testing.T, seed int64, n int) {
	t.Chdir(t.TempDir()) // nothing is written beside the source
	d, clock, id := squadDesk(t, crew()[:4])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	for range 4 {
		one := plan()[h.who()]
		h.at("before", one.before+"\n")
		h.at("bottle.1.before", one.filled[0]+"\n")
		h.at("bottle.2.before", one.filled[1]+"\n")
	}
	h.until(18, 47)
	dice := rand.New(rand.NewSource(seed))
	last, at := map[string]map[string]float64{}, ""
	for i := range n {
		if who := h.who(); who != at {
			// The row that was left keeps what it had; so do all others.
			for _, r := range h.v.rows {
				last[r.Sheet.Athlete.Name] = numbersOf(r.Sheet.Test)
			}
			at = who
		}
		if undone := pressOnce(h, d, dice); undone {
			at = "" // a step back may lie in any row
			continue
		}
		for _, r := range h.v.rows {
			name := r.Sheet.Athlete.Name
			if was, ok := last[name]; ok && name != at && name != h.who() && lost(was, numbersOf(r.Sheet.Test)) {
				t.Fatalf("key %d of seed %d: %s, whose row is not open, had %v and has %v", i, seed, name, was, numbersOf(r.Sheet.Test))
			}
		}
	}
	keptAsShown(t, h, d)
}

// pressOnce presses one key or clicks once, or takes a step back or on again.
func pressOnce(h *hands, d *desk.Desk, dice *rand.Rand) (undone bool) {
	keys := []rune("0123456789.,+-*/\n\nabesntmkg x")
	names := []fyne.KeyName{fyne.KeyUp, fyne.KeyDown, fyne.KeyEscape, fyne.KeyBackspace, fyne.KeyDelete, fyne.KeyLeft, fyne.KeyHome, fyne.KeyReturn, fyne.KeyTab, fyne.KeyF2, fyne.KeySpace}
	switch dice.Intn(12) {
	case 0, 1:
		name := names[dice.Intn(len(names))]
		if f := h.w.Canvas().Focused(); f != nil {
			f.TypedKey(&fyne.KeyEvent{Name: name})
		} else {
			d.Host.Key(&fyne.KeyEvent{Name: name})
		}
	case 2:
		clickAny(h, dice)
	case 3:
		return dice.Intn(4) == 0 && (h.v.Undo() || h.v.Redo())
	default:
		h.key(keys[dice.Intn(len(keys))])
	}
	return false
}

// keptAsShown holds what the store has against what the rows show.
func keptAsShown(t *testing.T, h *hands, d *desk.Desk) {
	t.Helper()
	if err := d.Keep.Flush(context.Background()); err != nil {
		t.Fatal(err)
	}
	for testID, s := range h.v.doc.Now().sheets {
		kept, err := d.Store.LoadTest(context.Background(), testID)
		if err != nil {
			t.Fatal(err)
		}
		if !maps.Equal(numbersOf(kept), numbersOf(s.Record)) || kept.AthleteID != s.Record.AthleteID {
			t.Errorf("kept %v, shown %v", numbersOf(kept), numbersOf(s.Record))
		}
	}
}

// clickAny clicks a control in sight, but those that leave the screen.
func clickAny(h *hands, dice *rand.Rand) {
	root := h.w.Content()
	if top := h.w.Canvas().Overlays().Top(); top != nil {
		root = top
	}
	spots := slices.DeleteFunc(field.Names(root), func(s field.Spot) bool {
		return s.Object == nil || slices.ContainsFunc([]string{"sheet", "off", "blank", "coach", "print"}, func(part string) bool { return strings.Contains(s.Name, part) })
	})
	if len(spots) == 0 {
		return
	}
	if o, ok := spots[dice.Intn(len(spots))].Object.(fyne.Tappable); ok {
		o.Tapped(&fyne.PointEvent{Position: fyne.NewPos(5, 5)})
	}
}
