package proposal

import (
	"bufio"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// The search is held against GLPK, an integer-programming solver that shares
// nothing with the program:
//
//	apt-get install glpk-utils
//	EBBWELL_GLPK=all go test ./internal/plan/proposal -run GLPK -v
//
// draws cases, solves the four programs of each in turn with GLPK and
// compares. EBBWELL_GLPK=update also writes GLPK's answers to glpkFile, against
// which the same comparison runs where there is no GLPK; with GLPK at hand every
// twentieth is solved anew.
const (
	glpkFile  = "../../../testdata/proposal/glpk.jsonl"
	glpkCases = 240
)

// glpkAnswer is what a solver makes of one case.
type glpkAnswer struct {
	Seed                      uint64
	Found                     bool
	Fluid, Carbohydrate, Salt int
	Cost                      float64
}

// glpkProgram draws the search of a seed; both routes in turn.
func glpkProgram(seed uint64) *program {
	c := seeded(seed + 50_000).draw()
	p := aimOf(&c, seed%2 == 1)
	return &p
}

func (p *program) answer(seed uint64) glpkAnswer {
	f := p.solve()
	if !f.ok {
		return glpkAnswer{Seed: seed}
	}
	return glpkAnswer{Seed: seed, Found: true, Fluid: f.misses.Fluid, Carbohydrate: f.misses.Carbohydrate, Salt: f.misses.Sodium, Cost: f.cost}
}

func (a glpkAnswer) same(b glpkAnswer) bool {
	return a.Seed == b.Seed && a.Found == b.Found && a.Fluid == b.Fluid && a.Carbohydrate == b.Carbohydrate &&
		a.Salt == b.Salt && math.Abs(a.Cost-b.Cost) < 1e-4
}

func TestAgainstStoredGLPK(t *testing.T) {
	file, err := os.Open(glpkFile)
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := file.Close(); err != nil {
			t.Error(err)
		}
	}()
	n, found := 0, 0
	for lines := bufio.NewScanner(file); lines.Scan(); n++ {
		var want glpkAnswer
		if err := json.Unmarshal(lines.Bytes(), &want); err != nil {
			t.Fatal(err)
		}
		if got := glpkProgram(want.Seed).answer(want.Seed); !got.same(want) {
			t.Errorf("seed %d: ours %+v, GLPK %+v", want.Seed, got, want)
		}
		if want.Found {
			found++
		}
	}
	if n != glpkCases || found < glpkCases/2 {
		t.Errorf("%d cases, %d with an answer", n, found)
	}
}

func TestAgainstGLPK(t *testing.T) {
	glpsol, err := exec.LookPath("glpsol")
	if err != nil {
		t.Skip("glpsol is not installed")
	}
	mode := os.Getenv("EBBWELL_GLPK")
	var text strings.Builder
	for seed := range uint64(glpkCases) {
		if seed%20 != 3 && mode == "" {
			continue
		}
		p := glpkProgram(seed)
		want := p.glpk(t, glpsol, seed)
		if got := p.answer(seed); !got.same(want) {
			t.Errorf("seed %d: ours %+v, GLPK %+v", seed, got, want)
		}
		line, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&text, "%s\n", line)
	}
	if mode == "update" && !t.Failed() {
		if err := os.MkdirAll(filepath.Dir(glpkFile), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(glpkFile, []byte(text.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// glpk solves the four programs in turn, each holding the one before.
func (p *program) glpk(t testing.TB, glpsol string, seed uint64) glpkAnswer {
	t.Helper()
	a := glpkAnswer{Seed: seed}
	held := ""
	for _, s := range []struct {
		goal string
		into *int
	}{{"s1", &a.Fluid}, {"s2", &a.Carbohydrate}, {"s3", &a.Salt}} {
		x, found := runGLPK(t, glpsol, p.lp(s.goal, held))
		if !found {
			return glpkAnswer{Seed: seed}
		}
		*s.into = int(math.Round(x))
		held += fmt.Sprintf(" %s = %d\n", s.goal, *s.into)
	}
	x, found := runGLPK(t, glpsol, p.lp("cost", held))
	a.Found, a.Cost = found, x
	return a
}

// More than any number of gels or grams of salt, and than any volume.
const (
	manyGels = 40
	farML    = 12_000
)

// term is what one amount of a slot adds to a row.
type term = func(slot int, x float64) float64

// missing states what is missing and what a mix costs.
func (p *program) missing(row func(of term, rest string, args ...any), part func(pick func(s *Sum) float64) term) {
	h := p.c.hours()
	drunk := part(func(s *Sum) float64 { return s.DrunkML })
	fuel := part(func(s *Sum) float64 { return s.CarbohydrateG })
	row(drunk, "+ wet + %.12g s1 >= %.12g", p.increment, p.targetML)
	if math.IsInf(p.foodWaterFrom, 1) {
		row(nothing, "+ wet = 0")
	} else {
		row(nothing, "+ wet - %d more <= 0", farML)
		row(part(func(s *Sum) float64 { return -s.FoodWaterML }), "+ wet + %d more <= %.12g", farML, farML-p.foodWaterFrom)
	}
	row(fuel, "+ %.12g s2 >= %.12g", 5*h, p.fuelGH*h-5*h+1e-3)
	if p.sodium {
		row(drunk, "- %d big <= 299.99", farML)
		row(part(func(s *Sum) float64 { return s.SodiumMg - 0.405*s.DrunkML }), "+ %.12g s3 - %d big >= %d", 50*h, farML, -farML)
	}
	// The cost.
	row(drunk, "+ 250 off >= %.12g", p.targetML)
	row(drunk, "- 250 off <= %.12g", p.targetML)
	row(func(slot int, x float64) float64 { return p.cost(slot, x) }, "+ off - cost = 0")
}

// watered states the rest of what gels and portions want: where gels have less water than
// those of the base had they want it too, and where more is eaten than from the base it
// wants drink, and time where little is drunk.
func (p *program) watered(row func(of term, rest string, args ...any), part func(pick func(s *Sum) float64) term) {
	pieces := func(s *Sum) float64 { return s.Gels + s.Portions }
	gelWater := part(func(s *Sum) float64 { return s.GelWaterML })
	row(gelWater, "+ %d less >= %.12g", farML, p.from.GelWaterML)
	row(part(func(s *Sum) float64 { return p.gelWater*s.Gels - s.GelWaterML }), "+ %d less <= %d", farML, farML)
	row(part(pieces), "- %d more_eaten <= %.12g", manyGels, p.from.Gels+p.from.Portions)
	row(part(func(s *Sum) float64 { return 130*pieces(s) - s.DrunkML }), "+ %d more_eaten <= %d", farML, farML)
	h := p.c.hours()
	row(part(func(s *Sum) float64 { return s.DrunkML }), "+ %d little >= %.12g", farML, 300*h)
	row(part(func(s *Sum) float64 { return 45 * pieces(s) }), "+ %d more_eaten + %d little <= %.12g", farML, farML, 60*h+2*farML)
}

// nothing adds nothing to a row.
func nothing(int, float64) float64 { return 0 }

// lp states the search in CPLEX LP format, one zero-one variable for every
// amount of every slot.
func (p *program) lp(goal, held string) string {
	var rows, binary strings.Builder
	row := func(of func(slot int, x float64) float64, rest string, args ...any) {
		p.linear(&rows, of)
		fmt.Fprintf(&rows, rest+"\n", args...)
	}
	part := func(pick func(s *Sum) float64) func(int, float64) float64 {
		return func(slot int, x float64) float64 {
			var s Sum
			s.add(&p.c.Sources[slot], x)
			return pick(&s)
		}
	}
	for i, values := range p.values {
		if len(values) == 0 {
			continue
		}
		one := ""
		for k := range values {
			one += fmt.Sprintf(" + z%d_%d", i, k)
			fmt.Fprintf(&binary, " z%d_%d\n", i, k)
		}
		fmt.Fprintf(&rows, "%s = 1\n", one)
	}
	drunk := part(func(s *Sum) float64 { return s.DrunkML })
	fuel := part(func(s *Sum) float64 { return s.CarbohydrateG })
	gels := part(func(s *Sum) float64 { return s.Gels })
	row(drunk, "+ 0 s1 <= %.12g", p.mostML)
	row(drunk, "+ 0 s1 >= %.12g", p.leastML)
	row(part(func(s *Sum) float64 { return s.DrunkML + s.FoodWaterML }), "+ 0 s1 <= %.12g", p.intakeML)
	row(fuel, "+ 0 s1 <= %.12g", p.mostG)
	row(fuel, "+ 0 s1 >= %.12g", p.leastG)
	row(part(func(s *Sum) float64 { return s.SodiumMg }), "+ 0 s1 <= %.12g", p.mostSodiumMg)
	row(part(func(s *Sum) float64 { return s.DrinksG - p.strength*s.DrunkML }), "+ 0 s1 <= 0")
	row(gels, "+ 0 s1 <= %.12g", p.gels)
	row(part(func(s *Sum) float64 { return s.Portions }), "+ 0 s1 <= %.12g", p.portions)
	if p.leastFoodG >= 0 {
		row(part(func(s *Sum) float64 { return s.FoodG }), "+ 0 s1 >= %.12g", p.leastFoodG)
	}
	row(func(slot int, x float64) float64 {
		if math.Abs(x-p.base[slot]) > 1e-9 {
			return 1
		}
		return 0
	}, "+ 0 s1 <= %d", p.things)
	// Gels above the habit's want water, salt above it too.
	row(gels, "- %d rise <= %.12g", manyGels, p.from.Gels)
	row(part(func(s *Sum) float64 { return p.gelWater*s.Gels - s.GelWaterML }), "+ %.12g rise <= %.12g", p.gelWater*(p.gels+1), p.gelWater*(p.gels+1))
	p.watered(row, part)
	row(part(func(s *Sum) float64 { return s.SaltG }), "- %d salty <= %.12g", manyGels, p.saltG)
	row(part(func(s *Sum) float64 { return s.SaltG - p.saltPerML*s.DrunkML }), "+ %d salty <= %d", manyGels, manyGels)
	p.missing(row, part)
	return "Min\n obj: " + goal + "\nSubject To\n" + rows.String() + held +
		"Bounds\n s1 <= 100000\n s2 <= 100000\n s3 <= 100000\nGenerals\n s1\n s2\n s3\nBinaries\n rise\n less\n more_eaten\n little\n salty\n more\n big\n" + binary.String() + "End\n"
}

// linear writes the sum over all amounts.
func (p *program) linear(rows *strings.Builder, of func(slot int, x float64) float64) {
	for i, values := range p.values {
		for k, x := range values {
			if a := of(i, x); a != 0 {
				fmt.Fprintf(rows, " %+.12g z%d_%d", a, i, k)
			}
		}
	}
	rows.WriteString(" ")
}

// runGLPK solves a model; found is false where there is no answer.
func runGLPK(t testing.TB, glpsol, model string) (objective float64, found bool) {
	t.Helper()
	dir := t.TempDir()
	file, solution := filepath.Join(dir, "model.lp"), filepath.Join(dir, "solution.txt")
	if err := os.WriteFile(file, []byte(model), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(glpsol, "--lp", file, "-w", solution, "--tmlim", "120").CombinedOutput()
	if err != nil {
		t.Fatalf("glpsol: %v\n%s", err, out)
	}
	text, err := os.ReadFile(solution)
	if err != nil {
		t.Fatalf("glpsol wrote nothing: %v\n%s", err, out)
	}
	// the line "s mip rows columns status objective"; o is optimal, n and u
	// that there is none.
	f := strings.Fields(regexp.MustCompile(`(?m)^s mip .*$`).FindString(string(text)))
	if len(f) != 6 || f[4] != "o" && f[4] != "n" && f[4] != "u" {
		t.Fatalf("glpsol says %v\n%s", f, out)
	}
	x, err := strconv.ParseFloat(f[5], 64)
	if err != nil {
		t.Fatal(err)
	}
	return x, f[4] == "o"
}
