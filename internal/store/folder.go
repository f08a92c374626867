package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"github.com/gofrs/flock"
)

// LockName is the file whose lock says that a program has the folder open.
// The file stays when the program ends; only the lock counts, and the system
// takes it back even from a program that was killed.
const LockName = "ebbwell.lock"

// DefaultDir returns the program's folder inside the user's own data folder:
// XDG_DATA_HOME on Linux and its kin, Application Support on a Mac, the local
// application data on Windows. It makes nothing.
func DefaultDir() (string, error) {
	home, err := os.UserHomeDir()
	if err != nil {
		return "", fmt.Errorf("find the home folder: %w", err)
	}
	return defaultDir(runtime.GOOS, home, os.Getenv), nil
}

// defaultDir is DefaultDir for a system, a home folder and an environment.
func defaultDir(system, home string, env func(string) string) string {
	switch system {
	case "windows":
		if base := env("LOCALAPPDATA"); base != "" {
			return filepath.Join(base, "Ebbwell")
		}
		return filepath.Join(home, "AppData", "Local", "Ebbwell")
	case "darwin", "ios":
		return filepath.Join(home, "Library", "Application Support", "Ebbwell")
	}
	// A relative XDG_DATA_HOME is invalid and ignored (XDG Base Directory
	// Specification 0.8).
	if base := env("XDG_DATA_HOME"); filepath.IsAbs(base) {
		return filepath.Join(base, "ebbwell")
	}
	return filepath.Join(home, ".local", "share", "ebbwell")
}

// makeFolder makes a folder that only the user can read, whatever the umask. One
// that is there already is closed to others when nothing is in it but what this
// program makes; a folder that holds something else too is the user's to close.
func makeFolder(dir string) error {
	if info, err := os.Stat(dir); err == nil {
		if !info.IsDir() {
			return &Error{Code: CodeInvalid, Doing: "make data folder", Path: dir, Err: errors.New("a file has this name")}
		}
		if loose := info.Mode().Perm() &^ 0o077; loose != info.Mode().Perm() && onlyOurs(dir) {
			// One that another user owns stays as it is: its files are closed.
			_ = os.Chmod(dir, loose)
		}
		return nil
	}
	err := os.MkdirAll(dir, 0o700)
	if err == nil {
		err = os.Chmod(dir, 0o700)
	}
	if err != nil {
		return &Error{Code: codeOf(err), Doing: "make data folder", Path: dir, Err: err}
	}
	return nil
}

// tryWriting finds out whether files can be made in a folder.
func tryWriting(dir string) error {
	f, err := os.CreateTemp(dir, ".try-*"+unfinished)
	if err == nil {
		err = errors.Join(f.Close(), os.Remove(f.Name()))
	}
	if err != nil {
		return &Error{Code: codeOf(err), Doing: "write into data folder", Path: dir, Err: err}
	}
	return nil
}

// takeLock takes the folder for this program. When only looking, others may
// look too, and a folder that nobody could lock is free.
func takeLock(dir string, looking bool) (*flock.Flock, error) {
	path := filepath.Join(dir, LockName)
	lock := flock.New(path, flock.SetPermissions(0o600))
	try := lock.TryLock
	if looking {
		if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
			return lock, nil
		}
		lock = flock.New(path, flock.SetFlag(os.O_RDONLY))
		try = lock.TryRLock
	}
	taken, err := try()
	if err != nil {
		return nil, &Error{Code: codeOf(err), Doing: "lock data folder", Path: dir, Err: err}
	}
	if !taken {
		return nil, &Error{Code: CodeInUse, Doing: "lock data folder", Path: dir}
	}
	return lock, nil
}

// locks are held on the folders of one practice.
type locks []*flock.Flock

// Close frees the folders.
func (l locks) Close() error {
	var errs []error
	for _, lock := range l {
		errs = append(errs, lock.Close())
	}
	return errors.Join(errs...)
}

// onlyOurs reports whether a folder holds nothing but what this program makes:
// the database and what goes with it, the snapshots, what is half made.
func onlyOurs(dir string) bool {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return false
	}
	for _, entry := range entries {
		name := entry.Name()
		_, isCopy := snapshotOf(dir, entry)
		end, database := strings.CutPrefix(name, fileName)
		named := database && slices.Contains(besides(), end) || name == LockName || name == snapshotFolder
		if !isCopy && !named && !strings.Contains(name, unfinished) && !strings.HasPrefix(name, noteStart) {
			return false
		}
	}
	return true
}

// behindLink is the file at a path, or the one that a link there leads to. A
// link that leads nowhere is an error: what it led to may come back with a disk.
func behindLink(path string) (string, error) {
	info, err := os.Lstat(path)
	if err != nil || info.Mode()&fs.ModeSymlink == 0 {
		return path, nil //nolint:nilerr // whoever opens it will say what is wrong
	}
	target, err := filepath.EvalSymlinks(path)
	if err != nil {
		return "", &Error{Code: CodeDisk, Doing: "follow the link to the database", Path: path, Err: err}
	}
	return target, nil
}

// sameFolder reports whether two paths are one folder.
func sameFolder(a, b string) (bool, error) {
	one, err := os.Stat(a)
	if err != nil {
		return false, err
	}
	other, err := os.Stat(b)
	return err == nil && os.SameFile(one, other), err
}

// InUse reports whether a running program has a data folder open; the folder is
// left as it is.
func InUse(dir string) (bool, error) {
	lock, err := takeLock(dir, true)
	if CodeOf(err) == CodeInUse {
		return true, nil
	}
	if err != nil {
		return false, err
	}
	return false, fail(lock.Close(), "free data folder")
}

// sizeOf returns the length of a file in bytes.
func sizeOf(path string) (int64, error) {
	info, err := os.Stat(path)
	if err != nil {
		return 0, err
	}
	return info.Size(), nil
}

// sealFile makes a file readable by the user only, whatever the umask was, and
// sure to be on the disk.
func sealFile(path string) error {
	if err := os.Chmod(path, 0o600); err != nil {
		return err
	}
	return syncFile(path)
}

// syncFile makes a file sure to be on the disk.
func syncFile(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// moveInto renames a finished file to its place and makes the name sure to be
// on the disk. Systems that cannot sync a folder do so on their own.
func moveInto(from, to string) error {
	if err := os.Rename(from, to); err != nil {
		return err
	}
	if dir, err := os.Open(filepath.Dir(to)); err == nil {
		_ = dir.Sync()
		return dir.Close()
	}
	return nil
}
