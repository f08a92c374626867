package colleague

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/bundle"
	"ebbwell/internal/lock"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

const phrase = "four quiet herons wade"

// send writes a locked file of some athletes; work is little, for a test.
func send(t *testing.T, d *desk.Desk, ids ...record.ID) string {
	t.Helper()
	b, err := d.Store.Pack(t.Context(), ids, d.Practice().Name)
	if err != nil {
		t.Fatal(err)
	}
	return written(t, b)
}

// written locks a bundle into a file.
func written(t *testing.T, b bundle.Bundle) string {
	t.Helper()
	key, err := lock.NewKey(phrase, 2)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w, err := key.Writer(&out)
	if err == nil {
		err = errors.Join(bundle.Write(w, b, "1"), w.Close())
	}
	path := filepath.Join(t.TempDir(), "from a colleague.ebbwell")
	if err = errors.Join(err, os.WriteFile(path, out.Bytes(), 0o600)); err != nil {
		t.Fatal(err)
	}
	return path
}

// open opens the screen; said is what was said last.
func open(t *testing.T, d *desk.Desk) (v *View, w fyne.Window, said *string) {
	t.Helper()
	said = new(string)
	d.Say = func(sentence, _ string, _ func()) { *said = sentence }
	v, err := New(d)
	if err != nil {
		t.Fatal(err)
	}
	return v, apptest.Window(t, v.Body(), 1180, 1400, false, 100), said
}

// lookAt types a path and a passphrase and looks into the file.
func lookAt(t *testing.T, w fyne.Window, path, phrase string) {
	t.Helper()
	apptest.Type(t, w, "take.path", path)
	apptest.Type(t, w, "take.pass", phrase)
	apptest.Click(t, w, "take.open")
}

// shows is what stands on the screen.
func shows(v *View) string { return strings.Join(apptest.Texts(v.Body()), " ") }

// edit changes an athlete of a practice.
func edit(t *testing.T, d *desk.Desk, id record.ID, do func(*record.Athlete)) {
	t.Helper()
	a, err := d.Store.LoadAthlete(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	do(&a)
	if _, err = d.Store.SaveAthlete(t.Context(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
}

// TestAnAthleteGoesToAColleagueAndBack: with two practices, from the first file to the
// undo. A passphrase that is another opens nothing; nothing is written before it is
// taken in.
func TestAnAthleteGoesToAColleagueAndBack(t *testing.T) {
	here, _ := apptest.Demo(t)
	there, _ := apptest.Desk(t)
	ravka := apptest.AthleteNamed(t, here, "Ravka")
	v, w, said := open(t, there)
	file := send(t, here, ravka.ID)
	lookAt(t, w, file, "four quiet herons sleep")
	if text := shows(v); !strings.Contains(text, "The passphrase does not open this file") {
		t.Fatalf("another passphrase: %q", text)
	}
	lookAt(t, w, file, phrase)
	if text := shows(v); !strings.Contains(text, "One new athlete") || strings.Contains(text, "comes as a draft") || strings.Contains(text, "Changed on both sides") {
		t.Fatalf("of the first file it shows %q", text)
	}
	if list, err := there.Store.Athletes(t.Context()); err != nil || len(list) != 0 {
		t.Fatalf("before it was taken in there are %d athletes, %v", len(list), err)
	}
	apptest.Click(t, w, "take.in")
	if got := apptest.AthleteNamed(t, there, "Ravka"); got.ID != ravka.ID || !strings.Contains(*said, "were added") {
		t.Fatalf("taken in is %+v, said %q", got.Meta, *said)
	}
	edit(t, there, ravka.ID, func(a *record.Athlete) {
		a.Position, a.Note, a.UsualDrinking = "wing", "theirs", record.Num(1.4, quantity.LitrePerHour)
		a.Height = record.Num(1.712, quantity.Metre)
	})
	edit(t, here, ravka.ID, func(a *record.Athlete) { a.Note, a.Height = "ours", record.Num(1.711, quantity.Metre) })

	v, w, said = open(t, here)
	lookAt(t, w, send(t, there, ravka.ID), phrase)
	text := shows(v)
	for _, want := range []string{"One profile changes", "Changed on both sides", "For you to decide", "1.40\u00a0L/h", "Here: ours", "There: theirs", "Here: 1.711", "There: 1.712", "Your colleague’s applies."} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not shown: %q", want, text)
		}
	}
	apptest.Click(t, w, "take.in")
	now := apptest.AthleteNamed(t, here, "Ravka")
	if now.Position != "wing" || now.UsualDrinking.Or(0) != ravka.UsualDrinking.Or(0) {
		t.Errorf("taken in is %+v", now)
	}
	apptest.Click(t, w, "take.question.1.other")
	if now = apptest.AthleteNamed(t, here, "Ravka"); now.UsualDrinking.Or(0) != 1.4 || strings.Contains(shows(v), "For you to decide") {
		t.Errorf("once decided the athlete drinks %v", now.UsualDrinking.Or(0))
	}
	v.merges.table.Choose(0)
	v.merges.enable()
	apptest.Click(t, w, "take.undo")
	if !strings.Contains(*said, "Nothing was undone") {
		t.Errorf("after a decision the undo said %q", *said)
	}
}

// TestAWholeMergeIsTakenBack by one step.
func TestAWholeMergeIsTakenBack(t *testing.T) {
	here, _ := apptest.Demo(t)
	there, _ := apptest.Desk(t)
	v, w, said := open(t, there)
	lookAt(t, w, send(t, here, apptest.AthleteNamed(t, here, "Ravka").ID, apptest.AthleteNamed(t, here, "Mirel").ID), phrase)
	apptest.Click(t, w, "take.in")
	v.merges.table.Choose(0)
	v.merges.enable()
	apptest.Click(t, w, "take.undo")
	if list, err := there.Store.Athletes(t.Context()); err != nil || len(list) != 0 || !strings.Contains(*said, "removed again") {
		t.Errorf("there are %d athletes, %v, said %q", len(list), err, *said)
	}
}

// TestGuardsHoldForWhatComes: a gain in mass is a red flag, a plan above the limit is a
// draft, an impossible mass is not entered, a minor's mass is hidden, and nothing on the
// screen tells it.
func TestGuardsHoldForWhatComes(t *testing.T) { //nolint:gocognit // one guard after the other
	here, _ := apptest.Demo(t)
	there, _ := apptest.Desk(t)
	gained, agreed, child := apptest.AthleteNamed(t, here, "Ilse"), apptest.AthleteNamed(t, here, "Ravka"), apptest.AthleteNamed(t, here, "Mirel")
	b, err := here.Store.Pack(t.Context(), []record.ID{gained.ID, agreed.ID, child.ID}, "Elsewhere (invented)")
	if err != nil {
		t.Fatal(err)
	}
	b.Frozen, b.Raw = nil, nil
	for i := range b.Athletes {
		if b.Athletes[i].ID == child.ID {
			b.Athletes[i].MassHidden, b.Athletes[i].MassHiddenSettled, b.Athletes[i].UsualMass = false, true, record.Num(431, quantity.Kilogram)
		}
	}
	plans := 0
	for i := range b.Plans {
		if p := &b.Plans[i]; p.AthleteID == agreed.ID && p.State == record.PlanAgreed {
			plans++
			for j := range p.Options {
				for k := range p.Options[j].Items {
					if it := &p.Options[j].Items[k]; it.Volume.Known() {
						it.Volume = record.Num(9000, quantity.Millilitre)
					}
				}
			}
		}
	}
	if plans == 0 {
		t.Fatal("the invented practice has no agreed plan")
	}
	v, w, _ := open(t, there)
	lookAt(t, w, written(t, b), phrase)
	text := shows(v)
	for _, want := range []string{"This is a red flag", "comes as a draft", "is outside what can be entered", "For you to decide"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not shown: %q", want, text)
		}
	}
	if strings.Contains(text, "431") {
		t.Errorf("a hidden mass is shown: %q", text)
	}
	apptest.Click(t, w, "take.in")
	list, err := there.Store.Plans(t.Context(), agreed.ID)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range list {
		if p.State == record.PlanAgreed {
			t.Errorf("plan %q is agreed", p.Name)
		}
	}
	if got := apptest.AthleteNamed(t, there, "Mirel"); !got.MassHidden || got.UsualMass.Known() {
		t.Errorf("the minor came as %+v", got)
	}
}

// TestFilesThatAreRefused: a sentence each, and nothing is written.
func TestFilesThatAreRefused(t *testing.T) {
	here, _ := apptest.Demo(t)
	there, _ := apptest.Desk(t)
	file := send(t, here, apptest.AthleteNamed(t, here, "Ravka").ID)
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	put := func(name string, data []byte) string {
		path := filepath.Join(t.TempDir(), name)
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	broken := bytes.Clone(data)
	broken[len(broken)-40] ^= 1
	v, w, _ := open(t, there)
	for name, c := range map[string]struct{ path, want string }{
		"foreign": {put("x", []byte("hello")), "Ebbwell did not make this file"}, "damaged": {put("y", broken), "damaged or was changed"},
		"damaged or incomplete": {put("z", data[:len(data)-100]), "damaged or was changed"}, "none": {"/nowhere/at/all", "no file there"},
	} {
		lookAt(t, w, c.path, phrase)
		if text := shows(v); !strings.Contains(text, c.want) || apptest.Has(w, "take.in") {
			t.Errorf("%s: %q", name, text)
		}
	}
}

// TestChooseAFile: the path comes from the list of files, and a folder is refused as one.
func TestChooseAFile(t *testing.T) {
	here, _ := apptest.Demo(t)
	there, _ := apptest.Desk(t)
	file := send(t, here, apptest.AthleteNamed(t, here, "Ravka").ID)
	v, w, _ := open(t, there)
	apptest.Click(t, w, "take.choose")
	apptest.Type(t, w, "take.ask.path", file)
	apptest.Click(t, w, "take.ask.yes")
	if v.path.Text() != file || w.Canvas().Focused() != fyne.Focusable(v.pass) {
		t.Errorf("the path is %q, focus on %T", v.path.Text(), w.Canvas().Focused())
	}
	lookAt(t, w, filepath.Dir(file), phrase)
	if text := shows(v); !strings.Contains(text, "There is no file there") {
		t.Errorf("a folder: %q", text)
	}
}
