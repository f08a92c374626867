package demo

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"ebbwell/internal/store"
)

// folderPrefix begins the name of a folder of the invented practice.
const folderPrefix = "ebbwell-demo-"

// NewFolder makes a temporary folder for the invented practice, and removes
// those that a program left behind which was killed.
func NewFolder() (string, error) { return newFolder(os.TempDir(), time.Now()) }

// newFolder is NewFolder in a folder for temporary files.
func newFolder(in string, now time.Time) (string, error) {
	left := removeLeft(in, now)
	dir, err := os.MkdirTemp(in, folderPrefix)
	if err != nil {
		return "", fmt.Errorf("make a folder for the invented practice: %w", errors.Join(err, left))
	}
	return dir, nil
}

// settling is how long a folder may be there before a program has locked it.
const settling = time.Hour

// removeLeft removes the folders that no program has open. What belongs to
// somebody else stays, and is no error.
func removeLeft(in string, now time.Time) error {
	entries, err := os.ReadDir(in)
	if err != nil {
		return fmt.Errorf("look for folders left behind: %w", err)
	}
	for _, entry := range entries {
		dir := filepath.Join(in, entry.Name())
		if entry.IsDir() && strings.HasPrefix(entry.Name(), folderPrefix) && leftBehind(dir, now) {
			_ = os.RemoveAll(dir)
		}
	}
	return nil
}

// leftBehind reports whether a folder was locked once and is not now, or was
// never locked in the time that takes.
func leftBehind(dir string, now time.Time) bool {
	used, err := store.InUse(dir)
	if err != nil || used {
		return false
	}
	if info, err := os.Stat(filepath.Join(dir, store.LockName)); err == nil && !info.IsDir() {
		return true
	}
	info, err := os.Stat(dir)
	return err == nil && now.Sub(info.ModTime()) > settling
}
