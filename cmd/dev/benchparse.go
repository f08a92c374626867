package main

import (
	"bufio"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// result is one benchmark of one package; several runs of it (-count) give
// several values a unit.
type result struct {
	pkg, name string
	values    map[string][]float64 // by unit: "ns/op", "B/op" …
}

// parseBench reads what go test prints: "pkg: …" lines and benchmark lines. A
// line it cannot read is passed over; go test mixes in all sorts.
func parseBench(printed string) []result {
	var list []result
	pkg := ""
	lines := bufio.NewScanner(strings.NewReader(printed))
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		line := lines.Text()
		if name, ok := strings.CutPrefix(line, "pkg: "); ok {
			pkg = name
			continue
		}
		name, values, ok := parseBenchLine(line)
		if !ok {
			continue
		}
		i := slices.IndexFunc(list, func(r result) bool { return r.pkg == pkg && r.name == name })
		if i < 0 {
			list = append(list, result{pkg: pkg, name: name, values: map[string][]float64{}})
			i = len(list) - 1
		}
		for unit, x := range values {
			list[i].values[unit] = append(list[i].values[unit], x)
		}
	}
	return list
}

// parseBenchLine reads "BenchmarkName-2  1000  123 ns/op  4 B/op".
func parseBenchLine(line string) (name string, values map[string]float64, ok bool) {
	fields := strings.Fields(line)
	if len(fields) < 4 || !strings.HasPrefix(fields[0], "Benchmark") || len(fields)%2 != 0 {
		return "", nil, false
	}
	if _, err := strconv.ParseInt(fields[1], 10, 64); err != nil {
		return "", nil, false
	}
	values = map[string]float64{}
	for i := 2; i < len(fields); i += 2 {
		x, err := strconv.ParseFloat(fields[i], 64)
		if err != nil {
			return "", nil, false
		}
		values[fields[i+1]] = x
	}
	return regexp.MustCompile(`-\d+$`).ReplaceAllString(fields[0], ""), values, true
}

// time is the median of ns/op.
func (r result) time() float64 { return median(r.values["ns/op"]) }

// count writes the median of a whole-number unit, or a dash.
func (r result) count(unit string) string {
	if len(r.values[unit]) == 0 {
		return "-"
	}
	return strconv.FormatFloat(median(r.values[unit]), 'f', 0, 64)
}

// others writes what a benchmark reported besides time and memory.
func (r result) others() string {
	var b strings.Builder
	for _, unit := range slices.Sorted(maps.Keys(r.values)) {
		if unit != "ns/op" && unit != "B/op" && unit != "allocs/op" {
			fmt.Fprintf(&b, "  %.4g %s", median(r.values[unit]), unit)
		}
	}
	return b.String()
}

// median of a list; 0 for an empty one.
func median(list []float64) float64 {
	if len(list) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(list))
	half := len(sorted) / 2
	if len(sorted)%2 == 1 {
		return sorted[half]
	}
	return (sorted[half-1] + sorted[half]) / 2
}
