package main

import (
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"time"

	"ebbwell/cmd/dev/drive"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// mainJob makes an athlete, types a whole test sheet (killed in the middle),
// plans with the mouse, agrees and saves the page: the set of common-practice
// figures, no source.
func mainJob() []drive.Step {
	return join(makeAthlete(), firstHalf(), secondHalf(), planning(), paper())
}

// join puts parts of a script together.
func join(parts ...[]drive.Step) []drive.Step {
	var list []drive.Step
	for _, p := range parts {
		list = append(list, p...)
	}
	return list
}

// fill fills fields, given as name and text.
func fill(pairs ...string) []drive.Step {
	var list []drive.Step
	for i := 0; i < len(pairs); i += 2 {
		list = append(list, drive.Fill(pairs[i], pairs[i+1]))
	}
	return list
}

// pick opens a list and takes what begins with a letter.
func pick(name, letter string) []drive.Step {
	return []drive.Step{drive.Click(name), drive.Write(letter), drive.Press("Return")}
}

// first chooses the first of two or three words.
func first(name string) []drive.Step { return []drive.Step{drive.Click(name), drive.Press("Home")} }

// onward goes so many fields on by Tab, which brings them into sight, and types.
func onward(name, text string, tabs int) []drive.Step {
	var list []drive.Step
	for range tabs {
		list = append(list, drive.Press("Tab"))
	}
	return append(list, drive.Focus(name), drive.Write(text))
}

// suggest types into a field with matches and takes the one at hand.
func suggest(name, text string) []drive.Step {
	return []drive.Step{drive.Click(name), drive.Press("ctrl+a"), drive.Write(text), drive.Press("Tab")}
}

func makeAthlete() []drive.Step {
	return join(
		// The room above the rail's end and that at the right of the head: sunk, and paper.
		[]drive.Step{drive.Start(), drive.Coloured(4, 4, "#ECE7DC"), drive.Coloured(screenWidth/2, 4, "#F5F2EB"), drive.Click("roster.first")},
		fill("profile.name", "Sefa Quillonde", "profile.born", "9.1.2002"),
		first("profile.sex"),
		fill("profile.height", "178", "profile.mass", "72,4"),
		suggest("profile.sport", "basketball"),
		fill("profile.position", "guard", "profile.usual", "1,1"),
		[]drive.Step{drive.Shot("athlete"), drive.Click("frame.tabs.tests")},
	)
}

// firstHalf types the sheet as far as the bottles and is killed there.
func firstHalf() []drive.Step {
	return join(
		[]drive.Step{drive.Click("testsheet.new"), drive.See("testsheet.date")},
		fill("testsheet.date", "14.5.2026", "testsheet.start", "17:00", "testsheet.place", "Hall 2"),
		[]drive.Step{drive.Click("testsheet.effort"), drive.Write("8")},
		fill("testsheet.air.temperature", "26", "testsheet.air.humidity", "50"),
		[]drive.Step{drive.Click("testsheet.fold.air"), drive.See("testsheet.air.wind")},
		fill("testsheet.air.wind", "0,5"),
		pick("testsheet.air.sun", "i"),
		first("testsheet.scale.before"),
		onward("testsheet.before.mass.1", "72,4", 1),
		onward("testsheet.scale.step", "0,05", 2),
		[]drive.Step{drive.Shot("sheet-before"), drive.Click("testsheet.tabs.bottles")},
		fill("testsheet.bottle.1.before", "1000", "testsheet.bottle.1.after", "300"),
		[]drive.Step{drive.Shot("sheet-bottles"), rest(), drive.Kill(),
			drive.Check("what was typed before the kill is there", halfTyped), drive.Start()},
	)
}

// rest waits: half a second is what a kill may cost.
func rest() drive.Step {
	const d = time.Second
	return drive.Step{Says: "wait " + d.String(), Do: func(ctx context.Context, _ *drive.Driver) error {
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(d):
			return nil
		}
	}}
}

// secondHalf opens the sheet again and finishes it.
func secondHalf() []drive.Step {
	return join(
		[]drive.Step{drive.Click("roster.table.0"), drive.Press("Return"), drive.Click("frame.tabs.tests"), drive.Click("testsheet.tabs.bottles"),
			drive.Shows("testsheet.bottle.1.after", "300"), drive.Click("testsheet.bottle.next")},
		suggest("testsheet.bottle.2.what", "Sports drink 6"),
		fill("testsheet.bottle.2.before", "740", "testsheet.bottle.2.after", "229"),
		[]drive.Step{drive.Click("testsheet.tabs.after")},
		fill("testsheet.end", "18:45", "testsheet.after.mass.1", "70,3"),
		first("testsheet.scale.after"),
		[]drive.Step{drive.Click("testsheet.urine.none"), drive.Shot("sheet-after"), drive.Click("testsheet.tabs.urine"),
			drive.Click("testsheet.patch.add")},
		pick("testsheet.patch.1.site", "d"),
		fill("testsheet.patch.1.on", "17:25", "testsheet.patch.1.off", "18:00", "testsheet.patch.1.sodium", "46,2"),
		[]drive.Step{drive.Shot("sheet-patch"), drive.Click("testsheet.tabs.findings"), drive.Click("findings.show"), drive.Shot("findings"),
			drive.Click("testsheet.next"), drive.See("testsheet.plan")},
	)
}

// planning moves the sliders with the mouse and agrees.
func planning() []drive.Step {
	return join(
		[]drive.Step{drive.Click("testsheet.plan"), drive.See("planner.water.slider"), drive.Shot("plan-begun"),
			drive.Drag("planner.water.slider", 0.2, 0.95), drive.Shot("plan-held")},
		fill("planner.water.amount", "0,8", "planner.drink1.amount", "0,7"),
		[]drive.Step{drive.Press("Tab"), drive.Click("planner.suggest"), drive.Shot("plan-suggested"), drive.Click("planner.proposal.drinks"), drive.Click("planner.agree")},
		fill("planner.agree.review", "2026-12-20"),
		[]drive.Step{drive.Shot("agreement"), drive.Click("planner.agreement.yes"), drive.See("handoutview.save")},
	)
}

// paper saves the athlete's page and quits.
func paper() []drive.Step {
	return []drive.Step{
		drive.Click("handoutview.save"),
		{Says: "save the page", Do: func(ctx context.Context, d *drive.Driver) error {
			if err := d.Fill(ctx, "handoutview.ask.path", d.Typed(pageFile(d.Data()))); err != nil {
				return err
			}
			return d.Click(ctx, "handoutview.ask.yes")
		}},
		drive.Gone("handoutview.ask.yes"),
		drive.Shot("handout"),
		drive.Quit(),
		drive.Sound(),
		drive.Check("the sheet is closed and frozen", closedSheet),
		drive.Check("the plan is agreed", agreedPlan),
		drive.Check("the page is a PDF and kept byte for byte", printedPage),
	}
}

// pageFile is where the page goes: beside the data folder.
func pageFile(dir string) string { return filepath.Join(filepath.Dir(dir), "page.pdf") }

// only loads the one athlete and test sheet of the records.
func only(ctx context.Context, s *store.Store) (record.Athlete, record.Test, error) {
	list, err := s.Athletes(ctx)
	if err != nil || len(list) != 1 {
		return record.Athlete{}, record.Test{}, fmt.Errorf("%d athletes: %w", len(list), err)
	}
	a, err := s.LoadAthlete(ctx, list[0].ID)
	if err != nil {
		return a, record.Test{}, err
	}
	tests, err := s.Tests(ctx, a.ID)
	if err != nil || len(tests) != 1 {
		return a, record.Test{}, fmt.Errorf("%d tests: %w", len(tests), err)
	}
	return a, tests[0], nil
}

// halfTyped checks what stood on the sheet when it was killed.
func halfTyped(ctx context.Context, dir string) error {
	return inRecords(dir, func(s *store.Store) error {
		a, t, err := only(ctx, s)
		if err != nil {
			return err
		}
		if a.Name != "Sefa Quillonde" || a.UsualMass.Or(0) != 72.4 || a.Sport != "basketball" {
			return fmt.Errorf("the athlete is %q, %v kg, %q", a.Name, a.UsualMass.Or(0), a.Sport)
		}
		if t.Session.Date != "2026-05-14" || t.Session.Start != "17:00" || t.Session.Effort.Or(0) != 8 || t.Air.Humidity.Or(0) != 50 ||
			t.Air.Sun != record.SunNone || len(t.Weighings) == 0 || len(t.Bottles) == 0 || t.Bottles[0].After.Or(0) != 300 {
			return fmt.Errorf("the sheet is %+v, %+v, %d weighings, %+v", t.Session, t.Air, len(t.Weighings), t.Bottles)
		}
		return nil
	})
}

// closedSheet checks the finished sheet.
func closedSheet(ctx context.Context, dir string) error {
	return inRecords(dir, func(s *store.Store) error {
		_, t, err := only(ctx, s)
		if err != nil {
			return err
		}
		if t.State != record.TestClosed || len(t.Bottles) != 2 || len(t.Patches) != 1 || t.Patches[0].Site != record.SiteForearmDorsal ||
			math.Abs(t.Patches[0].Sodium.Or(0)-46.2) > 1e-9 || !t.Loss.NoUrine {
			return fmt.Errorf("the sheet is %q with %+v, %+v", t.State, t.Bottles, t.Patches)
		}
		frozen, err := s.FrozenOf(ctx, record.Ref{Kind: record.KindTest, ID: t.ID})
		if err == nil && len(frozen) != 1 {
			err = fmt.Errorf("%d frozen copies", len(frozen))
		}
		return err
	})
}

// agreedPlan checks the plan.
func agreedPlan(ctx context.Context, dir string) error {
	return inRecords(dir, func(s *store.Store) error {
		a, _, err := only(ctx, s)
		if err != nil {
			return err
		}
		plans, err := s.Plans(ctx, a.ID)
		if err != nil || len(plans) != 1 {
			return fmt.Errorf("%d plans: %w", len(plans), err)
		}
		if plans[0].State != record.PlanAgreed || plans[0].Agreement.Review != "2026-12-20" {
			return fmt.Errorf("the plan is %q, review %q", plans[0].State, plans[0].Agreement.Review)
		}
		return nil
	})
}

// printedPage checks the page against what is kept of it.
func printedPage(ctx context.Context, dir string) error {
	page, err := os.ReadFile(pageFile(dir))
	if err != nil {
		return fmt.Errorf("read the page: %w", err)
	}
	return inRecords(dir, func(s *store.Store) error {
		a, _, err := only(ctx, s)
		if err != nil {
			return err
		}
		prints, err := s.PrintsOf(ctx, a.ID)
		if err != nil || len(prints) == 0 {
			return fmt.Errorf("%d prints: %w", len(prints), err)
		}
		kept, err := s.LoadPrint(ctx, prints[0].ID)
		if err == nil && (string(kept.Bytes) != string(page) || len(page) < 4 || string(page[:4]) != "%PDF") {
			err = errors.New("the page kept is not the page printed")
		}
		return err
	})
}
