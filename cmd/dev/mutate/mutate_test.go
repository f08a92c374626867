package mutate

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// module is a module of one package with one source file and one test.
func module(t *testing.T, source, test string) string {
	t.Helper()
	root := t.TempDir()
	for name, text := range map[string]string{"go.mod": "module small\n\ngo 1.24\n", "p/p.go": source, "p/p_test.go": test} {
		path := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return root
}

// mutants lists those of package p of a module.
func mutants(t *testing.T, root string) *Package {
	t.Helper()
	c := exec.Command("go", "list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles", "os", "strconv", "./p")
	c.Dir = root
	c.Env = append(os.Environ(), "CGO_ENABLED=0", "GOFLAGS=", "GOWORK=off")
	out, err := c.Output()
	if err != nil {
		t.Fatal(err)
	}
	list, err := Find(root, out)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

const source = `package p

import "fmt"

const rate = 1.5

const (
	first = iota
	second
)

type amount struct{ x float64 }

func (a amount) plus(b amount) amount { return b }

func within(x float64, n int, list []float64) (float64, string) {
	if x < rate || n > 3 {
		return min(x, 2), fmt.Sprint(4)
	}
	x -= 0.25
	return x + list[7], "a" + "b"
}

func both(a, b amount) amount { return a.plus(b) }
`

func TestFind(t *testing.T) {
	var got []string
	for _, m := range mutants(t, module(t, source, "package p\n")).Mutants {
		if m.File != "p/p.go" || m.Line == 0 {
			t.Errorf("%+v has no place", m)
		}
		got = append(got, string(m.Kind)+" "+strings.TrimPrefix(m.Name(), "p/p.go "))
	}
	want := []string{
		"constant rate: 1.5 => 1.65", "constant rate: 1.5 => 1.35",
		"comparison within: x < rate => x >= rate",
		"comparison within: n > 3 => n <= 3", "boundary within: n > 3 => n >= 3",
		"constant within: 3 => 4", "constant within: 3 => 2",
		"min-max within: min(x, 2) => max(x, 2)", "constant within: 2 => 2.2", "constant within: 2 => 1.8",
		"arithmetic within: x -= 0.25 => x += 0.25", "dropped term within: x -= 0.25 => x -= 0*(0.25)",
		"constant within: 0.25 => 0.275", "constant within: 0.25 => 0.225",
		"arithmetic within: x + list[7] => x - list[7]", "dropped term within: x + list[7] => x + 0*(list[7])",
		"arithmetic both: a.plus(b) => a.minus(b)", "dropped term both: a.plus(b) => a",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// A test that looks at one branch kills what changes that branch; what nobody
// looks at survives, and what is no program counts for neither.
func TestTry(t *testing.T) {
	root := module(t, "package p\n\nfunc f(x int) int {\n\tif x > 5 {\n\t\treturn x * 2\n\t}\n\treturn x + 40\n}\n",
		"package p\n\nimport \"testing\"\n\nfunc TestF(t *testing.T) {\n\tif f(6) != 12 || f(5) != 45 {\n\t\tt.Fail()\n\t}\n}\n")
	trial := Trial{Root: root, Dir: t.TempDir()}
	for _, c := range []struct {
		from, to string
		want     Fate
	}{{"x > 5", "x >= 5", Killed}, {"x > 5", "x > 5 && true", Survived}, {"x * 2", "y", Unbuilt}} {
		data, err := os.ReadFile(filepath.Join(root, "p", "p.go"))
		if err != nil {
			t.Fatal(err)
		}
		at := strings.Index(string(data), c.from)
		got, err := trial.Try(context.Background(), Mutant{File: "p/p.go", from: at, to: at + len(c.from), text: c.to})
		if err != nil || got != c.want {
			t.Errorf("%s for %s: %s, %v; want %s", c.to, c.from, got, err, c.want)
		}
	}
	covering, err := trial.Cover(context.Background(), "p")
	if err != nil {
		t.Fatal(err)
	}
	trial.Covering = covering
	for line, want := range map[int]Fate{5: Killed, 7: Killed, 40: Survived} {
		data, err := os.ReadFile(filepath.Join(root, "p", "p.go"))
		if err != nil {
			t.Fatal(err)
		}
		at := strings.Index(string(data), "x * 2")
		got, err := trial.Try(context.Background(), Mutant{File: "p/p.go", reached: line, from: at, to: at + len("x * 2"), text: "x * 3"})
		if err != nil || got != want {
			t.Errorf("by the tests of line %d: %s, %v; want %s", line, got, err, want)
		}
	}
	trial.Covering = nil
	ended, end := context.WithCancel(context.Background())
	end()
	if _, err := trial.Try(ended, Mutant{File: "p/p.go"}); !errors.Is(err, context.Canceled) {
		t.Errorf("an ended trial gives %v", err)
	}
}

// What a switch asks for is tried by all tests that come to the switch, also by those
// that find the answer no.
func TestTryCases(t *testing.T) {
	root := module(t, "package p\n\nfunc f(x int) int {\n\tswitch {\n\tcase x > 5,\n\t\tx < -5:\n\t\treturn 1\n\tcase x > 3:\n\t\treturn 2\n\t}\n\treturn x\n}\n",
		"package p\n\nimport \"testing\"\n\nfunc TestF(t *testing.T) {\n\tif f(1) != 1 || f(3) != 3 || f(4) != 2 || f(-5) != -5 {\n\t\tt.Fail()\n\t}\n}\n")
	trial := Trial{Root: root, Dir: t.TempDir()}
	covering, err := trial.Cover(context.Background(), "p")
	if err != nil {
		t.Fatal(err)
	}
	trial.Covering = covering
	want := map[string]Fate{"x > 5 => x <= 5": Killed, "x < -5 => x <= -5": Killed, "x < -5 => x >= -5": Killed, "x > 3 => x >= 3": Killed, "x > 5 => x >= 5": Survived}
	seen := 0
	for _, m := range mutants(t, root).Mutants {
		fate, ok := want[strings.TrimPrefix(m.Name(), "p/p.go f: ")]
		if !ok {
			continue
		}
		seen++
		if got, err := trial.Try(context.Background(), m); got != fate || err != nil {
			t.Errorf("%s: %s, %v", m.Name(), got, err)
		}
	}
	if seen != len(want) {
		t.Errorf("%d of %d mutants", seen, len(want))
	}
}

// What is set for the test programs reaches them, whatever was set outside: the
// draws of each begin with the same.
func TestTrySets(t *testing.T) {
	t.Setenv("RAPID_SEED", "5")
	root := module(t, "package p\n\nfunc f() int { return 1 }\n",
		"package p\n\nimport (\n\t\"os\"\n\t\"testing\"\n)\n\nfunc TestF(t *testing.T) {\n\tif os.Getenv(\"RAPID_SEED\") != \"7\" || f() != 1 {\n\t\tt.Fail()\n\t}\n}\n")
	for _, c := range []struct {
		env  []string
		want Fate
		left int
	}{{[]string{"RAPID_SEED=7"}, Survived, 0}, {[]string{"RAPID_SEED=8"}, Killed, 1}, {nil, Killed, 1}} {
		trial := Trial{Root: root, Dir: t.TempDir(), Env: c.env}
		if got, err := trial.Try(context.Background(), Mutant{File: "p/p.go"}); err != nil || got != c.want {
			t.Errorf("with %q: %s, %v; want %s", c.env, got, err, c.want)
		}
		if covering, err := trial.Cover(context.Background(), "p"); err != nil || len(covering.Left()) != c.left {
			t.Errorf("with %q: %v, %v", c.env, covering.Left(), err)
		}
	}
}

// Mutants in one program live and die as they do one at a time.
func TestSwitch(t *testing.T) {
	source := "package p\n\ntype amount float64\n\nconst half = 0.5\n\nvar table = []float64{1, 3}\n\n" +
		"func f(x int, a amount) amount {\n\tconst two = 2\n\tif x > 5 && a < half {\n\t\treturn a * 2\n\t}\n" +
		"\tfor i := 0; i < x; i += 2 {\n\t\ta += two // as often\n\t}\n\treturn a + amount(table[1]) - min(a, 0.25)\n}\n"
	test := "package p\n\nimport \"testing\"\n\nfunc TestF(t *testing.T) {\n\tif f(6, 0.25) != 0.5 || f(5, 0.125) != 8.875 {\n\t\tt.Fail()\n\t}\n}\n"
	root := module(t, source, test)
	p := mutants(t, root)
	trial := Trial{Root: root, Dir: t.TempDir()}
	together, err := trial.Switch(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	trial.Switched = together
	if n := len(together.number); n < len(p.Mutants)/2 || n == len(p.Mutants) {
		t.Errorf("%d of %d mutants in one program", n, len(p.Mutants))
	}
	for _, c := range []struct {
		name string
		want Fate
	}{
		{"f: x > 5 => x >= 5", Killed}, {"f: a < half => a >= half", Killed}, {"f: a * 2 => a / 2", Killed},
		{"f: a += two => a -= two", Killed}, {"f: x > 5 => x <= 5", Killed}, {"table: 3 => 3.3", Killed},
		{"table: 1 => 1.1", Survived}, {"f: min(a, 0.25) => max(a, 0.25)", Killed},
	} {
		i := slices.IndexFunc(p.Mutants, func(m Mutant) bool { return m.Name() == "p/p.go "+c.name })
		if i < 0 || together.number[p.Mutants[i].Name()] == 0 {
			t.Errorf("%s is not in the program", c.name)
			continue
		}
		if got, err := trial.Try(context.Background(), p.Mutants[i]); got != c.want || err != nil {
			t.Errorf("%s: %s, %v", c.name, got, err)
		}
	}
}

func TestEquivalents(t *testing.T) {
	file := filepath.Join(t.TempDir(), "list")
	for text, wrong := range map[string]bool{
		"# a remark\n\na.go f: a | b => c | both are the same\n": false,
		"a.go f: a => b\n":         true,
		"a.go f: a => b | so it\n": true,
	} {
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		list, err := Equivalents(file)
		if (err != nil) != wrong || !wrong && list["a.go f: a | b => c"] != "both are the same" {
			t.Errorf("%q: %v, %v", text, list, err)
		}
	}
}
