package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"ebbwell/cmd/dev/drive"
)

// How large the small disk is: the records of a squad with their copies fit several
// times. It is a file system in memory, so that a full one is what the program would see
// on a full stick or partition.
const smallDisk = 24 << 20

// disk is a small file system over a data folder; it takes a system that lets this user
// mount one.
type disk struct{ at string }

// mount puts it over a folder that only the user can read.
func (d *disk) mount(ctx context.Context, at string) error {
	out, err := exec.CommandContext(ctx, "mount", "-t", "tmpfs", "-o", fmt.Sprintf("size=%d,mode=0700", smallDisk), "tmpfs", at).CombinedOutput()
	if err != nil {
		return fmt.Errorf("mount a small disk: %w: %s", err, strings.TrimSpace(string(out)))
	}
	d.at = at
	return nil
}

// unmount takes it away again, where it is there.
func (d *disk) unmount() error {
	if d.at == "" {
		return nil
	}
	out, err := exec.Command("umount", d.at).CombinedOutput()
	if err != nil {
		return fmt.Errorf("unmount the small disk: %w: %s", err, strings.TrimSpace(string(out)))
	}
	d.at = ""
	return nil
}

// mountable says why no small disk can be mounted here; nil where one can.
func mountable(ctx context.Context, work string) error {
	at := filepath.Join(work, "probe")
	if err := os.Mkdir(at, 0o700); err != nil {
		return fmt.Errorf("make a folder to mount on: %w", err)
	}
	var d disk
	return errors.Join(d.mount(ctx, at), d.unmount())
}

// move puts the data folder onto the small disk.
func (d *disk) move(ctx context.Context, data string) error {
	before := data + ".before"
	if err := errors.Join(os.Rename(data, before), os.Mkdir(data, 0o700)); err != nil {
		return fmt.Errorf("move the data folder: %w", err)
	}
	if err := d.mount(ctx, data); err != nil {
		return err
	}
	return copyFolder(before, data)
}

// copyFolder copies what is in a folder into another, for the user only.
func copyFolder(from, to string) error {
	return filepath.WalkDir(from, func(path string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(from, path)
		if err != nil || rel == "." || rel == fillerName {
			return err
		}
		if e.IsDir() {
			return os.Mkdir(filepath.Join(to, rel), 0o700)
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(to, rel), data, 0o600)
	})
}

// fillerName is the file that takes the room.
const fillerName = "filler"

func (d *disk) filler() string { return filepath.Join(d.at, fillerName) }

// fill takes all the room there is.
func (d *disk) fill() (err error) {
	f, err := os.OpenFile(d.filler(), os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		return fmt.Errorf("fill the disk: %w", err)
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	block := make([]byte, 4096)
	for range smallDisk / len(block) {
		if n, _ := f.Write(block); n < len(block) {
			return nil // that is what was wanted
		}
	}
	return errors.New("the disk has room for more than its size")
}

// free gives the room back.
func (d *disk) free() error { return os.Remove(d.filler()) }

// fullDisk opens the squad's day on a small disk, fills it, types, reads in words that it
// is not saved, gives room, and finds it saved. Behind it the program has ended.
func (d *disk) fullDisk() []drive.Step {
	const field = "squad.bottle.1.before"
	isKept := func(grams float64) func(context.Context, string) error {
		return func(ctx context.Context, dir string) error { return inCopy(ctx, dir, grams) }
	}
	return slices.Concat([]drive.Step{
		{Says: "move the data folder to a small disk", Do: func(ctx context.Context, r *drive.Driver) error { return d.move(ctx, r.Data()) }},
		drive.Start(), drive.Click("frame.rail.test-day"), drive.See("squad.time"),
	}, toRow("1"), []drive.Step{
		drive.Fill(field, "801"), drive.Press("Return"), rest(), saved(true),
		drive.Check("with room it is kept", isKept(801)),
		{Says: "fill the disk", Do: func(context.Context, *drive.Driver) error { return d.fill() }},
		drive.Fill(field, "802"), drive.Press("Return"), saved(false), drive.Shot("disk-full"),
		drive.Check("on the full disk the value before is kept", isKept(801)),
		drive.Shows(field, "802"),
		drive.Click("frame.rail.athletes"), drive.See("squad.time"), drive.Shows(field, "802"), drive.Shot("disk-full-stays"),
		{Says: "free the disk", Do: func(context.Context, *drive.Driver) error { return d.free() }},
		saved(true), drive.Check("with room it is saved", isKept(802)),
		drive.Quit(), drive.Sound(),
		drive.Check("after the end it is saved", isKept(802)),
		{Says: "take the small disk away", Do: func(context.Context, *drive.Driver) error { return d.unmount() }},
	})
}

// inCopy looks at the first row's bottle in a copy of the records, since the program has
// them open.
func inCopy(ctx context.Context, dir string, grams float64) error {
	at, err := os.MkdirTemp(filepath.Dir(dir), "copy-")
	if err != nil {
		return fmt.Errorf("copy the records: %w", err)
	}
	if err := copyFolder(dir, at); err != nil {
		return fmt.Errorf("copy the records: %w", err)
	}
	return bottleIs(ctx, at, 0, grams)
}

// saved waits until the foot of the rail says that all is saved, or that the disk is full.
func saved(well bool) drive.Step {
	const foot = "frame.saved"
	want := "The disk is full."
	if well {
		want = "Last saved"
	}
	return drive.Step{Says: fmt.Sprintf("the window says %q", want), Do: func(ctx context.Context, d *drive.Driver) error {
		return d.Until(ctx, want, func(p drive.Places) error { return says(p, foot, want) })
	}}
}

// says reports an error unless a control shows a text.
func says(p drive.Places, name, want string) error {
	for _, c := range p.Controls {
		if c.Name == name {
			if strings.Contains(c.Text, want) {
				return nil
			}
			return fmt.Errorf("%s says %q", name, c.Text)
		}
	}
	return fmt.Errorf("%s is not there", name)
}

// diskPart are the steps with the full disk; none, with the reason said, where no small
// disk can be mounted.
func diskPart(ctx context.Context, d *disk, work string, out io.Writer) ([]drive.Step, error) {
	if err := mountable(ctx, work); err != nil {
		_, e := fmt.Fprintln(out, "the full disk is not tried:", err)
		return nil, e
	}
	return d.fullDisk(), nil
}
