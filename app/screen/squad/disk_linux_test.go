package squad

import (
	"context"
	"os"
	"os/exec"
	"os/signal"
	"strings"
	"syscall"
	"testing"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
	"ebbwell/internal/store"
)

// noRoom lets no file grow, as on a full disk, until room is called.
func noRoom(t *testing.T) (room func()) {
	t.Helper()
	signal.Ignore(syscall.SIGXFSZ)
	var before syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &before); err != nil {
		t.Fatal(err)
	}
	room = func() {
		if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &before); err != nil {
			t.Error(err)
		}
	}
	t.Cleanup(room)
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: 4096, Max: before.Max}); err != nil {
		t.Fatal(err)
	}
	return room
}

// apart is set in the process of its own that the full disk is tried in.
const apart = "EBBWELL_SQUAD_FULL_DISK"

// TestFullDisk tries it in a process of its own: the limit holds for every file a process
// writes, the log of the test runner too.
func TestFullDisk(t *testing.T) {
	if os.Getenv(apart) != "" {
		fullDisk(t)
		return
	}
	run := exec.CommandContext(t.Context(), os.Args[0], "-test.run=^TestFullDisk$", "-test.v")
	run.Env = append(os.Environ(), apart+"=yes")
	out, err := run.CombinedOutput()
	if err != nil || !strings.Contains(string(out), "--- PASS: TestFullDisk") {
		t.Errorf("%v: %s", err, out)
	}
}

// fullDisk: what is typed while the disk is full stays on the screen, is said not to
// be saved, and is saved when there is room, in the rows it was typed in.
func fullDisk(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:3])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "61.8\n")
	if len(h.kept("Tamsin Orrelby").Weighings) != 1 {
		t.Fatal("not saved with room")
	}
	room := noRoom(t)
	h.at("bottle.1.before", "742\n")
	h.at("bottle.2.before", "688\n")
	if h.who() != "Neve Carrowmere" {
		t.Fatalf("at %s", h.who())
	}
	h.at("before", "55.2\n")
	err := d.Keep.Flush(context.Background())
	if code := store.CodeOf(err); code != store.CodeNoSpace && code != store.CodeDisk {
		t.Fatalf("on a full disk: %v", err)
	}
	if said := desk.Sentence(d.Words, err); said == "" || strings.Contains(said, "SQL") {
		t.Errorf("said %q", said)
	}
	if h.v.flushNow() {
		t.Error("goes on as if it were saved")
	}
	kept, err := d.Store.LoadTest(context.Background(), h.v.rows[1].Sheet.Test.ID)
	if err != nil || len(kept.Weighings) != 0 {
		t.Errorf("kept %+v, %v", kept.Weighings, err)
	}
	if m := squad.Masses(h.v.rows[1].Sheet.Test, record.Before); len(m) != 1 || *m[0].Mass.Value != 55.2 {
		t.Errorf("the screen lost the mass: %+v", m)
	}
	h.v.closeAll(h.v.rows[:1])
	if one, err := d.Store.LoadTest(context.Background(), h.v.rows[0].Sheet.Test.ID); err != nil || one.State != record.TestOpen {
		t.Errorf("closed on a full disk: %q, %v", one.State, err)
	}
	room()
	first, second := h.kept("Tamsin Orrelby"), h.kept("Neve Carrowmere")
	if first.Bottles[0].Before.Or(0) != 742 || first.Bottles[1].Before.Or(0) != 688 || len(second.Weighings) != 1 || second.Weighings[0].Mass.Or(0) != 55.2 {
		t.Errorf("with room: %+v, %+v", first.Bottles, second.Weighings)
	}
}

// TestTwoOpen: two screens on one session. Each athlete's values are kept whichever
// screen they were typed in; where both typed for one athlete, the later is refused with
// words, and stays where it was typed.
func TestTwoOpen(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:3])
	one := openDay(t, d, clock, id, 1186, 700, false, 100)
	two := openDay(t, d, clock, id, 1186, 700, false, 100)
	one.v.openRowAt(0, "before")
	typedAt(one, 0, 61.8)
	if err := one.v.doc.save(context.Background(), one.v.doc.Now(), store.Edit{}); err != nil {
		t.Fatal(err)
	}
	typedAt(two, 1, 55.2)
	if err := two.v.doc.save(context.Background(), two.v.doc.Now(), store.Edit{}); err != nil {
		t.Errorf("another athlete's row is refused: %v", err)
	}
	typedAt(two, 0, 60.1)
	err := two.v.doc.save(context.Background(), two.v.doc.Now(), store.Edit{})
	if store.CodeOf(err) != store.CodeConflict || desk.Sentence(d.Words, err) == "" {
		t.Errorf("the same row typed twice: %v", err)
	}
	for i, want := range []float64{61.8, 55.2} {
		kept, err := d.Store.LoadTest(context.Background(), one.v.rows[i].Sheet.Test.ID)
		if err != nil || len(kept.Weighings) != 1 || kept.Weighings[0].Mass.Or(0) != want {
			t.Errorf("row %d is kept with %+v, %v", i+1, kept.Weighings, err)
		}
	}
	if m := squad.Masses(two.v.rows[0].Sheet.Test, record.Before); len(m) != 1 || *m[0].Mass.Value != 60.1 {
		t.Errorf("what was refused is gone from its screen: %+v", m)
	}
}

// typedAt writes the mass before of a row, without a keyboard: two screens share one.
func typedAt(h *hands, row int, kg float64) {
	h.v.doc.ChangeSheet("", "before", h.v.rows[row].Sheet.Test.ID, func(s *sheet) {
		w := h.v.weighing(&s.Record, record.Before, 0, true)
		w.Mass = record.Num(kg, "kg")
	})
	h.v.look()
}
