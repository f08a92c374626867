package main

import (
	"fmt"
	"go/parser"
	"go/token"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// layers lists the packages from the top down: a package imports only from
// layers below its own. A package that is not listed belongs to the nearest
// listed folder above it (internal/store/v1 to internal/store); packages of
// one folder may import each other. A star stands for any one folder.
func layers() [][]string {
	return [][]string{
		{"cmd/ebbwell", "cmd/dev"},
		{"app/shots"},
		{"app"},
		{"app/screen/*"},         // the screens, each by itself
		{"app/screen/agreement"}, // opened by the planner
		{"app/screen/planner/compare", "app/screen/planner/day", "app/screen/planner/steps", "app/screen/planner/session"},
		{"app/screen/planner/mix", "app/screen/planner/figures", "app/screen/planner/breaks", "app/screen/planner/review"},
		{"app/screen/planner/part"},
		{"app/screen/planner/wording"},
		{"app/screen/planner/state"},
		{"app/screen/otherclimate"}, // asked by the planner
		{"app/screen/heat"},
		{"app/kit/preview"},
		{"app/kit/picture", "app/kit/letter"},
		{"app/kit/bind", "app/kit/saveto", "app/kit/copying"},
		{"app/apptest"},
		{"app/kit/desk"},
		{"app/kit/field", "app/kit/chart"},
		{"app/apptest/inspect"},
		{"app/kit/look", "app/kit/keep", "app/kit/undo", "app/kit/amount", "app/kit/sound"},
		{"internal/demo"},
		{"internal/store/large", "internal/store/storetest"}, // fill a store for benchmarks and tests
		{"internal/disclose"},
		{"internal/store", "internal/handout", "internal/squad", "internal/tables"},
		{"internal/bundle", "internal/exchange"},
		{"internal/consult"},
		{"internal/frozen"},
		{"internal/care"},
		{"internal/record"},
		{"internal/plan"},
		{"internal/sweat", "internal/fuel", "internal/climate"},
		{"internal/uncertainty", "internal/figure"},
		{"internal/device"},
		{"internal/evidence"},
		{"internal/words"},
		{"internal/quantity", "internal/lock", "internal/plain"},
		{"assets", "internal/golden", "internal/published", "internal/offline", "internal/cputime"},
	}
}

// helpers lists the packages that only tests, and each other, may import.
func helpers() []string {
	return []string{
		"app/apptest", "app/kit/field/drive", "app/kit/keep/clock", "app/kit/look/golden", "app/apptest/inspect", "internal/golden",
		"internal/handout/pdfread", "internal/store/large", "internal/store/storetest", "internal/published", "internal/words/spacing", "internal/cputime",
	}
}

// reserved says which folders alone may import a package from outside, or
// whatever lies below it.
func reserved() map[string][]string {
	return map[string][]string{
		"fyne.io/fyne/v2":          {"app", "cmd/ebbwell"},
		"fyne.io/fyne/v2/app":      {"cmd/ebbwell"}, // it needs cgo
		"github.com/go-gl":         {"cmd/ebbwell"}, // so does this
		"gorm.io":                  {"internal/store"},
		"github.com/glebarez":      {"internal/store"},
		"github.com/go-gormigrate": {"internal/store"},
		"modernc.org":              {"internal/store"},
		"database/sql":             {"internal/store"},
		"codeberg.org/go-pdf":      {"internal/handout"},
		"github.com/xuri":          {"internal/exchange", "internal/tables"},
		"filippo.io/age":           {"internal/lock"},
		"net/http":                 {}, // nothing goes over a network
		"net":                      {},
		// The parts of the planner are its own, and the agreement's that it opens.
		"ebbwell/app/screen/planner/part":    {"app/screen/planner", "app/screen/agreement"},
		"ebbwell/app/screen/planner/wording": {"app/screen/planner", "app/screen/agreement"},
		"ebbwell/app/screen/planner/state":   {"app/screen/planner", "app/screen/agreement"},

		"ebbwell/internal/words": {"internal/words", "internal/consult", "internal/handout", "app", "cmd"},
		"ebbwell/internal/store": {"internal/store", "internal/demo", "app", "cmd"},
	}
}

// upward lists what tests of a folder may import from above or beside it: the
// invented practice, where it gives them records as real ones are, the screen to which a
// walk through another leads, and what the planner says.
func upward() map[string][]string {
	return map[string][]string{
		"internal/handout":   {"ebbwell/internal/demo", "ebbwell/internal/store", "ebbwell/internal/store/storetest"},
		"app/screen/planner": {"ebbwell/app/screen/handoutview"},
		// All that is said of a hidden mass is compared without the screens around it.
		"app": {"ebbwell/app/screen/planner/state", "ebbwell/app/screen/planner/wording"},
		// What is read of closed tests is tried on the invented practice.
		"app/kit/desk": {"ebbwell/app/apptest"},
		// What it tells of controls is tried on some.
		"app/apptest/inspect": {"ebbwell/app/kit/field"},
	}
}

// imported is one import in one file.
type imported struct{ file, name string }

// under reports whether a path is a folder or lies in it.
func under(name, folder string) bool {
	return name == folder || strings.HasPrefix(name, folder+"/")
}

// layerOf returns the layer of a folder and the listed folder it belongs to;
// -1 when none is. A folder listed by name comes before a star.
func layerOf(folder string) (layer int, listed string) {
	layer = -1
	best := 0
	for i, names := range layers() {
		for _, name := range names {
			weight := 1
			if above, each := strings.CutSuffix(name, "/*"); each && strings.HasPrefix(folder, above+"/") {
				first, _, _ := strings.Cut(folder[len(above)+1:], "/")
				name, weight = above+"/"+first, 0
			}
			weight += 2 * len(name)
			if under(folder, name) && weight > best {
				layer, listed, best = i, name, weight
			}
		}
	}
	return layer, listed
}

// breach says what is wrong with an import; empty when nothing is.
func breach(i imported) string {
	folder := path.Dir(i.file)
	layer, listed := layerOf(folder)
	if layer < 0 {
		return fmt.Sprintf("%s: its folder is in no layer", i.file)
	}
	isTest := strings.HasSuffix(i.file, "_test.go")
	if isTest && slices.Contains(upward()[folder], i.name) {
		return ""
	}
	// A test may look whether its package's codes have sentences.
	sentences := i.name == "ebbwell/internal/words" && isTest
	if owner, allowed := ownerOf(i.name); owner != "" && !sentences && !anyUnder(folder, allowed) {
		return fmt.Sprintf("%s imports %s, which is for %v only", i.file, i.name, allowed)
	}
	target, own := strings.CutPrefix(i.name, "ebbwell/")
	if !own {
		return ""
	}
	if anyUnder(target, helpers()) && !isTest && !anyUnder(folder, helpers()) {
		return fmt.Sprintf("%s imports %s, which is for tests", i.file, i.name)
	}
	below, to := layerOf(target)
	if below < 0 || (below <= layer && to != listed) {
		return fmt.Sprintf("%s imports %s, which is not below it", i.file, i.name)
	}
	return ""
}

// ownerOf returns the longest reserved name over an import.
func ownerOf(name string) (owner string, allowed []string) {
	for prefix, folders := range reserved() {
		// "net" alone: net/url and the like only take words apart.
		if (prefix == "net" && name != "net") || !under(name, prefix) || len(prefix) < len(owner) {
			continue
		}
		owner, allowed = prefix, folders
	}
	return owner, allowed
}

// anyUnder reports whether a folder lies in one of several.
func anyUnder(folder string, list []string) bool {
	for _, name := range list {
		if under(folder, name) {
			return true
		}
	}
	return false
}

// importsBelow reads the imports of every Go file of the module.
func importsBelow(root string) (list []imported, err error) {
	err = walkGo(root, func(file string) error {
		tree, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, file), nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range tree.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			list = append(list, imported{file, name})
		}
		return nil
	})
	return list, err
}

func TestImportsRunDownward(t *testing.T) {
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	list, err := importsBelow(root)
	if err != nil {
		t.Fatal(err)
	}
	if len(list) < 100 {
		t.Fatalf("only %d imports were found", len(list))
	}
	for _, i := range list {
		if wrong := breach(i); wrong != "" {
			t.Error(wrong)
		}
	}
}

func TestBreachesAreSeen(t *testing.T) {
	for _, c := range []struct {
		file, imports string
		wrong         bool
	}{
		{"internal/plan/plan.go", "ebbwell/internal/fuel", false},
		{"internal/fuel/mix.go", "ebbwell/internal/plan", true},
		{"internal/fuel/mix.go", "ebbwell/internal/sweat", true},
		{"internal/plan/plan.go", "ebbwell/internal/plan/smallest", false},
		{"internal/store/store.go", "gorm.io/gorm", false},
		{"internal/store/v1/tables.go", "gorm.io/gorm", false},
		{"internal/record/test.go", "gorm.io/gorm", true},
		{"app/screen/roster/view.go", "github.com/glebarez/sqlite", true},
		{"app/screen/roster/view.go", "ebbwell/internal/store", false},
		{"app/screen/roster/view.go", "fyne.io/fyne/v2/widget", false},
		{"app/screen/roster/view.go", "fyne.io/fyne/v2/app", true},
		{"app/screen/roster/view_test.go", "fyne.io/fyne/v2/test", false},
		{"internal/handout/page.go", "fyne.io/fyne/v2", true},
		{"cmd/ebbwell/main.go", "fyne.io/fyne/v2/app", false},
		{"cmd/dev/main.go", "fyne.io/fyne/v2", true},
		{"app/kit/look/theme.go", "ebbwell/app/kit/field", true},
		{"app/screen/roster/view.go", "ebbwell/app/kit/look", false},
		{"app/screen/roster/view.go", "ebbwell/app/screen/roster/table", false},
		{"app/screen/roster/view.go", "ebbwell/app/screen/planner", true},
		{"app/screen/planner/view.go", "ebbwell/app/screen/planner/mix", false},
		{"app/screen/planner/mix/mix.go", "ebbwell/app/screen/planner/part", false},
		{"app/screen/planner/mix/mix.go", "ebbwell/app/screen/planner/figures", true},
		{"app/screen/planner/part/part.go", "ebbwell/app/screen/planner/mix", true},
		{"app/screen/agreement/agree.go", "ebbwell/app/screen/planner/part", false},
		{"app/screen/roster/view.go", "ebbwell/app/screen/planner/part", true},
		{"app/screen/roster/view.go", "ebbwell/app", true},
		{"app/window.go", "ebbwell/app/screen/roster", false},
		{"app/kit/desk/document.go", "ebbwell/app/screen/roster", true},
		{"app/kit/field/number.go", "ebbwell/app/kit/look", false},
		{"internal/sweat/loss.go", "ebbwell/internal/words", true},
		{"internal/sweat/words_test.go", "ebbwell/internal/words", false},
		{"internal/words/number.go", "ebbwell/internal/quantity", false},
		{"internal/evidence/limits.go", "ebbwell/internal/words", true},
		{"internal/store/backup.go", "net/http", true},
		{"internal/store/backup.go", "net/url", false},
		{"internal/demo/demo.go", "ebbwell/internal/store", false},
		{"internal/store/store.go", "ebbwell/internal/demo", true},
		{"internal/plan/published_test.go", "ebbwell/internal/published", false},
		{"internal/plan/plan.go", "ebbwell/internal/published", true},
		{"app/screen/roster/view_test.go", "ebbwell/app/apptest", false},
		{"app/screen/roster/view.go", "ebbwell/app/apptest", true},
		{"app/apptest/apptest.go", "ebbwell/app/kit/look/golden", false},
		{"app/shots/shots.go", "ebbwell/app", false},
		{"app/shell.go", "ebbwell/app/shots", true},
		{"internal/handout/compose_test.go", "ebbwell/internal/demo", false},
		{"internal/handout/compose.go", "ebbwell/internal/demo", true},
		{"internal/consult/case_test.go", "ebbwell/internal/demo", true},
		{"internal/helpers/all.go", "fmt", true},
		{"internal/plan/plan.go", "ebbwell/internal/helpers", true},
	} {
		if got := breach(imported{c.file, c.imports}); (got != "") != c.wrong {
			t.Errorf("%s imports %s: got %q", c.file, c.imports, got)
		}
	}
}
