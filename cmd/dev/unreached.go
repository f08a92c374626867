package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// deadcode finds functions that no program reaches; pinned.
const (
	deadcode        = "golang.org/x/tools/cmd/deadcode"
	deadcodeVersion = "v0.42.0"
)

// unreachedFile lists the functions that may stay though no program reaches
// them; the list is only ever made shorter.
const unreachedFile = "cmd/dev/testdata/unreached.txt"

// unreached fails for a function that no program reaches and that is not in the
// list, and for a line of the list that is reached or gone.
func (t tool) unreached(ctx context.Context) error {
	built, err := t.buildTool(ctx, deadcode, deadcodeVersion)
	if err != nil {
		return err
	}
	c := t.command(ctx, []string{"CGO_ENABLED=0"}, built, "-tags", tags, "-f", deadcodeFormat, program, "ebbwell/cmd/dev/...")
	var out bytes.Buffer
	c.Stdout = &out
	if err := c.Run(); err != nil {
		return fmt.Errorf("look for functions that nothing reaches: %w", err)
	}
	data, err := os.ReadFile(filepath.Join(t.root, filepath.FromSlash(unreachedFile)))
	if err != nil {
		return fmt.Errorf("look for functions that nothing reaches: %w", err)
	}
	fresh, gone := differing(lines(out.String()), lines(string(data)))
	switch {
	case len(fresh) > 0:
		return fmt.Errorf("no program reaches: %s; delete them, or move them to the tests that need them", strings.Join(fresh, ", "))
	case len(gone) > 0:
		return fmt.Errorf("take out of %s what is reached or gone: %s", unreachedFile, strings.Join(gone, ", "))
	}
	return nil
}

// deadcodeFormat writes a line a function: its package and its name.
const deadcodeFormat = `{{$p := .Path}}{{range .Funcs}}{{$p}} {{.Name}}{{"\n"}}{{end}}`

// lines are the lines of a text that say something and are no remark.
func lines(text string) []string {
	var list []string
	for _, line := range strings.Split(text, "\n") {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			list = append(list, line)
		}
	}
	return list
}

// differing are the lines found that are not in a list, and those of the list
// that are not found.
func differing(found, list []string) (fresh, gone []string) {
	without := func(these, those []string) (rest []string) {
		for _, line := range these {
			if !slices.Contains(those, line) {
				rest = append(rest, line)
			}
		}
		return rest
	}
	return without(found, list), without(list, found)
}
