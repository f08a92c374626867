package bundle

import (
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestThereAndBackChangesNothing: a bundle to another practice and back brings nothing.
func TestThereAndBackChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		here := drawn(t)
		there := &practice{by: "Bo", clock: here.clock}
		first := Merge(there.Here, through(t, here.pack()), now())
		if len(first.Decisions)+len(first.Held)+len(first.Conflicts)+len(first.Left) > 0 {
			t.Fatalf("a first bundle asks something: %+v", first)
		}
		there.take(first)
		if again := Merge(there.Here, through(t, here.pack()), now()); !again.Nothing() {
			t.Fatalf("the same bundle twice brings %+v", again)
		}
		if back := Merge(here.Here, through(t, there.pack()), now()); !back.Nothing() || len(back.Conflicts) > 0 {
			t.Fatalf("there and back brings %+v", back)
		}
	})
}

// TestOrderDoesNotMatter: what each side changed by itself comes together the same,
// whoever takes whose bundle.
func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := drawn(t)
		for _, c := range plainChanges() { // what both know of is nobody's own
			if rapid.Bool().Draw(t, "before") {
				c.do(base, "before")
			}
		}
		one, two := base.other("Ada"), base.other("Bo")
		n := 0
		for i, c := range plainChanges() {
			side := one
			if rapid.Bool().Draw(t, "side") {
				side = two
			}
			if rapid.Bool().Draw(t, "made") && c.do(side, fmt.Sprint("text ", i)) {
				n++
			}
		}
		a, b := one.other("Ada"), two.other("Bo")
		first, second := Merge(a.Here, through(t, two.pack()), now()), Merge(b.Here, through(t, one.pack()), now())
		if len(first.Conflicts)+len(second.Conflicts)+len(first.Decisions)+len(second.Decisions) > 0 {
			t.Fatalf("of %d edits of different fields: %+v, %+v", n, first, second)
		}
		a.take(first)
		b.take(second)
		if a.content() != b.content() {
			t.Fatalf("from here\n%s\nfrom there\n%s", a.content(), b.content())
		}
		if back := Merge(a.Here, through(t, b.pack()), now()); !back.Nothing() {
			t.Fatalf("after both it brings %+v", back)
		}
	})
}

// TestTheNewerStandsAndTheOtherIsKept: of a field that both sides changed.
func TestTheNewerStandsAndTheOtherIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := drawn(t)
		one, two := base.other("Ada"), base.other("Bo")
		sides, texts := []*practice{one, two}, []string{"ours", "theirs"}
		last := rapid.IntRange(0, 1).Draw(t, "last")
		plainChanges()[0].do(sides[1-last], texts[1-last])
		plainChanges()[0].do(sides[last], texts[last])
		r := Merge(one.Here, through(t, two.pack()), now())
		if len(r.Conflicts) != 1 || r.Conflicts[0].Path != "note" || r.Conflicts[0].TheirsStands != (last == 1) || r.Conflicts[0].Ours.Text != "ours" || r.Conflicts[0].Theirs.Text != "theirs" {
			t.Fatalf("%+v", r.Conflicts)
		}
		one.take(r)
		if one.Athletes[0].Note != texts[last] {
			t.Fatalf("what stands is %q", one.Athletes[0].Note)
		}
		for _, text := range texts {
			if !slices.ContainsFunc(one.Changes, func(c record.Change) bool { return c.Field == "note" && c.After == text }) {
				t.Fatalf("%q is in no history", text)
			}
		}
	})
}

// TestClosedSheetsAreTakenWhole: nobody closed a mixture; the red flag's lines of both
// sides are there.
func TestClosedSheetsAreTakenWhole(t *testing.T) {
	clock := now()
	base := &practice{by: "Ada", clock: &clock}
	x := record.Test{Meta: record.Meta{ID: "t", ChangedAt: now()}, AthleteID: "a", State: record.TestClosed, Note: "n"}
	base.Athletes, base.Tests = []record.Athlete{{Meta: record.Meta{ID: "a"}, Born: "1999-01-01"}}, []record.Test{x}
	base.log(record.KindTest, "t", "", "", present)
	one, two := base.other("Ada"), base.other("Bo")
	one.Tests[0].Note, one.Tests[0].Session.Place = "ours", "hall"
	one.log(record.KindTest, "t", "note", "n", "ours")
	two.Tests[0].Note, two.Tests[0].Session.Sport = "theirs", "row"
	two.log(record.KindTest, "t", "note", "n", "theirs")
	two.Frozen = []record.Frozen{{ID: "f2", Kind: record.KindTest, Record: "t", Number: 2}}
	one.Frozen = []record.Frozen{{ID: "f1", Kind: record.KindTest, Record: "t", Number: 2}}
	for i, p := range []*practice{one, two} {
		id := record.ID(fmt.Sprint("s", i))
		p.Tests[0].Safety = []record.SafetyNote{{Meta: record.Meta{ID: id}, TestID: "t", Kind: record.SafetyTold}}
		p.log(record.KindTest, "t", "safety."+string(id), "", present)
	}
	r := Merge(one.Here, through(t, two.pack()), now())
	if len(r.Tests) != 1 || r.Tests[0].Note != "theirs" || r.Tests[0].Session.Place != "" || r.Tests[0].Session.Sport != "row" || len(r.Tests[0].Safety) != 2 {
		t.Fatalf("%+v", r.Tests)
	}
	if len(r.Frozen) != 1 || r.Frozen[0].Number != 3 || len(r.Conflicts) != 1 {
		t.Errorf("%+v, %+v", r.Frozen, r.Conflicts)
	}
	r = Merge(two.Here, through(t, one.pack()), now())
	if len(r.Tests) != 1 || r.Tests[0].Note != "theirs" || len(r.Tests[0].Safety) != 2 || r.Frozen[0].Number != 0 {
		t.Errorf("%+v, %+v", r.Tests, r.Frozen)
	}
}

// TestAnAgreedPlanStands: what was agreed here stays until a person takes theirs.
func TestAnAgreedPlanStands(t *testing.T) {
	clock := now()
	base := &practice{by: "Ada", clock: &clock}
	base.Athletes = []record.Athlete{{Meta: record.Meta{ID: "a"}, Born: "1999-01-01"}}
	base.Plans = []record.Plan{{Meta: record.Meta{ID: "p"}, AthleteID: "a", State: record.PlanAgreed, Aims: record.Aims{Drinking: record.Num(0.5, quantity.LitrePerHour)}}}
	base.log(record.KindPlan, "p", "", "", present)
	one, two := base.other("Ada"), base.other("Bo")
	two.Plans[0].Aims.Drinking = record.Num(1.5, quantity.LitrePerHour)
	two.log(record.KindPlan, "p", "aims.drinking", "0.5 L/h", "1.5 L/h")
	r := Merge(one.Here, through(t, two.pack()), now())
	if len(r.Plans) != 0 || len(r.Decisions) != 1 || r.Decisions[0].Act != ActWhole {
		t.Errorf("%+v, %+v", r.Plans, r.Decisions)
	}
}

// TestErasedStaysErased: who was erased here does not come back by a bundle.
func TestErasedStaysErased(t *testing.T) {
	clock := now()
	p := &practice{by: "Ada", clock: &clock}
	p.Athletes = []record.Athlete{{Meta: record.Meta{ID: "a"}}}
	p.Tests = []record.Test{{Meta: record.Meta{ID: "t"}, AthleteID: "a"}}
	p.log(record.KindTest, "t", "", "", present)
	r := Merge(Here{Gone: map[record.Ref]bool{{Kind: record.KindAthlete, ID: "a"}: true}}, through(t, p.pack()), now())
	if !r.Nothing() || len(r.Left) != 1 {
		t.Errorf("%+v", r)
	}
}

func TestFilesThatAreRefused(t *testing.T) {
	var newer, cut bytes.Buffer
	b := drawnOnce()
	if err := Write(&cut, b, "1"); err != nil {
		t.Fatal(err)
	}
	line := func(s string) []byte { return gzipped(t, s) }
	newer.Write(line(`{"Format":"ebbwell bundle","Version":99}` + "\n{}"))
	strayed := b
	strayed.Tests = append(slices.Clone(b.Tests), record.Test{Meta: record.Meta{ID: "x"}, AthleteID: "nobody"})
	var stray bytes.Buffer
	if err := Write(&stray, strayed, "1"); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		data []byte
		want error
	}{
		"nothing": {nil, ErrForeign}, "a text": {[]byte("hello"), ErrForeign}, "another zip": {line("hello\nworld"), ErrForeign},
		"newer": {newer.Bytes(), ErrNewer}, "cut off": {cut.Bytes()[:cut.Len()-20], ErrDamaged}, "of nobody": {stray.Bytes(), ErrDamaged},
	} {
		if _, err := Read(bytes.NewReader(c.data)); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
}

func FuzzRead(f *testing.F) {
	var out bytes.Buffer
	if err := Write(&out, drawnOnce(), "1"); err != nil {
		f.Fatal(err)
	}
	f.Add(out.Bytes())
	f.Add([]byte("\x1f\x8b"))
	f.Fuzz(func(t *testing.T, data []byte) {
		read(t, data)
		read(t, gzipped(t, `{"Format":"ebbwell bundle","Version":1}`+"\n"+string(data)))
	})
}

// read reads, and merges what can be read into nothing and into itself.
func read(t *testing.T, data []byte) {
	t.Helper()
	b, err := Read(bytes.NewReader(data))
	if err != nil {
		return
	}
	r := Merge(Here{}, b, now())
	Merge(Here{Records: Records{Athletes: r.NewAthletes, Tests: r.NewTests, Plans: r.NewPlans, Changes: r.Changes}}, b, now())
}

// drawnOnce is a bundle, always the same but for its ids.
func drawnOnce() Bundle { return rapid.Custom(drawn).Example(3).pack() }

// gzipped packs a text.
func gzipped(t interface{ Fatal(...any) }, text string) []byte {
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	_, err := w.Write([]byte(text))
	if err = errors.Join(err, w.Close()); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}
