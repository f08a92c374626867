package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// noticesFile is where the notices stand in the program.
const noticesFile = "assets/notices.txt"

// module is a module that is in the program, and its folder.
type module struct{ name, version, dir string }

// notices writes the licences of what the program is made with: every module
// that is in it on one of the systems it is built for, the typeface, the tables.
func notices(ctx context.Context, t tool, _ []string) error {
	text, modules, err := t.noticesText(ctx)
	if err != nil {
		return err
	}
	if err := os.WriteFile(t.noticesPath(), []byte(text), 0o644); err != nil {
		return fmt.Errorf("write the notices: %w", err)
	}
	t.say("%d modules and the typeface are in %s.", modules, noticesFile)
	return nil
}

// noticesPath is the file of the notices.
func (t tool) noticesPath() string { return filepath.Join(t.root, filepath.FromSlash(noticesFile)) }

// sameNotices fails when the file is not what the modules of today make.
func (t tool) sameNotices(ctx context.Context) error {
	text, _, err := t.noticesText(ctx)
	if err != nil {
		return err
	}
	kept, err := os.ReadFile(t.noticesPath())
	if err != nil {
		return fmt.Errorf("read the notices: %w", err)
	}
	if string(kept) != text {
		return fmt.Errorf("%s is not of the modules there are: go run ./cmd/dev notices", noticesFile)
	}
	return nil
}

// noticesText makes the notices, and counts the modules in them.
func (t tool) noticesText(ctx context.Context) (text string, modules int, err error) {
	list, err := t.modules(ctx)
	if err != nil {
		return "", 0, err
	}
	var out strings.Builder
	out.WriteString(noticesBegin)
	for _, m := range list {
		text, err := licenceOf(m.dir)
		if err != nil {
			return "", 0, fmt.Errorf("%s %s: %w", m.name, m.version, err)
		}
		fmt.Fprintf(&out, "\n%s\n%s %s\n\n%s\n", strings.Repeat("-", 72), m.name, m.version, text)
	}
	font, err := os.ReadFile(filepath.Join(t.root, "assets", "fonts", "LICENSE-IBM-Plex-Sans.txt"))
	if err != nil {
		return "", 0, fmt.Errorf("read the licence of the typeface: %w", err)
	}
	fmt.Fprintf(&out, "\n%s\nIBM Plex Sans\n\n%s\n", strings.Repeat("-", 72), strings.TrimSpace(string(font)))
	return out.String(), len(list), nil
}

// noticesBegin stands above the licences.
const noticesBegin = `Ebbwell is made with the modules and the typeface below, each under its own
licence. The sources of its tables of foods, breaks, activities and climates
stand in the tables themselves and are listed under About.
`

// modules lists the modules that are in the program, without its own and without
// Go's standard library, by name.
func (t tool) modules(ctx context.Context) ([]module, error) {
	c := t.command(ctx, []string{"CGO_ENABLED=1"}, "go", "list", "-e", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}} {{.Dir}}{{end}}{{end}}", program)
	var out bytes.Buffer
	c.Stdout = &out
	if err := c.Run(); err != nil {
		return nil, fmt.Errorf("list the modules of the program: %w", err)
	}
	var list []module
	for _, line := range lines(out.String()) {
		part := strings.Fields(line)
		if len(part) != 3 {
			return nil, fmt.Errorf("list the modules of the program: %q is no module", line)
		}
		if m := (module{part[0], part[1], part[2]}); !slices.Contains(list, m) {
			list = append(list, m)
		}
	}
	slices.SortFunc(list, func(a, b module) int { return strings.Compare(a.name, b.name) })
	return list, nil
}

// licenceOf reads the licence in a folder, with what a module says beside it of
// its authors.
func licenceOf(dir string) (string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return "", fmt.Errorf("find the licence: %w", err)
	}
	var texts []string
	for _, e := range entries {
		name := strings.ToUpper(e.Name())
		if e.IsDir() || !strings.HasPrefix(name, "LICEN") && !strings.HasPrefix(name, "COPYING") && !strings.HasPrefix(name, "NOTICE") {
			continue
		}
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			return "", fmt.Errorf("read the licence: %w", err)
		}
		texts = append(texts, strings.TrimSpace(strings.ReplaceAll(string(data), "\r\n", "\n")))
	}
	if len(texts) == 0 {
		return "", errors.New("no licence in its folder")
	}
	return strings.Join(texts, "\n\n"), nil
}
