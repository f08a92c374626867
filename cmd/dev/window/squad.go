package main

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"ebbwell/cmd/dev/drive"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// one is what a member of the squad weighs and drinks, as it is typed; the numbers
// are invented.
type one struct {
	name, born, usual                     string
	before, filled, after, left, symptoms string
}

// squadOfThree are the athlete of the main job and two more, in the order of the rows.
func squadOfThree() []one {
	return []one{
		{"Ama Fennimore", "3.2.2001", "61,8", "61,8", "742", "60,9", "402", "0"},
		{"Brin Oldacre", "7.5.1999", "83,2", "83,3", "745", "82,2", "411", "0"},
		{"Sefa Quillonde", "", "", "72,4", "748", "71,5", "320", "0"},
	}
}

// squadDay is a session of three athletes: begun, weighed, patches on, killed so many
// times while the timers run, ended by the same key it was started with, weighed again,
// and its findings.
func squadDay(kills int) []drive.Step {
	list := join([]drive.Step{drive.Start()}, moreAthletes(), beginSquad(), weighBefore())
	for n := range kills {
		list = append(list, killed(n+1)...)
	}
	return join(list, weighAfter(), groupFindings())
}

// moreAthletes writes two more athletes down.
func moreAthletes() []drive.Step {
	var list []drive.Step
	for _, a := range squadOfThree()[:2] {
		list = join(list, []drive.Step{drive.Click("frame.rail.athletes"), drive.Click("roster.new")},
			fill("profile.name", a.name, "profile.born", a.born), first("profile.sex"), fill("profile.mass", a.usual), []drive.Step{drive.Press("Tab")})
	}
	return list
}

// beginSquad begins a session with all three and starts it with one key.
func beginSquad() []drive.Step {
	return join([]drive.Step{drive.Click("frame.rail.test-day"), drive.Click("testday.group.begin"), drive.See("squad.start.begin")},
		[]drive.Step{drive.Click("squad.start.1"), drive.Click("squad.start.2"), drive.Click("squad.start.3"), drive.Shot("squad-start"),
			drive.Click("squad.start.begin"), drive.Focus("squad.before")})
}

// weighBefore types masses and bottles as the hands work, puts the patches on and
// starts the session.
func weighBefore() []drive.Step {
	var list []drive.Step
	for _, a := range squadOfThree() {
		list = append(list, drive.Focus("squad.before"), drive.Write(a.before), drive.Press("Return"), drive.Focus("squad.bottle.1.before"),
			drive.Write("*"), drive.Write(a.filled), drive.Press("Return"))
	}
	return append(list, drive.Press("F2"), rest(), drive.Shot("squad-before"))
}

// killed kills the program while the timers run and a value is being typed: all that
// stood before is there when it starts again.
func killed(n int) []drive.Step {
	bib := strconv.Itoa(n%3 + 1)
	field := "squad.bottle.1.before"
	value := strconv.Itoa(750 + n)
	return append(toRow(bib),
		drive.Fill(field, value), rest(), drive.Kill(),
		drive.Check(fmt.Sprintf("kill %d: masses, bottles and timers are there", n), func(ctx context.Context, dir string) error {
			return errors.Join(timersRun(ctx, dir), bottleIs(ctx, dir, n%3, 750+float64(n)))
		}),
		drive.Start(), drive.Click("frame.rail.test-day"), drive.See("squad.time"),
		drive.Step{Says: "the patches run on in the rows", Do: func(ctx context.Context, d *drive.Driver) error {
			return d.Until(ctx, "three running patches", func(p drive.Places) error { return runningPatches(p) })
		}},
	)
}

// toRow goes to a row by its bib and waits until it is the open one, so that no click
// goes where its fields stood before.
func toRow(bib string) []drive.Step {
	return []drive.Step{drive.Write("/" + bib), drive.Press("Return"), {Says: "row " + bib + " is open", Do: func(ctx context.Context, d *drive.Driver) error {
		return d.Until(ctx, "row "+bib+" to open", func(p drive.Places) error { return isOpen(p, bib) })
	}}}
}

// isOpen reports an error unless a row is the open one, which alone has fields in the
// place of texts.
func isOpen(p drive.Places, bib string) error {
	for _, c := range p.Controls {
		switch {
		case c.Name == "squad.jump":
			return errors.New("a name is being typed")
		case c.Name == "squad.row."+bib && c.Text != "":
			return fmt.Errorf("row %s is closed: %q", bib, c.Text)
		case c.Name == "squad.row."+bib:
			return nil
		}
	}
	return fmt.Errorf("row %s is not there", bib)
}

// runningPatches counts the rows that say how long a patch is on.
func runningPatches(p drive.Places) error {
	n := 0
	for _, c := range p.Controls {
		if strings.HasPrefix(c.Name, "squad.row.") && strings.Contains(c.Text, "off by ") {
			n++
		}
	}
	if n < 2 { // the third is open, with its fields
		return fmt.Errorf("%d rows say when a patch comes off", n)
	}
	return nil
}

// weighAfter sets the start back so that there was time to sweat, ends the session with
// the key it was started with, and weighs all again.
func weighAfter() []drive.Step {
	list := []drive.Step{
		drive.Click("squad.change"), drive.See("squad.change.start"),
		{Says: "set the start back by up to 95 minutes", Do: func(ctx context.Context, d *drive.Driver) error {
			return d.Fill(ctx, "squad.change.start", earlier(time.Now()))
		}},
		drive.Press("Tab"), drive.Click("squad.change.done"), drive.Gone("squad.change.start"), drive.Press("F2"), rest(), drive.Shot("squad-ended"),
	}
	for i, a := range squadOfThree() {
		list = append(append(list, toRow(strconv.Itoa(i+1))...), drive.Fill("squad.bottle.1.after", a.left), drive.Press("Return"))
		list = append(list, drive.Fill("squad.after", a.after), drive.Press("Return"), drive.Fill("squad.urine", "0"), drive.Press("Return"),
			drive.Fill("squad.symptoms", a.symptoms), drive.Press("Return"))
	}
	return append(list, rest(), drive.Shot("squad-after"))
}

// earlier is up to 95 minutes before now, not before midnight.
func earlier(now time.Time) string {
	minutes := max(0, now.Hour()*60+now.Minute()-95)
	return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60)
}

// groupFindings looks at the findings of the group and quits.
func groupFindings() []drive.Step {
	return []drive.Step{
		drive.Click("squad.group"), drive.See("squad.table.2"), drive.Shot("squad-group"), drive.Quit(), drive.Sound(),
		drive.Check("three sheets of one session are kept", keptSquad),
	}
}

// squadSheets loads the sheets of the one session, in the order of its members.
func squadSheets(ctx context.Context, dir string) (g record.GroupSession, list []record.Test, err error) {
	err = inRecords(dir, func(s *store.Store) error {
		all, err := s.GroupSessions(ctx)
		if err != nil || len(all) != 1 || len(all[0].Members) != 3 {
			return errors.Join(fmt.Errorf("%d sessions", len(all)), err)
		}
		g = all[0]
		for _, m := range g.Members {
			t, err := s.LoadTest(ctx, m.TestID)
			if err != nil {
				return err
			}
			list = append(list, t)
		}
		return nil
	})
	return g, list, err
}

// timersRun checks masses, the start of the session and the patches.
func timersRun(ctx context.Context, dir string) error {
	g, list, err := squadSheets(ctx, dir)
	if err != nil {
		return err
	}
	if g.Session.Start == "" {
		return errors.New("the session has no start")
	}
	for i, t := range list {
		want, err := strconv.ParseFloat(strings.Replace(squadOfThree()[i].before, ",", ".", 1), 64)
		if err != nil {
			return err
		}
		if len(t.Weighings) != 1 || math.Abs(t.Weighings[0].Mass.Or(0)-want) > 1e-9 || len(t.Bottles) != 1 || !t.Bottles[0].Before.Known() ||
			len(t.Patches) != 1 || t.Patches[0].On == "" || t.Patches[0].Off != "" || t.Session.Start != g.Session.Start {
			return fmt.Errorf("row %d is %+v, %+v, %+v", i+1, t.Weighings, t.Bottles, t.Patches)
		}
	}
	return nil
}

// bottleIs checks the bottle of a row.
func bottleIs(ctx context.Context, dir string, row int, grams float64) error {
	_, list, err := squadSheets(ctx, dir)
	if err != nil {
		return err
	}
	if b := list[row].Bottles; len(b) != 1 || b[0].Before.Or(0) != grams {
		return fmt.Errorf("the bottles of row %d are %+v, typed %v g", row+1, b, grams)
	}
	return nil
}

// keptSquad checks what was typed after the session.
func keptSquad(ctx context.Context, dir string) error {
	g, list, err := squadSheets(ctx, dir)
	if err != nil {
		return err
	}
	for i, t := range list {
		want, err := strconv.ParseFloat(strings.Replace(squadOfThree()[i].after, ",", ".", 1), 64)
		if err != nil {
			return err
		}
		after := 0.0
		for _, w := range t.Weighings {
			if w.Moment == record.After {
				after = w.Mass.Or(0)
			}
		}
		left, err := strconv.ParseFloat(squadOfThree()[i].left, 64)
		if err != nil {
			return err
		}
		if len(t.Bottles) != 1 {
			return fmt.Errorf("row %d has %d bottles", i+1, len(t.Bottles))
		}
		if math.Abs(after-want) > 1e-9 || t.Bottles[0].After.Or(0) != left || !t.Loss.NoUrine || len(t.Safety) < 7 || t.Session.End != g.Session.End || t.Session.End == "" {
			return fmt.Errorf("row %d weighs %v kg, bottle %v g, %d answers, %s to %s", i+1, after, t.Bottles[0].After.Or(0), len(t.Safety), t.Session.Start, t.Session.End)
		}
	}
	return nil
}
