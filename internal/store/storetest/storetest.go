// Package storetest gives tests data folders that were filled once: making a
// database and the invented practice in it takes most of a second, a copy of both
// a tenth of that. What makes a folder is tried by the store's own tests.
package storetest

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"ebbwell/internal/store"
)

// Fill writes records into a new data folder.
type Fill func(*store.Store) error

// folder is what a data folder holds, by the path in it, once it was filled.
type folder struct {
	once  sync.Once
	files map[string][]byte
	err   error
}

// folders are those filled so far in this run, by their key: each test program fills
// its own, and they never change.
var folders sync.Map //nolint:gochecknoglobals // made once, never changed

// Dir returns a new data folder, closed, that holds what fill writes. The same key
// stands for the same records, written at the same moment by the same person.
func Dir(t testing.TB, key string, o store.Options, fill Fill) string {
	t.Helper()
	if o.Clock != nil {
		key += "\n" + o.Clock().String()
	}
	kept, _ := folders.LoadOrStore(key+"\n"+o.By, &folder{})
	f := kept.(*folder)
	f.once.Do(func() { f.files, f.err = filled(o, fill) })
	if f.err != nil {
		t.Fatal(f.err)
	}
	dir := t.TempDir()
	if err := write(dir, f.files); err != nil {
		t.Fatal(err)
	}
	return dir
}

// Open opens a folder made by [Dir] and closes it when the test ends.
func Open(t testing.TB, key string, o store.Options, fill Fill) *store.Store {
	t.Helper()
	opened, err := store.Open(Dir(t, key, o, fill), o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := opened.Close(); err != nil {
			t.Error(err)
		}
	})
	return opened
}

// filled fills a folder and reads it. It is opened a second time, so that the copy
// of the day lies beside it as it does after any start.
func filled(o store.Options, fill Fill) (files map[string][]byte, err error) {
	dir, err := os.MkdirTemp("", "ebbwell-test-")
	if err != nil {
		return nil, fmt.Errorf("make a data folder: %w", err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(dir)) }()
	for _, write := range []Fill{fill, func(*store.Store) error { return nil }} {
		opened, err := store.Open(dir, o)
		if err != nil {
			return nil, fmt.Errorf("fill a data folder: %w", err)
		}
		if err := errors.Join(write(opened), opened.Close()); err != nil {
			return nil, fmt.Errorf("fill a data folder: %w", err)
		}
	}
	return read(dir)
}

// read reads all files of a folder.
func read(dir string) (map[string][]byte, error) {
	files := map[string][]byte{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		files[path], err = os.ReadFile(filepath.Join(dir, filepath.FromSlash(path)))
		return err
	})
	if err != nil {
		return nil, fmt.Errorf("read a data folder: %w", err)
	}
	return files, nil
}

// write writes the files into a folder, as the store makes them: for the user alone.
func write(dir string, files map[string][]byte) error {
	for path, data := range files {
		to := filepath.Join(dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(to), 0o700); err != nil {
			return fmt.Errorf("copy a data folder: %w", err)
		}
		if err := os.WriteFile(to, data, 0o600); err != nil {
			return fmt.Errorf("copy a data folder: %w", err)
		}
	}
	return nil
}
