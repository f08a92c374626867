package climate

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"ebbwell/internal/published"
	"ebbwell/internal/quantity"
)

// annexF is the ten cases of annex F, 480 min each.
func annexF(b *testing.B) []StrainInput {
	b.Helper()
	rows, err := published.Rows("heat_strain")
	if err != nil {
		b.Fatal(err)
	}
	var list []StrainInput
	for _, r := range rows {
		if r.Case != "water g" {
			continue
		}
		number := func(name string) float64 {
			x, err := strconv.ParseFloat(r.Inputs[name], 64)
			if err != nil {
				b.Fatal(err)
			}
			return x
		}
		in := StrainInput{
			Air: Air{quantity.Celsius(number("air")), quantity.Kilopascals(number("vapour"))}, Radiant: quantity.Celsius(number("radiant")),
			Wind: quantity.MetresPerSecond(number("wind")), Metabolic: quantity.WattsPerSquareMetre(number("metabolic")),
			Clothing: Clothing{Insulation: Clo(number("clo"))}, Posture: Posture(r.Inputs["posture"]),
			Acclimatised: r.Inputs["acclimatised"] == "yes", Body: Body{75, 1.8}, Minutes: 480,
		}
		if r.Inputs["walk"] != "" {
			in.Walking = &Walking{Speed: quantity.MetresPerSecond(number("walk")), Directed: true, Degrees: number("degrees")}
		}
		list = append(list, in)
	}
	return list
}

// BenchmarkStrain480 is one run of 480 min, over the cases of annex F in turn.
func BenchmarkStrain480(b *testing.B) {
	list := annexF(b)
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		if _, err := PredictStrain(list[i%len(list)]); err != nil {
			b.Fatal(err)
		}
		i++
	}
}

// BenchmarkStrainBesideLibrary runs the ten cases here and with the npm library
// jsthermalcomfort 0.0.2 (its function phs) in turn, and reports how many
// times as fast it is here: "times-library", the median of ten rounds. It needs
// node and the library:
//
//	npm install --prefix DIR jsthermalcomfort@0.0.2
//	JSTHERMALCOMFORT=DIR go test -run NONE -bench BesideLibrary ./internal/climate
func BenchmarkStrainBesideLibrary(b *testing.B) {
	folder := os.Getenv("JSTHERMALCOMFORT")
	node, err := exec.LookPath("node")
	if folder == "" || err != nil {
		b.Skip("needs node, and JSTHERMALCOMFORT set to a folder with jsthermalcomfort 0.0.2")
	}
	list := annexF(b)
	script := filepath.Join(b.TempDir(), "strain.mjs")
	if err := os.WriteFile(script, []byte(libraryScript), 0o600); err != nil {
		b.Fatal(err)
	}
	var ratios []float64
	for b.Loop() {
		ratios = ratios[:0]
		for range 10 {
			there := libraryRound(b, node, script, folder)
			ratios = append(ratios, there/hereRound(b, list))
		}
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(median(ratios), "times-library")
}

// median of some numbers.
func median(list []float64) float64 {
	sorted := slices.Sorted(slices.Values(list))
	return sorted[len(sorted)/2]
}

// hereRound is the time of one run here, µs, over a hundred of each case.
func hereRound(b *testing.B, list []StrainInput) float64 {
	b.Helper()
	start := time.Now()
	for range 100 {
		for _, in := range list {
			if _, err := PredictStrain(in); err != nil {
				b.Fatal(err)
			}
		}
	}
	return float64(time.Since(start).Microseconds()) / float64(100*len(list))
}

// libraryRound is the time of one run of the library, µs, as node measures it
// after warming up.
func libraryRound(b *testing.B, node, script, folder string) float64 {
	b.Helper()
	rows, err := published.Folder()
	if err != nil {
		b.Fatal(err)
	}
	library, err := filepath.Abs(filepath.Join(folder, "node_modules", "jsthermalcomfort", "lib", "cjs", "index.js"))
	if err != nil {
		b.Fatal(err)
	}
	out, err := exec.Command(node, script, library, filepath.Join(rows, "heat_strain.csv")).CombinedOutput()
	if err != nil {
		b.Fatalf("run the library: %v\n%s", err, out)
	}
	x, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
	if err != nil {
		b.Fatalf("read the library's time: %v\n%s", err, out)
	}
	return x
}

// libraryScript times the library over the cases and makes sure that it does
// the same work: its water loss must be the published one.
const libraryScript = `
import { createRequire } from "module";
import fs from "fs";
const loaded = createRequire(import.meta.url)(process.argv[2]);
const { phs, p_sat } = loaded.default ?? loaded;
const cases = [];
for (const line of fs.readFileSync(process.argv[3], "utf8").split("\n")) {
  const m = line.match(/^water g,([^,]*),([\d.]+),/);
  if (!m) continue;
  const v = Object.fromEntries(m[1].split(";").map((p) => p.split("=").map((s) => s.trim())));
  cases.push([v, Number(m[2])]);
}
const posture = { standing: 2, sitting: 1, crouching: 3 };
const run = (v) => {
  const n = (k) => Number(v[k] ?? 0);
  const rh = (n("vapour") / (p_sat(n("air")) / 1000)) * 100;
  return phs(n("air"), n("radiant"), rh, n("wind"), n("metabolic"), n("clo"), posture[v.posture], 0, 0.38, 0.54, 1,
    n("mass"), n("height"), n("walk"), n("degrees"), v.acclimatised === "yes" ? 100 : 0, n("minutes"),
    0.97, 34.1, 36.8, 999, 999, 0.3, 0, false);
};
for (const [v, water] of cases) {
  for (let i = 0; i < 50; i++) run(v);
  if (Math.abs(run(v).sw_tot_g - water) > 60) throw new Error("another result: " + run(v).sw_tot_g + " for " + water);
}
if (cases.length !== 10) throw new Error(cases.length + " cases");
const start = process.hrtime.bigint();
for (let i = 0; i < 20; i++) for (const [v] of cases) run(v);
console.log(Number(process.hrtime.bigint() - start) / 1e3 / (20 * cases.length));
`

// BenchmarkEstimate is what a planned session costs: eight tests worked through
// once, and then each move of the plan and its heat caution.
func BenchmarkEstimate(b *testing.B) {
	body := Body{70, 1.78}
	effort, err := RunningEffort(body, 12/3.6, 0, false)
	if err != nil {
		b.Fatal(err)
	}
	session := Session{Weather: Weather{Temperature: 20, Humidity: 50, Sun: SunPart}, Effort: effort, Clothing: Shirt(), State: Trained, Minutes: 95}
	var tests []Test
	for _, air := range []float64{14, 16, 18, 20, 22, 24, 26, 28} {
		s := session
		s.Weather.Temperature = quantity.Celsius(air)
		tests = append(tests, Test{Session: s, Rate: 1.1, U: 0.05})
	}
	plan := session
	plan.Weather.Temperature = 36
	var basis Basis
	set, err := NewTestSet(Athlete{Body: body}, tests)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("tests", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := NewTestSet(Athlete{Body: body}, tests); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("move", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if basis, err = set.Estimate(plan); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("caution", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := HeatCaution(body, plan, Practice{}, nil, basis); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkWeatherWBGT is the globe and the wick from weather.
func BenchmarkWeatherWBGT(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := WeatherWBGT(Weather{Temperature: 30, Humidity: 50, Wind: 1.4, Sun: SunHigh}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkLoadPlaces reads the climate table.
func BenchmarkLoadPlaces(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := LoadPlaces(); err != nil {
			b.Fatal(err)
		}
	}
}
