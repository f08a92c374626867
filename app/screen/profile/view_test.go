package profile

import (
	"context"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/care"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// A new athlete is in the records from the first letter of the name on.
func TestNewIsKeptFromTheFirstLetter(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{New: true})
	ctx := context.Background()
	if list, _ := d.Store.Athletes(ctx); len(list) != 0 {
		t.Fatal("somebody is kept before a letter is typed")
	}
	if born := b.v.b.Field("profile.born").Field; !born.Disabled() || b.v.Head().Athlete != "" {
		t.Error("a new athlete can be begun without a name")
	}
	apptest.Type(t, b.w, "profile.name", "A")
	if a := b.kept(); a.Name != "A" {
		t.Fatalf("kept as %q", a.Name)
	}
	if b.v.b.Field("profile.born").Field.Disabled() || b.v.Head().Athlete == "" || b.v.Place().Athlete != b.v.now().ID {
		t.Error("the profile is not open after the first letter")
	}
	apptest.Type(t, b.w, "profile.name", "Ann Weirside")
	b.enter("profile.born", "3.2.1999")
	b.enter("profile.height", "171")
	b.enter("profile.mass", "64,5")
	b.click("profile.mass.hide")
	b.enter("profile.position", "keeper")
	b.enter("profile.usual", "0.6")
	b.enter("profile.mouthful", "35")
	b.enter("profile.note", "prefers the cold")
	a := b.kept()
	if a.Name != "Ann Weirside" || a.Born != "1999-02-03" || a.Height.Or(0) != 1.71 || a.UsualMass.Or(0) != 64.5 || a.Position != "keeper" ||
		a.UsualDrinking.Or(0) != 0.6 || a.Mouthful.Or(0) != 35 || a.Note != "prefers the cold" || !a.MassHidden || !a.MassHiddenSettled {
		t.Errorf("kept %+v", a)
	}
	if age := b.v.parts.person.age.Text(); age != "27 years" {
		t.Errorf("the age is read back as %q", age)
	}
	b.v.Leave()
	again := openProfile(t, d, desk.Place{Athlete: a.ID})
	if got := apptest.Text(t, again.w, "profile.name"); got != "Ann Weirside" {
		t.Errorf("reopened as %q", got)
	}
}

// One who was begun and taken back again leaves no nameless line behind.
func TestBegunAndTakenBack(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{New: true})
	b.enter("profile.name", "X")
	b.kept()
	b.enter("profile.name", "")
	for range 2 {
		b.v.Leave()
		if !b.v.b.FlushNow() {
			t.Fatal("not saved")
		}
		b.v.ClearUp(desk.Place{Screen: desk.Athletes})
	}
	if list, _ := d.Store.Athletes(context.Background()); len(list) != 0 || len(*b.said) != 0 {
		t.Errorf("left behind: %+v, said %v", list, *b.said)
	}
}

func TestMinorComesFirst(t *testing.T) {
	d, _ := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	b := openProfile(t, d, desk.Place{Athlete: a.ID})
	if apptest.Has(b.w, "profile.minor.guardian") || b.v.parts.test.Disabled() {
		t.Fatal("an adult is asked for a guardian, or kept from a test")
	}
	b.enter("profile.born", "4.3.2011")
	if !apptest.Has(b.w, "profile.minor.guardian") || !b.v.parts.test.Disabled() || apptest.Has(b.w, "profile.mass.hide") {
		t.Fatal("guardian, assent and mass do not come first, or a sheet may begin before")
	}
	if title, sentence := b.v.parts.minor.caution.Text(); title == "" || !strings.Contains(sentence, "guardian") || !strings.Contains(sentence, "assent") || !strings.Contains(sentence, "mass") {
		t.Errorf("said %q, %q", title, sentence)
	}
	if top := b.v.parts.minor.body.Position().Y; top > b.v.parts.person.body.Position().Y+1 && top != 0 {
		t.Errorf("the minor's part stands %g px down", top)
	}
	if apptest.Has(b.w, "profile.mass") || !apptest.Has(b.w, "profile.mass.show") {
		t.Error("the mass of a minor is in sight")
	}
	b.enter("profile.minor.guardian", "Mother of Ravka")
	b.enter("profile.minor.assent", "t")
	toggle := b.v.b.Field("profile.minor.mass").Field.(interface{ TypedKey(*fyne.KeyEvent) })
	toggle.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	kept := b.kept()
	if care := care.Of(kept, d.Now()); len(care.Outstanding) != 0 || kept.Guardian != "Mother of Ravka" || kept.Assent != "2026-05-18" {
		t.Fatalf("still open: %v; %+v", care.Outstanding, kept)
	}
	if b.v.parts.test.Disabled() {
		t.Error("a settled minor is kept from a test")
	}
	if len(kept.Consents) != 1 || kept.Consents[0].Purpose != record.ConsentTest || kept.Consents[0].Given != "2026-05-18" {
		t.Errorf("the one answer is kept as %+v", kept.Consents)
	}
	if by := apptest.Text(t, b.w, "profile.consent.1.by"); by != "Mother of Ravka and Ravka Oldenmoor" {
		t.Errorf("the consent reads as given by %q", by)
	}
	if text := strings.Join(apptest.Texts(b.w.Content()), " "); !strings.Contains(text, "Do Mother of Ravka and Ravka Oldenmoor both agree to the test?") {
		t.Error("the question does not name both")
	}
	b.click("profile.consent.add")
	if kept := b.kept(); len(kept.Consents) != 2 || kept.Consents[1].Purpose == record.ConsentTest {
		t.Errorf("the next consent is for what is settled already: %+v", kept.Consents)
	}
}

// A hidden mass is kept out of sight, also in the corrections; it can be
// entered, and is out of sight again when the field is left.
func TestHiddenMassIsOutOfSight(t *testing.T) {
	d, _ := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	b := openProfile(t, d, desk.Place{Athlete: a.ID})
	b.enter("profile.mass", "65")
	b.click("profile.flag.eating-disorder-or-reds")
	if found := apptest.Revealing(append(apptest.VisibleTexts(b.v.body), b.v.Head().Under)); len(found) > 0 || apptest.Has(b.w, "profile.mass") {
		t.Errorf("to be read: %q", found)
	}
	if all := strings.Join(apptest.Texts(b.w.Content()), " "); strings.Contains(all, "65") {
		t.Errorf("the mass is to be read in %s", all)
	}
	b.click("profile.mass.show")
	if !apptest.Has(b.w, "profile.mass") {
		t.Fatal("the field of the mass does not appear")
	}
	b.enter("profile.mass", "66")
	if apptest.Has(b.w, "profile.mass") || b.kept().UsualMass.Or(0) != 66 {
		t.Errorf("the mass stays in sight, or is kept as %v", b.kept().UsualMass.Or(0))
	}
	b.click("profile.mass.hide") // the practitioner settles otherwise
	if a := b.kept(); !apptest.Has(b.w, "profile.mass") || a.MassHidden || !a.MassHiddenSettled {
		t.Error("a settled choice does not count")
	}
}

// A condition that hides body mass hides it again, whatever was chosen before it
// was known; shown it is only by a choice made with it.
func TestFlagHidesMassAgain(t *testing.T) {
	d, _ := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	b := openProfile(t, d, desk.Place{Athlete: a.ID})
	b.click("profile.mass.hide")
	b.click("profile.mass.hide")
	if kept := b.kept(); kept.MassHidden || !kept.MassHiddenSettled || !apptest.Has(b.w, "profile.mass") {
		t.Fatalf("shown by choice, and kept %v, %v", kept.MassHidden, kept.MassHiddenSettled)
	}
	b.click("profile.flag.heart") // hides nothing
	if !apptest.Has(b.w, "profile.mass") {
		t.Error("another condition hides the mass")
	}
	b.click("profile.flag.eating-disorder-or-reds")
	if kept := b.kept(); !care.MassHidden(kept, d.Now()) || apptest.Has(b.w, "profile.mass") {
		t.Fatal("the mass stays in sight")
	}
	b.click("profile.mass.hide")
	if kept := b.kept(); care.MassHidden(kept, d.Now()) || !apptest.Has(b.w, "profile.mass") {
		t.Error("the practitioner cannot show it again")
	}
}

// Until the birth date is known the mass is out of sight, which is said; the
// place that asks for the date gives it the keyboard.
func TestMassWaitsForTheBirthDate(t *testing.T) {
	d, _ := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	a.Born = ""
	a = apptest.Save(t, d, a)
	b := openProfile(t, d, desk.Place{Athlete: a.ID, Part: desk.PartMinor})
	b.v.Shown()
	if typing, ok := b.w.Canvas().Focused().(interface{ Name() string }); !ok || typing.Name() != "profile.born" {
		t.Errorf("the keyboard is at %v", b.w.Canvas().Focused())
	}
	why := d.Words.Say("profile.mass.born")
	said := func() bool {
		return strings.Contains(strings.Join(strings.Fields(strings.Join(apptest.VisibleTexts(b.v.body), " ")), " "), why)
	}
	if apptest.Has(b.w, "profile.mass") || apptest.Has(b.w, "profile.mass.hide") || !said() || !b.v.parts.test.Disabled() {
		t.Error("the mass is in sight, can be settled, or it is not said why not; or a sheet may begin")
	}
	b.enter("profile.born", "4.3.1999")
	if !apptest.Has(b.w, "profile.mass") || !apptest.Has(b.w, "profile.mass.hide") || said() || b.v.parts.test.Disabled() {
		t.Error("the birth date is known, and the mass stays hidden, or no sheet begins")
	}
}

func TestFlags(t *testing.T) {
	d, _ := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	b := openProfile(t, d, desk.Place{Athlete: a.ID})
	for _, e := range care.Effects() {
		name := "profile.flag." + string(e.Kind)
		if e.Kind == record.FlagMinor {
			if apptest.Has(b.w, name) {
				t.Error("the age can be ticked")
			}
			continue
		}
		if apptest.Has(b.w, name+".note") {
			t.Fatalf("%s asks before it is ticked", e.Kind)
		}
		b.click(name)
		if !apptest.Has(b.w, name+".note") || apptest.Has(b.w, name+".physician") != e.Physician {
			t.Errorf("%s: note or physician are not asked as the table says", e.Kind)
		}
		if all := strings.Join(strings.Fields(strings.Join(apptest.Texts(b.w.Content()), " ")), " "); !strings.Contains(all, d.Words.Say("flag."+string(e.Kind)+".effect")) {
			t.Errorf("%s does not say what it changes", e.Kind)
		}
	}
	b.enter("profile.flag.heart.note", "murmur")
	b.enter("profile.flag.heart.physician", "Dr Venn")
	b.click("profile.flag.kidney")
	kept := b.kept()
	heart := flagOf(&kept, record.FlagHeart)
	if heart == nil || heart.Note != "murmur" || heart.Physician != "Dr Venn" || flagOf(&kept, record.FlagKidney) != nil || len(kept.Flags) != len(care.Effects())-2 {
		t.Errorf("kept %+v", kept.Flags)
	}
	if care := care.Of(kept, d.Now()); slices.Contains(care.NeedsPhysician, record.FlagHeart) {
		t.Error("the physician does not count")
	}
	if !b.v.Undo() || flagOf(ptr(b.kept()), record.FlagKidney) == nil || !apptest.Has(b.w, "profile.flag.kidney.note") {
		t.Error("a condition taken out does not come back")
	}
	if !b.v.Redo() || flagOf(ptr(b.kept()), record.FlagKidney) != nil {
		t.Error("redo")
	}
}

func ptr(a record.Athlete) *record.Athlete { return &a }

func TestGroups(t *testing.T) {
	d, _ := apptest.Desk(t)
	ctx := context.Background()
	squad, err := d.Store.SaveGroup(ctx, record.Group{Meta: record.Meta{ID: record.NewID()}, Name: "Tideway squad"}, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	b.pick("profile.group.add", "tideway squad")
	b.pick("profile.group.add", "Juniors")
	kept := b.kept()
	if len(kept.Memberships) != 2 || kept.Memberships[0].GroupID != squad.ID || apptest.Text(t, b.w, "profile.group.add") != "" {
		t.Fatalf("memberships %+v", kept.Memberships)
	}
	if groups, _ := d.Store.Groups(ctx); len(groups) != 2 || groups[0].Name != "Juniors" {
		t.Errorf("groups %+v", groups)
	}
	if len(*b.said) != 1 {
		t.Fatalf("said %v", *b.said)
	}
	(*b.undo)()
	if groups, _ := d.Store.Groups(ctx); len(groups) != 1 || len(b.kept().Memberships) != 1 {
		t.Errorf("a group taken back is still there: %+v", groups)
	}
	b.click("profile.group.1.leave")
	if len(b.kept().Memberships) != 0 || apptest.Has(b.w, "profile.group.1.leave") {
		t.Error("left, and still there")
	}
	if !b.v.Undo() || len(b.kept().Memberships) != 1 || !apptest.Has(b.w, "profile.group.1.leave") {
		t.Error("undo does not bring the group back")
	}
}

func TestConsents(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	b.click("profile.consent.add")
	b.click("profile.consent.add")
	b.enter("profile.consent.1.until", "30.6.2026")
	b.enter("profile.consent.2.by", "The guardian")
	b.enter("profile.consent.2.given", "1 May")
	b.enter("profile.consent.2.withdrawn", "someday")
	a := b.kept()
	if len(a.Consents) != 2 || a.Consents[0].Purpose != record.ConsentTest || a.Consents[1].Purpose != record.ConsentUrine ||
		a.Consents[0].Until != "2026-06-30" || a.Consents[1].GivenBy != "The guardian" || a.Consents[1].Given != "2026-05-01" || a.Consents[1].Withdrawn != "" {
		t.Fatalf("kept %+v", a.Consents)
	}
	if got := b.raw("consents."+string(a.Consents[1].ID)+".withdrawn", false); got != "someday" {
		t.Errorf("what could not be read is kept as %q", got)
	}
	again := openProfile(t, d, desk.Place{Athlete: a.ID, Part: desk.PartConsents})
	if got := apptest.Text(t, again.w, "profile.consent.2.withdrawn"); got != "someday" {
		t.Errorf("reopened as %q", got)
	}
	again.click("profile.consent.1.remove")
	if got := again.kept().Consents; len(got) != 1 || got[0].Purpose != record.ConsentUrine || apptest.Text(t, again.w, "profile.consent.1.by") != "The guardian" {
		t.Errorf("kept %+v", got)
	}
	if !again.v.Undo() || len(again.kept().Consents) != 2 || apptest.Text(t, again.w, "profile.consent.1.until") != "30 June 2026" {
		t.Error("undo does not bring the consent back")
	}
}

func TestTenMouthfuls(t *testing.T) {
	d, _ := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	b.click("profile.mouthful.ten")
	apptest.Type(t, b.w, "profile.ten.before", "800")
	apptest.Type(t, b.w, "profile.ten.after", "810")
	b.click("profile.ten.yes")
	if !apptest.Has(b.w, "profile.ten.yes") || b.kept().Mouthful.Known() {
		t.Fatal("a bottle that grew heavier gives a mouthful")
	}
	apptest.Type(t, b.w, "profile.ten.after", "420")
	b.click("profile.ten.yes")
	if got := b.kept().Mouthful.Or(0); got < 37.8 || got > 38.3 || apptest.Text(t, b.w, "profile.mouthful") != "38" {
		t.Errorf("a mouthful of %g, shown as %q", got, apptest.Text(t, b.w, "profile.mouthful"))
	}
}
