package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"reflect"
	"strings"
	"syscall"
	"testing"
	"time"

	"ebbwell/internal/record"
)

// TestModes: folder and files are the user's alone, whatever the umask.
func TestModes(t *testing.T) {
	for _, mask := range []int{0, 0o077, 0o277} {
		t.Run(fmt.Sprintf("umask %03o", mask), func(t *testing.T) {
			old := syscall.Umask(mask)
			defer syscall.Umask(old)
			dir, c := filepath.Join(t.TempDir(), "a"), newClock()
			must(t, os.Mkdir(filepath.Dir(dir)+"/parent", 0o777))
			s := got(Open(dir, Options{Clock: c.now}))(t)
			c.add(24 * time.Hour)
			got(s.SaveGroup(context.Background(), record.Group{}, Edit{}))(t)
			must(t, s.Trouble())
			wantMode(t, dir, 0o700)
			wantMode(t, filepath.Join(dir, snapshotFolder), 0o700)
			for _, end := range openFiles() {
				wantMode(t, s.path()+end, 0o600)
			}
			wantMode(t, got(s.Snapshots())(t)[0].Path, 0o600)
			must(t, s.Close())
		})
	}
}

func wantMode(t *testing.T, path string, want os.FileMode) {
	t.Helper()
	if mode := got(os.Stat(path))(t).Mode().Perm(); mode != want {
		t.Errorf("%s has mode %o, want %o", path, mode, want)
	}
}

// TestLooseFileIsTightened: a file that others could read is closed to them.
func TestLooseFileIsTightened(t *testing.T) {
	dir := copyKept(t, keptFiles(t)[0])
	must(t, os.Chmod(filepath.Join(dir, fileName), 0o644))
	s := open(t, dir, newClock())
	wantMode(t, s.path(), 0o600)
}

// asNobody makes a second program run as a user who owns nothing, from a
// copy of this program that this user may read.
func asNobody(t *testing.T, name, dir string) *exec.Cmd {
	t.Helper()
	cmd := childCommand(name, dir)
	if os.Getuid() != 0 {
		return cmd // no need: this user is not above the modes
	}
	place := got(os.MkdirTemp("", "ebbwell-nobody-"))(t)
	t.Cleanup(func() { must(t, os.RemoveAll(place)) })
	must(t, os.Chmod(place, 0o755))
	cmd.Path = filepath.Join(place, "program")
	must(t, os.WriteFile(cmd.Path, got(os.ReadFile(os.Args[0]))(t), 0o755))
	must(t, os.Chmod(cmd.Path, 0o755))
	cmd.Dir = "/"
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
	return cmd
}

// reachable makes a folder that every user can go into, and gives it away.
func reachable(t *testing.T) string {
	t.Helper()
	base := got(os.MkdirTemp("", "ebbwell-data-"))(t)
	t.Cleanup(func() { must(t, os.RemoveAll(base)) })
	must(t, os.Chmod(base, 0o755))
	dir := filepath.Join(base, "data")
	must(t, openAndClose(Open(dir, Options{})))
	return dir
}

// giveAway makes nobody the owner of a folder and its files, with a mode.
func giveAway(t *testing.T, dir string, folder, file os.FileMode) {
	t.Helper()
	must(t, filepath.Walk(dir, func(path string, info os.FileInfo, err error) error {
		if err != nil {
			return err
		}
		mode := file
		if info.IsDir() {
			mode = folder
		}
		if os.Getuid() == 0 {
			err = os.Chown(path, 65534, 65534)
		}
		return errors.Join(err, os.Chmod(path, mode))
	}))
	t.Cleanup(func() { _ = os.Chmod(dir, 0o700) })
}

// TestReadOnlyFolder is tried by a user whom the modes bind.
func TestReadOnlyFolder(t *testing.T) {
	tests := []struct {
		name, child  string
		folder, file os.FileMode
		want         string
	}{
		{"folder and file", "save", 0o500, 0o400, "code: read-only"},
		{"folder", "save", 0o500, 0o600, "code: read-only"},
		{"no entry", "save", 0o000, 0o600, "code: read-only"},
		{"looking", "look", 0o500, 0o400, "athletes: 0\ndone"},
		{"writable after all", "save", 0o700, 0o600, "done"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			dir := reachable(t)
			giveAway(t, dir, tt.folder, tt.file)
			if out := runChild(t, asNobody(t, tt.child, dir)); out != tt.want {
				t.Errorf("got %q, want %q", out, tt.want)
			}
		})
	}
	t.Run("folder cannot be made", func(t *testing.T) {
		base := filepath.Dir(reachable(t))
		giveAway(t, base, 0o500, 0o400)
		if out := runChild(t, asNobody(t, "save", filepath.Join(base, "new"))); out != "code: read-only" {
			t.Errorf("got %q", out)
		}
	})
}

// TestFullDisk: a save that finds no room keeps nothing and harms nothing;
// the next one, with room, works. On a small file system of its own where one
// may be mounted, else with a limit on the size of files.
func TestFullDisk(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=3m"); err != nil {
		t.Logf("no mount (%v): limiting the size of files instead", err)
		if out := runChild(t, childCommand("limit", dir)); out != "done" {
			t.Errorf("got %q", out)
		}
		return
	}
	t.Cleanup(func() { must(t, syscall.Unmount(dir, 0)) })
	c := newClock()
	s := open(t, dir, c)
	ballast := filepath.Join(dir, "ballast")
	fillDisk(t, ballast)
	must(t, saveUntilFull(s))
	c.add(24 * time.Hour)
	_, _ = s.SaveGroup(context.Background(), record.Group{Name: strings.Repeat("y", 9000)}, Edit{})
	wantCode(t, s.Trouble(), CodeNoSpace)
	wantCode(t, s.Backup(context.Background(), filepath.Join(dir, "..", filepath.Base(dir), "b.db")), CodeInvalid)
	must(t, os.Remove(ballast))
	one, _ := sheet(t, s)
	if again := got(s.LoadTest(context.Background(), one.ID))(t); !reflect.DeepEqual(again, one) {
		t.Errorf("got %+v", again)
	}
	checkWhole(t, s)
	must(t, s.Close())

	fillDisk(t, ballast)
	_, err := Open(filepath.Join(dir, "second"), Options{})
	wantCode(t, err, CodeNoSpace)
	must(t, os.Remove(ballast))
}

// fillDisk writes until there is no room.
func fillDisk(t *testing.T, path string) {
	t.Helper()
	f := got(os.Create(path))(t)
	block := make([]byte, 4096)
	for {
		if _, err := f.Write(block); err != nil {
			if !errors.Is(err, syscall.ENOSPC) {
				t.Fatal(err)
			}
			break
		}
	}
	must(t, f.Close())
}

// saveUntilFull saves growing notes until one is refused, and sees that it is
// refused whole.
func saveUntilFull(s *Store) error {
	ctx := context.Background()
	a, err := s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{})
	for i := 0; err == nil && i < 1000; i++ {
		next := a
		next.Note = strings.Repeat(string(rune('a'+i%26)), 10_000+i)
		var saved record.Athlete
		if saved, err = s.SaveAthlete(ctx, next, Edit{}); err == nil {
			a = saved
		}
	}
	if code := CodeOf(err); code != CodeNoSpace && code != CodeDisk {
		return fmt.Errorf("the save ended with %w", err)
	}
	all, err := s.Athletes(ctx)
	if err != nil || len(all) == 0 && a.ID == "" {
		return err
	}
	kept, err := s.LoadAthlete(ctx, a.ID)
	if err == nil && !reflect.DeepEqual(kept, a) {
		err = fmt.Errorf("the athlete has a note of %d characters, want %d", len(kept.Note), len(a.Note))
	}
	return err
}

// childLimit does the same under a limit on the size of files.
func childLimit(dir string) error {
	signal.Ignore(syscall.SIGXFSZ)
	s, err := Open(dir, Options{})
	if err != nil {
		return err
	}
	var before syscall.Rlimit
	err = errors.Join(syscall.Getrlimit(syscall.RLIMIT_FSIZE, &before),
		syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: 600_000, Max: before.Max}))
	if err == nil {
		err = saveUntilFull(s)
	}
	if err == nil {
		err = syscall.Setrlimit(syscall.RLIMIT_FSIZE, &before)
	}
	if err == nil {
		_, err = s.SaveAthlete(context.Background(), record.Athlete{Name: "with room"}, Edit{})
	}
	return errors.Join(err, check(context.Background(), s.files.writer), s.Close())
}

// TestFileLimit: the way without a mount is always tried too.
func TestFileLimit(t *testing.T) {
	if out := runChild(t, childCommand("limit", t.TempDir())); out != "done" {
		t.Errorf("got %q", out)
	}
}
