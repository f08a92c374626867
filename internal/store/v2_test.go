package store

import (
	"context"
	"path/filepath"
	"testing"

	"ebbwell/internal/record"
)

// TestVersion2 sees what version 2 makes of a file of version 1: new columns are
// as in a row in which nothing was entered, frozen copies are packed, and the
// rate of a closed test stands beside its copy.
func TestVersion2(t *testing.T) {
	dir, ctx := copyKept(t, filepath.Join(keptFolder, "v1.db")), context.Background()
	db := got(connect(filepath.Join(dir, fileName), forChanging))(t)
	results := `{"Minutes":90,"Sweat":{"Fluid":{"Rate":{"Known":true,"Value":1.25,"Ranged":true}}}}`
	must(t, db.Exec(`INSERT INTO frozen (id, kind, record, number, inputs, results, evidence, at, "by", why)
		SELECT 'again', kind, record, 2, inputs, CAST(? AS BLOB), evidence, at, "by", why FROM frozen`, results).Error)
	must(t, db.Exec(`INSERT INTO frozen (id, kind, record, number, inputs, results, evidence, at, "by", why)
		SELECT 'plan', 'plan', record, 1, NULL, CAST(? AS BLOB), evidence, at, "by", why FROM frozen WHERE id = 'again'`, results).Error)
	must(t, disconnect(db))

	s := open(t, dir, newClock())
	checkWhole(t, s)
	a := got(s.LoadAthlete(ctx, got(s.Athletes(ctx))(t)[0].ID))(t)
	if a.Habit != (record.Habit{}) || a.Training != "" || a.DeficitAim.Known() || a.CarbohydrateAim.Known() || a.PageLanguage != "" {
		t.Errorf("something was entered: %+v", a)
	}
	var absent int64
	must(t, s.files.reader.Raw(`SELECT (SELECT count(*) FROM athletes WHERE training IS NULL OR habit_food_name IS NULL OR page_language IS NULL)
		+ (SELECT count(*) FROM tests WHERE ill IS NULL OR stomach_upset IS NULL) + (SELECT count(*) FROM practices WHERE field_method IS NULL)`).
		Scan(&absent).Error)
	if absent != 0 {
		t.Errorf("%d rows lack a text, a yes or a no", absent)
	}
	test := got(s.Tests(ctx, a.ID))(t)[0]
	copies := got(s.FrozenOf(ctx, record.Ref{Kind: record.KindTest, ID: test.ID}))(t)
	if len(copies) != 2 || string(copies[0].Results) != results {
		t.Fatalf("copies %+v", copies)
	}
	if line := copies[0].Line; line.Rate == nil || *line.Rate != 1.25 || !line.Ranged {
		t.Errorf("the line of the copy is %+v", line)
	}
	if line := copies[1].Line; line.Rate != nil || line.Ranged {
		t.Errorf("a copy without a rate has the line %+v", line)
	}
	plan := got(s.FrozenOf(ctx, record.Ref{Kind: record.KindPlan, ID: test.ID}))(t)
	if len(plan) != 1 || plan[0].Line.Rate != nil || plan[0].Inputs != nil {
		t.Errorf("the copy of a plan is %+v", plan)
	}
	var raw []byte
	must(t, s.files.reader.Raw("SELECT results FROM frozen WHERE id = 'again'").Row().Scan(&raw))
	if string(got(new(unpacker).unpack(raw))(t)) != results {
		t.Errorf("kept as %q", raw)
	}
}
