package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// TestFaults disturbs every deed: the program is ended before a change of a file
// and in the middle of one, and the disk is full, or fails, from a change on. After
// each the folder opens, or says that it is damaged and offers a copy; everything
// that was said to be saved is there, and what was under way is there whole or not
// at all.
func TestFaults(t *testing.T) {
	n := faultsOf(t)
	made := map[bool]string{}
	for _, crashed := range []bool{false, true} {
		made[crashed] = filepath.Join(t.TempDir(), "made")
		makeScene(t, made[crashed], crashed)
	}
	for k, d := range got(deeds())(t) {
		t.Run(d.name, func(t *testing.T) {
			folder := t.TempDir()
			d.begin(t, filepath.Join(folder, "before"), made[d.crashed])
			allowed := d.states(t, filepath.Join(folder, "before"))
			moments, status := d.disturb(t, filepath.Join(folder, "before"), strike{})
			if status.ExitStatus() != 0 || len(moments.names) < 5 {
				t.Fatalf("undisturbed it ends with %d after %d changes:\n%s", status.ExitStatus(), len(moments.names), moments.out)
			}
			for j, with := range blowsFor(n, k) {
				one := tally{line: fmt.Sprintf("%s: %s", d.name, with)}
				for i := range n {
					at := 1 + ((2*i+1)*len(moments.names)/(2*n)+(k*7+j*3)*len(moments.names)/29)%len(moments.names)
					one.count(d.trial(t, filepath.Join(folder, "before"), strike{at: at, with: with}, allowed))
				}
				one.log(t)
			}
		})
	}
}

// blowsFor lists the blows for a deed: in a short run one of the four.
func blowsFor(n, deed int) []blow {
	all := []blow{killBefore, killHalfway, noRoomFrom, failFrom}
	if n > 1 {
		return all
	}
	return []blow{all[deed%len(all)]}
}

// begin makes the scene a deed begins with; made is one that was filled.
func (d deed) begin(t testing.TB, folder, made string) {
	t.Helper()
	p := sceneAt(folder)
	switch {
	case d.empty:
		must(t, os.MkdirAll(p.outside, 0o700))
	case d.from != "":
		must(t, os.MkdirAll(p.outside, 0o700))
		must(t, os.MkdirAll(p.data, 0o700))
		must(t, os.WriteFile(filepath.Join(p.data, fileName), got(os.ReadFile(d.from))(t), 0o600))
	default:
		must(t, os.CopyFS(folder, os.DirFS(made)))
	}
}

// states are what the scene may be found in after none, one and so on of the steps.
func (d deed) states(t testing.TB, before string) (list []string) {
	t.Helper()
	for steps := range len(d.steps) + 1 {
		folder := t.TempDir()
		must(t, os.CopyFS(folder, os.DirFS(before)))
		p, ctx := sceneAt(folder), context.Background()
		if !d.closed {
			must(t, p.open())
		}
		for _, step := range d.steps[:steps] {
			must(t, step(ctx, p))
		}
		if p.s != nil {
			must(t, p.s.Close())
		}
		list = append(list, got(p.state())(t))
	}
	return list
}

// disturbed is a deed that was done with a blow falling on it.
type disturbed struct {
	names  []string
	struck bool
	did    int    // steps that were said to be done
	folder string // as it was left
	out    string
}

// disturb lets a second program do a deed in a copy of the scene, with a blow.
func (d deed) disturb(t testing.TB, before string, s strike) (disturbed, syscall.WaitStatus) {
	t.Helper()
	folder := t.TempDir()
	must(t, os.CopyFS(folder, os.DirFS(before)))
	out := got(os.Create(filepath.Join(folder, "out")))(t)
	cmd := childCommand("deed", folder)
	cmd.Env = append(cmd.Env, deedVariable+"="+d.name)
	cmd.Stdout, cmd.Stderr = out, out
	w, status, err := s.run(cmd)
	if errors.Is(err, errNoWatching) {
		t.Skip(err)
	}
	must(t, errors.Join(err, out.Close()))
	text := string(got(os.ReadFile(out.Name()))(t))
	return disturbed{names: w.names, struck: w.struck, did: strings.Count(text, "did "), folder: folder, out: text}, status
}

// trial does a deed with one blow and looks at what is left.
func (d deed) trial(t testing.TB, before string, s strike, allowed []string) outcome {
	t.Helper()
	done, status := d.disturb(t, before, s)
	at := "the end"
	if s.at <= len(done.names) {
		at = done.names[s.at-1]
	}
	if status.Exited() && status.ExitStatus() != 0 && status.ExitStatus() != 3 {
		t.Errorf("%s at change %d (%s): the program ends with %d\n%s", s.with, s.at, at, status.ExitStatus(), done.out)
		return lost
	}
	o, why := d.judge(done, allowed[done.did:min(done.did+2, len(allowed))])
	if o == lost {
		t.Errorf("%s at change %d of a file (%s), after %d of %d steps: %s", s.with, s.at, at, done.did, len(d.steps), why)
	}
	must(t, os.RemoveAll(done.folder))
	return o
}

// judge opens what is left and compares it with the states it may be in.
func (d deed) judge(done disturbed, allowed []string) (o outcome, why string) {
	p := sceneAt(done.folder)
	state, err := p.state()
	if err == nil {
		if !slices.Contains(allowed, state) {
			return lost, "it opens, and is neither before nor after:\n" + firstDifference(state, allowed[0])
		}
		if left := p.halfMade(); left != "" {
			return lost, left + " is half made"
		}
		return survived, ""
	}
	var own *Error
	if !errors.As(err, &own) || own.Code != CodeDamaged {
		return lost, fmt.Sprint("it does not open: ", err)
	}
	for _, snap := range own.Snapshots {
		again := sceneAt(done.folder + "-again")
		if os.CopyFS(done.folder+"-again", os.DirFS(done.folder)) != nil {
			continue
		}
		snap.Path = strings.Replace(snap.Path, p.data, again.data, 1)
		err := Restore(context.Background(), again.data, snap, again.options())
		state, err2 := again.state()
		if errors.Join(err, err2, os.RemoveAll(done.folder+"-again")) == nil && slices.Contains(allowed, state) {
			return offered, ""
		}
	}
	return lost, fmt.Sprintf("none of %d copies has it all: %v", len(own.Snapshots), err)
}

// halfMade names a file that was left half made, in the folder or outside it.
func (p *scene) halfMade() (name string) {
	_ = filepath.WalkDir(filepath.Dir(p.data), func(path string, _ fs.DirEntry, err error) error {
		base := filepath.Base(path)
		if err == nil && (strings.HasSuffix(base, unfinished) || strings.HasSuffix(base, copyEnd) || strings.HasSuffix(base, noteEnd)) {
			name = path
		}
		return err
	})
	return name
}

// state opens the folder and writes down everything in it and outside it, without
// what differs between two runs: ids and times.
func (p *scene) state() (text string, err error) {
	s, err := Open(p.data, p.options())
	if err != nil {
		return "", err
	}
	err = errors.Join(check(context.Background(), s.files.writer), checkLinks(s.files.writer))
	if err == nil {
		text, err = writtenDown(s.files.reader)
		text = p.withoutAbsent(text)
	}
	if err = errors.Join(err, s.Close()); err != nil {
		return "", err
	}
	outside, err := p.outsideState()
	return text + outside + p.erasedState(), err
}

// withoutAbsent leaves out where files are that are not there: where a file will be is
// kept before it gets its name, so that none is ever without it; who asks is told that
// nothing is there.
func (p *scene) withoutAbsent(text string) string {
	var kept []string
	for line := range strings.Lines(text) {
		_, after, is := strings.Cut(line, " path=")
		name, _, _ := strings.Cut(after, " ")
		if strings.HasPrefix(line, "saved_files:") && is {
			if _, err := os.Stat(filepath.Join(p.outside, name)); errors.Is(err, fs.ErrNotExist) {
				continue
			}
		}
		kept = append(kept, line)
	}
	return strings.Join(kept, "")
}

// outsideState writes down what lies outside the folder: a page by its bytes, a
// backup by what it opens to. Its digest has other bytes in every run, is gone before
// the backup is replaced and comes after it: it must not be that of another file.
func (p *scene) outsideState() (text string, err error) {
	entries, err := os.ReadDir(p.outside)
	for _, entry := range entries {
		path := filepath.Join(p.outside, entry.Name())
		if entry.Name() == "backup.db" {
			opened, err := OpenBackup(context.Background(), path, passphrase)
			if err != nil {
				return "", fmt.Errorf("a backup that does not open: %w", err)
			}
			text += fmt.Sprintf("backup %d %d %d\n", opened.Contents.Athletes, opened.Contents.Tests, opened.Contents.Plans)
			if err := opened.Close(); err != nil {
				return "", err
			}
			continue
		}
		if of, is := strings.CutSuffix(path, sumEnd); is {
			seal, err := sealOf(context.Background(), of)
			if err != nil {
				return "", err
			}
			if seal == SealBroken {
				text += "a digest that is not that of " + filepath.Base(of) + "\n"
			}
			continue
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return "", err
		}
		text += fmt.Sprintf("%s %x\n", entry.Name(), sha256.Sum256(data))
	}
	return text, err
}

// erasedState says whether a file of the data folder holds the one who may be erased.
func (p *scene) erasedState() string {
	found := 0
	_ = filepath.WalkDir(p.data, func(path string, d fs.DirEntry, err error) error {
		if err == nil && d.Type().IsRegular() {
			data, err := os.ReadFile(path)
			if err == nil && bytes.Contains(data, []byte(erasedName)) {
				found = 1
			}
		}
		return nil
	})
	return fmt.Sprintf("holds the one who may be erased: %d\n", found)
}

// firstDifference names the first line in which two states differ.
func firstDifference(have, want string) string {
	a, b := strings.Split(have, "\n"), strings.Split(want, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return fmt.Sprintf("  has  %.300s\n  had  %.300s", a[i], b[i])
		}
	}
	return fmt.Sprintf("%d lines and %d", len(a), len(b))
}
