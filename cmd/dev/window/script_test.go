package main

import (
	"context"
	"os"
	"path/filepath"
	"testing"

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
	for _, args := range [][]string{{"-nosuch"}, {"extra"}} {
		if err := start(context.Background(), args); err == nil {
			t.Errorf("%v was taken", args)
		}
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
