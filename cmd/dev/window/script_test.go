package main

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"ebbwell/cmd/dev/drive"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

func TestOnlyTheUser(t *testing.T) {
	ctx := context.Background()
	dir := filepath.Join(t.TempDir(), "data")
	if err := onlyTheUser(ctx, dir); err == nil {
		t.Error("no folder, and all is well")
	}
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := onlyTheUser(ctx, dir); err == nil {
		t.Error("no file, and all is well")
	}
	file := filepath.Join(dir, "ebbwell.db")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := onlyTheUser(ctx, dir); err != nil {
		t.Error(err)
	}
	for _, path := range []string{file, dir} {
		if err := os.Chmod(path, 0o750); err != nil {
			t.Fatal(err)
		}
		if err := onlyTheUser(ctx, dir); err == nil {
			t.Errorf("the group can read %s, and all is well", path)
		}
		if err := os.Chmod(path, 0o700); err != nil {
			t.Fatal(err)
		}
	}
}

func TestArguments(t *testing.T) {
	for _, args := range [][]string{{"-nosuch"}, {"extra"}, {"-part", "nosuch"}} {
		if err := start(context.Background(), args); err == nil {
			t.Errorf("%v was taken", args)
		}
	}
}

func TestEarlier(t *testing.T) {
	for clock, want := range map[time.Time]string{
		time.Date(2026, 5, 18, 18, 40, 0, 0, time.UTC): "17:05", time.Date(2026, 5, 18, 0, 50, 0, 0, time.UTC): "00:00",
	} {
		if got := earlier(clock); got != want {
			t.Errorf("before %s: %s, want %s", clock.Format("15:04"), got, want)
		}
	}
}

// The kills are as many as asked for, and what a patch says in a row is read.
func TestSquadDay(t *testing.T) {
	kills := func(n int) int {
		count := 0
		for _, s := range squadDay(n) {
			if s.Says == drive.Kill().Says {
				count++
			}
		}
		return count
	}
	if kills(1) != 1 || kills(20) != 20 {
		t.Errorf("%d and %d kills", kills(1), kills(20))
	}
	row := func(i, text string) drive.Control { return drive.Control{Name: "squad.row." + i, Text: text} }
	if err := runningPatches(drive.Places{Controls: []drive.Control{row("2", "on 5 min\noff by 18:00"), row("3", "on 5 min\noff by 18:00")}}); err != nil {
		t.Error(err)
	}
	day := drive.Places{Controls: []drive.Control{row("1", ""), row("2", "on 5 min")}}
	if isOpen(day, "1") != nil || isOpen(day, "2") == nil || isOpen(day, "3") == nil {
		t.Error("the open row is not told from the others")
	}
	if err := runningPatches(drive.Places{Controls: []drive.Control{row("2", "on 5 min\noff by 18:00"), row("3", "72.4")}}); err == nil {
		t.Error("a patch that is gone runs on")
	}
}

// The sheets of a session are held against what is typed: those of a session that was
// only begun are not weighed.
func TestSquadSheets(t *testing.T) {
	ctx, dir := context.Background(), t.TempDir()
	if err := timersRun(ctx, dir); err == nil {
		t.Error("no records, and the timers run")
	}
	s, err := store.Open(dir, store.Options{By: "test"})
	if err != nil {
		t.Fatal(err)
	}
	q := store.Squad{Session: record.GroupSession{Session: record.Session{Date: "2026-05-18", Start: "17:00", End: "18:35"}}}
	for i, who := range squadOfThree() {
		a, err := s.SaveAthlete(ctx, record.Athlete{Name: who.name}, store.Edit{})
		if err != nil {
			t.Fatal(err)
		}
		one := record.Test{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Session: q.Session.Session}
		q.Tests = append(q.Tests, one)
		q.Session.Members = append(q.Session.Members, record.Member{AthleteID: a.ID, TestID: one.ID, Order: i + 1})
	}
	_, err = s.SaveSquad(ctx, q, store.Edit{})
	if err := errors.Join(err, s.Close()); err != nil {
		t.Fatal(err)
	}
	if _, list, err := squadSheets(ctx, dir); err != nil || len(list) != 3 {
		t.Errorf("%d sheets, %v", len(list), err)
	}
	if timersRun(ctx, dir) == nil || keptSquad(ctx, dir) == nil || bottleIs(ctx, dir, 1, 750) == nil {
		t.Error("nobody was weighed, and all is well")
	}
}

func TestKeptPractice(t *testing.T) {
	ctx := context.Background()
	dir := filepath.Join(t.TempDir(), "data")
	if err := keptPractice("Käfer & Varrow")(ctx, dir); err == nil {
		t.Error("no records, and the practice is kept")
	}
	for name, well := range map[string]bool{"Somebody Else": false, "Käfer & Varrow": true} {
		s, err := store.Open(dir, store.Options{By: "test"})
		if err != nil {
			t.Fatal(err)
		}
		p, err := s.Practice(ctx)
		if err != nil && store.CodeOf(err) != store.CodeNotFound {
			t.Fatal(err)
		}
		p.Practitioner, p.Name, p.Emergency = "Ilse Varrow", name, "112"
		if _, err := s.SavePractice(ctx, p, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		if err := keptPractice("Käfer & Varrow")(ctx, dir); (err == nil) != well {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What a control says is read, a folder is copied whole, and a disk that is not full is
// told from one that is.
func TestSmallDisk(t *testing.T) {
	p := drive.Places{Controls: []drive.Control{{Name: "frame.saved", Text: "Not saved yet: The disk is full. Free some space."}}}
	if err := says(p, "frame.saved", "The disk is full."); err != nil {
		t.Error(err)
	}
	if says(p, "frame.saved", "Last saved") == nil || says(p, "frame.nosuch", "The disk is full.") == nil {
		t.Error("what nothing says is read")
	}
	from, to := t.TempDir(), t.TempDir()
	if err := errors.Join(os.Mkdir(filepath.Join(from, "copies"), 0o700), os.WriteFile(filepath.Join(from, "copies", "a"), []byte("a"), 0o600)); err != nil {
		t.Fatal(err)
	}
	if err := copyFolder(from, to); err != nil {
		t.Fatal(err)
	}
	if data, err := os.ReadFile(filepath.Join(to, "copies", "a")); err != nil || string(data) != "a" {
		t.Errorf("copied %q, %v", data, err)
	}
	d := disk{at: to}
	if d.fill() == nil {
		t.Error("a disk with room counts as full")
	}
	if err := d.free(); err != nil {
		t.Error(err)
	}
	said := &strings.Builder{}
	steps, err := diskPart(context.Background(), &disk{}, filepath.Join(to, "nosuch"), said)
	if err != nil || len(steps) > 0 || !strings.Contains(said.String(), "not tried") {
		t.Errorf("%d steps, %v, said %q", len(steps), err, said)
	}
}
