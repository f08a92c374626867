package main

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// held is one line that is held to a target: a measure of one benchmark, beside
// a peer that was measured in the same run.
type held struct {
	says string
	// pkg and bench name what is measured, unit the measure.
	pkg, bench, unit string
	// beyond is a unit of the same benchmark that is taken off the measure first.
	beyond string
	// peer is the peer in words; without one the measure itself is held. against
	// is the peer's benchmark, the same one when empty, peerUnit its unit.
	peer, against, peerUnit string
	// most is the largest ratio to the peer, or the largest measure.
	most float64
}

// verdicts on a line.
const (
	met    = "met"
	missed = "MISSED"
	notRun = "not run"
)

// judged is a line as it was measured.
type judged struct {
	held
	measure, beside, ratio string
	verdict                string
}

// missingPeer begins the unit by which a benchmark says that a peer is not there.
const missingPeer = "peer-missing("

// judge holds lines against what was measured. Lines of benchmarks that did not
// run are left out, unless all are to be shown.
func judge(lines []held, results []result, all bool) []judged {
	var list []judged
	for _, h := range lines {
		if j := h.judge(results); all || j.verdict != notRun {
			list = append(list, j)
		}
	}
	return list
}

// judge holds one line against what was measured.
func (h held) judge(results []result) judged {
	j := judged{held: h, measure: "-", beside: "-", ratio: "-", verdict: notRun}
	mine, ran := find(results, h.pkg, h.bench)
	if ran {
		j.verdict = missingIn(mine)
	}
	x, there := mine.median(h.unit)
	if !there {
		return j
	}
	if off, ok := mine.median(h.beyond); ok {
		x = max(0, x-off)
	}
	j.measure = measured(x, h.unit)
	if h.peer == "" {
		j.verdict = verdict(x, h.most)
		return j
	}
	other := mine
	if h.against != "" {
		other, _ = find(results, h.pkg, h.against)
	}
	p, there := other.median(h.peerUnit)
	if !there || p <= 0 {
		if j.verdict == notRun {
			j.verdict = "peer missing"
		}
		return j
	}
	j.beside, j.ratio = measured(p, h.peerUnit), fmt.Sprintf("%.2f", x/p)
	j.verdict = verdict(x/p, h.most)
	return j
}

// verdict says whether a value is within its target.
func verdict(x, most float64) string {
	if x <= most {
		return met
	}
	return missed
}

// missingIn names the peer that a benchmark did not find.
func missingIn(r result) string {
	for unit := range r.values {
		if name, ok := strings.CutPrefix(unit, missingPeer); ok {
			return "peer missing: " + strings.TrimSuffix(name, ")")
		}
	}
	return notRun
}

// find returns the result of a benchmark.
func find(results []result, pkg, bench string) (result, bool) {
	i := slices.IndexFunc(results, func(r result) bool { return r.pkg == pkg && r.name == bench })
	if i < 0 {
		return result{}, false
	}
	return results[i], true
}

// median is the median of a unit, where there is one.
func (r result) median(unit string) (x float64, there bool) {
	list := r.values[unit]
	return median(list), len(list) > 0
}

// measured writes a value of a unit: "ms-large" is in milliseconds.
func measured(x float64, unit string) string {
	short, _, _ := strings.Cut(unit, "-")
	switch short {
	case "ns/op":
		return duration(x)
	case "ms":
		return duration(x * 1e6)
	case "MB":
		return strconv.FormatFloat(x, 'f', 1, 64) + " MB"
	case "B":
		return strconv.FormatFloat(x, 'f', 0, 64) + " B"
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// writeHeld prints the lines in columns, and how many are missed.
func writeHeld(out io.Writer, lines []judged) error {
	if len(lines) == 0 {
		return nil
	}
	rows := [][]string{{"held", "measured", "peer", "", "ratio", "target", "verdict"}}
	counts := map[string]int{}
	for _, j := range lines {
		target := strconv.FormatFloat(j.most, 'g', 4, 64)
		if j.peer == "" {
			target = "at most " + target
		} else {
			target += " x"
		}
		rows = append(rows, []string{j.says, j.measure, j.beside, j.peer, j.ratio, target, j.verdict})
		if j.verdict != met && j.verdict != missed {
			counts["open"]++
			continue
		}
		counts[j.verdict]++
	}
	var b strings.Builder
	b.WriteString("\nWhat is held to a target\n")
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], len([]rune(cell)))
		}
	}
	for _, row := range rows {
		line := " "
		for i, cell := range row {
			line += fmt.Sprintf(" %-*s ", widths[i], cell)
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	fmt.Fprintf(&b, "\n%d met, %d missed, %d without a peer or not run\n", counts[met], counts[missed], counts["open"])
	if _, err := io.WriteString(out, b.String()); err != nil {
		return fmt.Errorf("write the lines: %w", err)
	}
	return nil
}
