package practice

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/assets"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// open shows a part of the practice in a window.
func open(t testing.TB, d *desk.Desk, part string) (*View, fyne.Window) {
	t.Helper()
	v, err := New(d, desk.Place{Screen: desk.Practice, Part: part})
	if err != nil {
		t.Fatal(err)
	}
	return v, apptest.Window(t, v.Body(), 1000, 704, false, 100)
}

func kept(t testing.TB, d *desk.Desk) record.Practice {
	t.Helper()
	if err := d.Keep.Flush(context.Background()); err != nil {
		t.Fatal(err)
	}
	p, err := d.Store.Practice(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The method of the sweat rate is one for the practice, and the desk knows it.
func TestMethodIsKept(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, _ := open(t, d, PartStandards)
	toggle := v.b.Field("practice.method").Field.(*field.Toggle)
	if toggle.Chosen() != methodCorrected {
		t.Errorf("at first it is %q", toggle.Chosen())
	}
	for key, uncorrected := range map[string]bool{methodField: true, methodCorrected: false} {
		toggle.OnChosen(key)
		if kept(t, d).Settings.FieldMethod != uncorrected || d.Calculate().Settings.FieldMethod != uncorrected {
			t.Errorf("%s is not kept", key)
		}
	}
}

// How far breaks are filled is one for the practice, and the desk knows it.
func TestBreaksAreKept(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, _ := open(t, d, PartStandards)
	toggle := v.b.Field("practice.breaks").Field.(*field.Toggle)
	if toggle.Chosen() != breaksFull {
		t.Errorf("at first it is %q", toggle.Chosen())
	}
	for _, key := range []string{breaksComfortable, breaksFull} {
		toggle.OnChosen(key)
		if only := key == breaksComfortable; kept(t, d).Settings.ComfortableOnly != only || d.Calculate().Settings.ComfortableOnly != only {
			t.Errorf("%s is not kept", key)
		}
	}
}

func TestHouseIsKept(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, w := open(t, d, "")
	for name, text := range map[string]string{"name": "Practice of mine", "practitioner": "Somebody Else", "registration": "SD 1", "telephone": "123", "emergency": "000"} {
		apptest.Type(t, w, "practice."+name, text)
		apptest.Leave(w)
	}
	p := kept(t, d)
	if p.Name != "Practice of mine" || p.Practitioner != "Somebody Else" || p.Registration != "SD 1" || p.Telephone != "123" || p.Emergency != "000" {
		t.Errorf("kept %+v", p)
	}
	if d.Practice().Practitioner != "Somebody Else" || v.Head().Under != "Practice of mine" {
		t.Error("the desk, or the head, does not know yet")
	}
	// Who makes the entries from now on.
	a := apptest.Athlete(t, d)
	if a.CreatedBy != "Somebody Else" {
		t.Errorf("the next entry is by %q", a.CreatedBy)
	}
	apptest.Type(t, w, "practice.emergency", "")
	apptest.Leave(w)
	if title, _ := v.made[PartHouse].(*house).caution.Text(); title != "No emergency number" {
		t.Errorf("without a number to call the caution is %q", title)
	}
}

func TestSettingsRedrawTheWindow(t *testing.T) {
	d, _ := apptest.Desk(t)
	redrawn := 0
	d.SettingsChanged = func() { redrawn++ }
	v, _ := open(t, d, PartHouse)
	for name, c := range map[string]struct {
		key  string
		want func(record.Settings) bool
	}{
		"units": {us, func(s record.Settings) bool { return s.Units == "us" }},
		"theme": {dark, func(s record.Settings) bool { return s.Theme == "dark" }},
		"text":  {"150", func(s record.Settings) bool { return s.TextSize == 150 }},
	} {
		before := redrawn
		toggle := v.b.Field("practice." + name).Field.(*field.Toggle)
		toggle.OnChosen(c.key)
		if !c.want(kept(t, d).Settings) || !c.want(d.Practice().Settings) || redrawn != before+1 {
			t.Errorf("%s: kept %+v, redrawn %d times", name, kept(t, d).Settings, redrawn-before)
		}
	}
	if !v.Undo() || kept(t, d).Settings == (record.Settings{}) || redrawn != 4 {
		t.Errorf("undo redraws %d times", redrawn)
	}
	v.b.Field("practice.theme").Field.(*field.Toggle).OnChosen(light)
	if got := kept(t, d).Settings.Theme; got != "" {
		t.Errorf("light is kept as %q", got)
	}
	if v.Place().Part != PartHouse {
		t.Errorf("the place is %+v", v.Place())
	}
}

func TestBandsAndLimit(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, w := open(t, d, PartStandards)
	s := v.made[PartStandards].(*standards)
	if s.bands.Row(0)[1] != "up to 1.020" || !strings.Contains(s.source.Text(), "2007") || apptest.Has(w, "practice.edge.well") {
		t.Errorf("at first the bands are %q, %q", s.bands.Row(0), s.source.Text())
	}
	sets := v.b.Field("practice.bands").Field.(*field.Toggle)
	sets.OnChosen(evidence.SetNATA)
	if kept(t, d).Settings.UrineBands != evidence.SetNATA || s.bands.Rows() < 8 || s.bands.Row(0)[1] != "below 1.010" {
		t.Errorf("NATA 2000: %d bands, the first %q", s.bands.Rows(), s.bands.Row(0))
	}
	sets.OnChosen(evidence.SetOwn)
	apptest.Type(t, w, "practice.edge.well", "1,015")
	apptest.Type(t, w, "practice.edge.great", "1.010")
	apptest.Leave(w)
	if title, _ := s.caution.Text(); title == "" {
		t.Error("edges that fall are not said")
	}
	apptest.Type(t, w, "practice.edge.great", "1.028")
	apptest.Type(t, w, "practice.deficit", "2.5")
	apptest.Leave(w)
	if title, _ := s.caution.Text(); title != "" {
		t.Errorf("edges that rise: %q", title)
	}
	p := kept(t, d).Settings
	if p.OwnGravityWell.Or(0) != 1.015 || p.OwnGravityGreat.Or(0) != 1.028 || p.DeficitAim.Or(0) != 2.5 {
		t.Errorf("kept %+v", p)
	}
	if d.Calculate().Settings.DeficitAim.Or(0) != 2.5 {
		t.Error("plans do not calculate with the limit yet")
	}
	// What cannot be a limit is kept as typed, and not calculated with.
	apptest.Type(t, w, "practice.deficit", "60")
	apptest.Leave(w)
	if got := kept(t, d).Settings.DeficitAim; got.Known() {
		t.Errorf("a limit of %g %% is calculated with", *got.Value)
	}
	_, again := open(t, d, PartStandards)
	if got := apptest.Text(t, again, "practice.deficit"); got != "60" {
		t.Errorf("opened again it reads %q", got)
	}
}

// Every field of the screen is one the store has a history for.
func TestPathsAreFields(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, _ := open(t, d, PartStandards)
	fields, err := store.Fields(record.KindPractice)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range v.b.Fields() {
		if f.Path != nil && !slices.Contains(fields, f.Path(v.now())) {
			t.Errorf("%s is kept under %q, which is none of %q", f.Name, f.Path(v.now()), fields)
		}
	}
}

func TestThresholdsAreSearched(t *testing.T) {
	d, _ := apptest.Desk(t)
	v, w := open(t, d, PartThresholds)
	e := v.made[PartThresholds].(*thresholds)
	apptest.Type(t, w, "practice.thresholds.search", "specific gravity euhydrated")
	if e.table.Rows() != 1 || e.table.Row(0)[1] != "1.02" || !strings.Contains(e.source.Text(), "quoted in a second text") {
		t.Errorf("found %d, %q", e.table.Rows(), e.source.Text())
	}
	apptest.Type(t, w, "practice.thresholds.search", "qqq")
	if e.table.Rows() != 0 || !strings.Contains(e.what.Text(), "No figure") {
		t.Errorf("nothing found says %q", e.what.Text())
	}
}

func TestBackUpAndRestore(t *testing.T) {
	d, _ := apptest.Desk(t)
	said, redrawn := "", 0
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	d.SettingsChanged = func() { redrawn++ }
	v, w := open(t, d, PartRecords)
	r := v.made[PartRecords].(*records)
	file := filepath.Join(t.TempDir(), "copy.db")
	apptest.Click(t, w, "practice.backup")
	apptest.Type(t, w, "practice.backup.ask.path", file)
	apptest.Click(t, w, "practice.backup.ask.yes")
	if info, err := os.Stat(file); err != nil || info.Size() == 0 || !strings.Contains(said, "copy.db") {
		t.Fatalf("no backup: %v, said %q", err, said)
	}
	v.showPart(PartHouse)
	apptest.Type(t, w, "practice.name", "Changed since")
	apptest.Leave(w)
	v.showPart(PartRecords)
	apptest.Click(t, w, "practice.restore.file")
	apptest.Type(t, w, "practice.restore.path", file)
	apptest.Click(t, w, "practice.restore.from.yes")
	if got := kept(t, d).Name; got != "Changed since" {
		t.Fatalf("looking into a file changed the records: the practice is %q", got)
	}
	apptest.Click(t, w, "practice.restore.swap.yes")
	if got := kept(t, d).Name; got != "Saltmarsh Practice (invented)" || redrawn != 1 || !strings.Contains(said, "Restored") {
		t.Errorf("restored the practice is %q, redrawn %d times, said %q", got, redrawn, said)
	}
	// What was there before is set aside, and can be restored in its turn.
	r.load()
	i := slices.IndexFunc(r.list.copies, func(c store.Snapshot) bool { return c.Reason == store.SnapshotSetAside })
	if i < 0 {
		t.Fatal("nothing was set aside")
	}
	r.copies.Choose(i)
	r.enable()
	apptest.Click(t, w, "practice.restore")
	apptest.Click(t, w, "practice.restore.ask.no")
	if got := kept(t, d).Name; got == "Changed since" {
		t.Fatal("restored without being asked to")
	}
	apptest.Click(t, w, "practice.restore")
	apptest.Click(t, w, "practice.restore.ask.yes")
	if got := kept(t, d).Name; got != "Changed since" {
		t.Errorf("the copy set aside holds %q", got)
	}
}

func TestWhatCannotBeRestored(t *testing.T) {
	d, _ := apptest.Desk(t)
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	v, w := open(t, d, PartRecords)
	r := v.made[PartRecords].(*records)
	bad := filepath.Join(t.TempDir(), "bad.db")
	if err := os.WriteFile(bad, []byte("not a database, not at all"), 0o600); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{bad: "damaged", filepath.Join(filepath.Dir(bad), "none.db"): "no such file"} {
		r.restoreFrom(store.Snapshot{Path: path}, "x", func() {})
		if !strings.Contains(said, want) || !strings.Contains(said, "as they were") {
			t.Errorf("%s: %q", path, said)
		}
	}
	if kept(t, d).Name != "Saltmarsh Practice (invented)" {
		t.Error("the records are not as they were")
	}
	// A backup does not go into the data folder.
	apptest.Click(t, w, "practice.backup")
	apptest.Type(t, w, "practice.backup.ask.path", filepath.Join(d.Store.Dir(), "copy.db"))
	apptest.Click(t, w, "practice.backup.ask.yes")
	if !apptest.Has(w, "practice.backup.ask.path") {
		t.Error("a backup went into the data folder")
	}
}

func TestBringBack(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	if err := d.Store.Delete(context.Background(), record.Ref{Kind: record.KindAthlete, ID: a.ID}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	v, w := open(t, d, PartRecords)
	r := v.made[PartRecords].(*records)
	if r.deleted.Rows() != 1 || r.deleted.Row(0)[0] != "Athlete: Ravka Oldenmoor" {
		t.Fatalf("%d deleted", r.deleted.Rows())
	}
	r.deleted.Choose(0)
	r.enable()
	apptest.Click(t, w, "practice.bringback")
	if _, err := d.Store.LoadAthlete(context.Background(), a.ID); err != nil || r.deleted.Rows() != 0 || apptest.Has(w, "practice.bringback") {
		t.Errorf("not brought back: %v, %d left", err, r.deleted.Rows())
	}
}

func TestRetention(t *testing.T) {
	d, went := apptest.Demo(t)
	v, w := open(t, d, PartRecords)
	k := v.made[PartRecords].(*records).keeping
	if got := apptest.Text(t, w, "practice.retention"); got != "10" || k.table.Rows() != 0 {
		t.Fatalf("kept for %q years, %d past it", got, k.table.Rows())
	}
	apptest.Type(t, w, "practice.retention", "")
	apptest.Leave(w)
	if kept(t, d).Settings.RetentionYears != 0 || !strings.Contains(k.words.Text(), "No period is set") {
		t.Errorf("without years: %q", k.words.Text())
	}
	apptest.Type(t, w, "practice.retention", "7")
	apptest.Leave(w)
	if kept(t, d).Settings.RetentionYears != 7 {
		t.Errorf("kept %d years", kept(t, d).Settings.RetentionYears)
	}
	k.past = []past{{id: "someone"}}
	k.table.OnOpened(0)
	if len(*went) != 1 || (*went)[0].Screen != desk.Profile || (*went)[0].Athlete != "someone" {
		t.Errorf("went to %+v", *went)
	}
}

func TestLicenceCanBeRead(t *testing.T) {
	d, _ := apptest.Desk(t)
	_, w := open(t, d, PartAbout)
	apptest.Click(t, w, "practice.about.licence")
	if !apptest.Has(w, "practice.licence.close") {
		t.Error("the licence is not shown")
	}
}

// The list of changes is read in the language of the window, without the marks of its file.
func TestChangesAreRead(t *testing.T) {
	english, _ := apptest.Desk(t)
	for _, tag := range words.Languages() {
		_, w := open(t, apptest.ReadsIn(t, english, tag), PartAbout)
		apptest.Click(t, w, "practice.about.changes")
		text := strings.Join(apptest.Texts(w.Canvas().Overlays().Top()), "\n")
		_, first, _ := strings.Cut(assets.Changes(tag.String()), "\n- ")
		first, _, _ = strings.Cut(first, "\n")
		if !strings.Contains(text, "• "+first) || strings.Contains(text, "## ") {
			t.Errorf("%s: one reads %.200q", tag, text)
		}
	}
}
