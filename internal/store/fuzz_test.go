package store

import (
	"io/fs"
	"path/filepath"
	"slices"
	"testing"
	"testing/fstest"
	"time"
)

// The name of a snapshot is one of ours, or of another file: its time, reason and
// path are read from it and nothing else.
func FuzzSnapshotOf(f *testing.F) {
	for _, name := range []string{
		"daily-20260518T071500.000Z.db", "schema-20260518T071500.123Z.db", "set-aside-20991231T235959.999Z.db",
		"daily-20260518T071500.000Z.db-wal", "weekly-20260518T071500.000Z.db", "-.db", ".db", "daily-.db", "daily-20260230T071500.000Z.db", "",
		"daily-20260518T071500,000Z.db", "daily-00000101T000000.000Z.db", "x\x00y.db", "../daily-20260518T071500.000Z.db",
	} {
		f.Add(name)
	}
	file := got(fs.Stat(fstest.MapFS{"file": &fstest.MapFile{Data: []byte("12345")}}, "file"))(f)
	f.Fuzz(func(t *testing.T, name string) {
		snap, ok := snapshotOf("folder", named{file, name})
		if !ok {
			if snap != (Snapshot{}) {
				t.Fatalf("%q is half a snapshot: %+v", name, snap)
			}
			return
		}
		if !slices.Contains([]SnapshotReason{SnapshotDaily, SnapshotSchema, SnapshotSetAside}, snap.Reason) ||
			snap.Bytes != 5 || snap.Path != filepath.Join("folder", name) {
			t.Fatalf("%q is %+v", name, snap)
		}
		if again := string(snap.Reason) + "-" + snap.At.Format(stampLayout) + ".db"; again != name || snap.At.Location() != time.UTC {
			t.Fatalf("%q is read as %q", name, again)
		}
	})
}

// named is a file by another name.
type named struct {
	fs.FileInfo
	name string
}

func (n named) Name() string               { return n.name }
func (n named) Type() fs.FileMode          { return 0 }
func (n named) Info() (fs.FileInfo, error) { return n.FileInfo, nil }
