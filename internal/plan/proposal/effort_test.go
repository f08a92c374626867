package proposal

import (
	"os/exec"
	"testing"
	"time"

	"ebbwell/internal/cputime"
)

// sets are cases that are hard to search each in its way: as drawn; the carbohydrate
// wanted within 2 % and within 0.2 % of what may be taken; wishes that clash.
func sets() map[string]func(c *Case) {
	within := func(share float64) func(c *Case) {
		return func(c *Case) {
			w := WantsOf(c)
			c.Carbohydrate, c.AdviceMost = Is(w.AimGH), w.AimGH*(1+share)
		}
	}
	return map[string]func(c *Case){
		"as drawn": func(*Case) {}, "within 2 %": within(0.02), "within 0.2 %": within(0.002),
		"clashing": func(c *Case) {
			c.SodiumMmolL, c.Minutes = Is(120), max(c.Minutes, 250)
			c.AdviceMost *= 0.6
		},
	}
}

// finer are the sets, and the cases as drawn where a practice has amounts of its own:
// drinks by 50 mL, the least there is, and bottles of sizes whose sums are every 10 mL.
func finer() map[string]func(c *Case) {
	all := sets()
	all["by 50 mL"] = func(c *Case) { c.DrinkStepML = 50 }
	all["four bottles"] = func(c *Case) { c.Bottles = []float64{330, 500, 600, 750} }
	return all
}

// TestSearchStaysSmall: no search looks at more than 12,000 amounts, over 1,500 cases
// of each set by both ways, and 100,000 where the amounts are fine. At a hundred or two hundred
// nanoseconds an amount that is two milliseconds, and twenty; the benchmark measures them.
func TestSearchStaysSmall(t *testing.T) {
	const most, mostFiner = 12_000, 100_000
	cases := uint64(1500)
	if testing.Short() {
		cases = 60
	}
	for name, change := range finer() {
		worst, most := 0, most
		if sets()[name] == nil {
			most = mostFiner
		}
		for seed := range cases {
			for _, food := range []bool{false, true} {
				c := seeded(seed).draw()
				change(&c)
				p := aimOf(&c, food)
				if n := p.solve().tried; n > most {
					t.Errorf("%s, seed %d: %d amounts were looked at", name, seed, n)
				} else {
					worst = max(worst, n)
				}
			}
		}
		t.Logf("%s: at most %d amounts", name, worst)
	}
}

// BenchmarkProposeWorst is the slowest of 1,500 proposals of each set, by the time of the
// processor: by the time of day the slowest is the one that the machine interrupts.
func BenchmarkProposeWorst(b *testing.B) {
	for name, change := range finer() {
		b.Run(name, func(b *testing.B) {
			worst := time.Duration(0)
			for b.Loop() {
				for seed := range uint64(1500) {
					c := seeded(seed).draw()
					change(&c)
					begun := cputime.Used()
					Propose(&c)
					worst = max(worst, cputime.Used()-begun)
				}
			}
			b.ReportMetric(0, "ns/op") // of all together: says nothing
			b.ReportMetric(float64(worst.Microseconds())/1000, "ms-worst")
		})
	}
}

// BenchmarkSameAsGLPK counts, of some cases of each set, those in which GLPK finds
// another optimum of the same rows, or finds one where none is found here.
func BenchmarkSameAsGLPK(b *testing.B) {
	const cases = 20
	glpsol, err := exec.LookPath("glpsol")
	for name, change := range sets() {
		b.Run(name, func(b *testing.B) {
			b.ReportMetric(0, "ns/op")
			if err != nil {
				for b.Loop() {
					continue
				}
				b.ReportMetric(1, "peer-missing(glpsol)")
				return
			}
			differ := 0
			for b.Loop() {
				differ = 0
				for seed := range uint64(cases) {
					c := seeded(seed * 71).draw()
					change(&c)
					p := aimOf(&c, seed%2 == 1)
					if want := p.glpk(b, glpsol, seed); !p.answer(seed).same(want) {
						differ++
					}
				}
			}
			b.ReportMetric(float64(differ), "differences")
			b.ReportMetric(cases, "cases")
		})
	}
}

// TestSearchPrunes: all in all the searches of 60 cases of each set look at no more
// amounts than they did when the bounds were worked out. A bound that is let go, or is
// looser than it has to be, shows here long before a search becomes slow.
func TestSearchPrunes(t *testing.T) {
	for name, most := range map[string]int{"as drawn": 19_900, "within 2 %": 19_200, "within 0.2 %": 18_800, "clashing": 16_600} {
		change, tried := sets()[name], 0
		for seed := range uint64(60) {
			for _, food := range []bool{false, true} {
				c := seeded(seed).draw()
				change(&c)
				p := aimOf(&c, food)
				tried += p.solve().tried
			}
		}
		if tried > most {
			t.Errorf("%s: %d amounts were looked at, %d are enough", name, tried, most)
		}
	}
}
