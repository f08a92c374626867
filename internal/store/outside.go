package store

import (
	"errors"
	"os"
	"path/filepath"
)

// outside returns an error with CodeInvalid for a file within the data folder,
// by whatever name or link it is reached: a page or a backup written there could
// take the place of the records, or be lost with them.
func (s *Store) outside(file string) error {
	wrong := &Error{Code: CodeInvalid, Doing: "write file", Path: file, Err: errors.New("inside the data folder")}
	for _, end := range besides() {
		if sameFile(file, s.path()+end) {
			return wrong
		}
	}
	folder := filepath.Dir(file)
	for {
		if target, err := filepath.EvalSymlinks(folder); err == nil {
			folder = target // one that is not there has a parent that is
		}
		if sameFile(folder, s.dir) {
			return wrong
		}
		up := filepath.Dir(folder)
		if up == folder {
			return nil
		}
		folder = up
	}
}

// sameFile reports whether two paths are there and lead to one file or folder.
func sameFile(a, b string) bool {
	one, err := os.Stat(a)
	if err != nil {
		return false
	}
	other, err := os.Stat(b)
	return err == nil && os.SameFile(one, other)
}
