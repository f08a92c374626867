package main

// The packages whose benchmarks are held.
const (
	appPackage      = "ebbwell/app"
	athletePackage  = "ebbwell/app/screen/athlete"
	plannerPackage  = "ebbwell/app/screen/planner"
	evidencePackage = "ebbwell/internal/evidence"
	proposalPackage = "ebbwell/internal/plan/proposal"
)

// digestLines hold the comparing of the file with its digest at the start. It is to take
// no more than the command whose files the digests are, and no more than the check for
// damage that it runs beside, so that nobody waits for it who has two processors.
func digestLines() []held {
	const bench = "BenchmarkLarge/digest"
	return []held{
		{says: "10,000 athletes: the digest at the start", pkg: appPackage, bench: bench, unit: "ms-digest", peer: "openssl, the same file", peerUnit: "ms-openssl", most: 1},
		{says: "10,000 athletes: the digest, beside the check", pkg: appPackage, bench: bench, unit: "ms-digest", peer: "the rest of the opening", peerUnit: "ms-rest", most: 1},
	}
}

// heldLines are all lines: a large practice, the planner, the start of the
// program, the search for a proposal.
func heldLines() []held {
	lines := []held{
		{says: "10,000 athletes: first content", pkg: appPackage, bench: "BenchmarkLarge/start", unit: "ms-content-large", peer: "the small practice", peerUnit: "ms-content-small", most: 1.4},
		{says: "10,000 athletes: memory", pkg: appPackage, bench: "BenchmarkLarge/start", unit: "MB-large", peer: "the small practice", peerUnit: "MB-small", most: 1.3},
		{says: "10,000 athletes: opened, checked, listed", pkg: appPackage, bench: "BenchmarkLarge/start", unit: "ms-opened-large", beyond: "ms-opened-small", peer: "sqlite3 and openssl: the checks and the list", peerUnit: "ms-peers", most: 2},
	}
	lines = append(lines, digestLines()...)
	for _, screen := range []struct{ says, bench string }{
		{"the list", "list"}, {"the list after a change", "afresh"}, {"search", "search"}, {"the test day", "testday"}, {"trips", "trips"},
	} {
		lines = append(lines, held{says: "10,000 athletes: " + screen.says + ", beyond a screenful", pkg: appPackage, bench: "BenchmarkLarge/" + screen.bench,
			unit: "ms-large", beyond: "ms-screen", peer: "sqlite3, the same questions", peerUnit: "ms-sqlite3", most: 2})
	}
	lines = append(lines,
		held{says: "an athlete of 500 tests: opened and drawn first", pkg: athletePackage, bench: "BenchmarkHistory500", unit: "ms-first", peer: "one of a few tests", peerUnit: "ms-small", most: 1.4},
		held{says: "an athlete of 500 tests: opened and drawn again", pkg: athletePackage, bench: "BenchmarkHistory500", unit: "ms-again", peer: "one of a few tests", peerUnit: "ms-small", most: 1.4},
		// What was read and asked beside the window holds its thread no longer than an opening does.
		held{says: "an athlete of 500 tests: the sweat rates set in, first", pkg: athletePackage, bench: "BenchmarkHistory500", unit: "ms-set-in", peer: "one of a few tests", peerUnit: "ms-small", most: 1.4},
		held{says: "an athlete of 500 tests: the sweat rates set in, again", pkg: athletePackage, bench: "BenchmarkHistory500", unit: "ms-again-set-in", peer: "one of a few tests", peerUnit: "ms-small", most: 1.4},
		held{says: "frozen copies as they are kept", pkg: appPackage, bench: "BenchmarkLarge/frozen", unit: "B-kept", peer: "as it was frozen", peerUnit: "B-plain", most: 0.25},
		held{says: "planner: allocations a move", pkg: plannerPackage, bench: "BenchmarkMove", unit: "allocs/op", most: 99},
		held{says: "planner: objects painted outside the window", pkg: plannerPackage, bench: "BenchmarkDrawBaseline", unit: "objects-outside", most: 0},
		held{says: "planner: windows covered with rounded rectangles", pkg: plannerPackage, bench: "BenchmarkDrawBaseline", unit: "windows-rounded", most: 0.88},
		held{says: "planner: a move and its picture", pkg: plannerPackage, bench: "BenchmarkPicture", unit: "ms-move", peer: "a hundred texts", peerUnit: "ms-plain", most: 2},
		// Half of what it took before the planner's drawing was changed: measured in this way,
		// 19.6 and 15.6 times the empty window. A second holds what comes late after a movement.
		// A third of what is left is the white of the sheets: without a graphics card the
		// toolkit's rectangle takes 9 ns a px. A line as thick takes 3, but of the software
		// painter of the tests twenty times what a rectangle does.
		held{says: "planner: a move in the real window, by 120 ms", pkg: program, bench: moveBench, unit: "ms-quick", peer: "an empty window, painted", peerUnit: "ms-empty-quick", most: 9.8},
		held{says: "planner: a move in the real window, by 1 s", pkg: program, bench: moveBench, unit: "ms-slow", peer: "an empty window, painted", peerUnit: "ms-empty-slow", most: 7.8},
		held{says: "limits looked up: allocations", pkg: evidencePackage, bench: "BenchmarkLimits", unit: "allocs/op", most: 0},
		held{says: "start: CPU until it rests", pkg: program, bench: startBench, unit: "ms-cpu", peer: "an empty window", peerUnit: "ms-empty", most: 1.8},
		// What it is made of stands in DEVELOPERS.md: own code alone makes 1.52 of it.
		held{says: "program: size as it is packed", pkg: program, bench: sizeBench, unit: "MB", peer: "an empty window", peerUnit: "MB-empty", most: 1.5},
	)
	for _, set := range []string{"as_drawn", "within_2_%", "clashing", "within_0.2_%"} {
		lines = append(lines,
			held{says: "proposal, " + set + ": the slowest of 1,500, CPU", pkg: proposalPackage, bench: "BenchmarkProposeWorst/" + set, unit: "ms-worst", most: 50},
			held{says: "proposal, " + set + ": other optimum than GLPK", pkg: proposalPackage, bench: "BenchmarkSameAsGLPK/" + set, unit: "differences", most: 0})
	}
	for _, set := range []string{"by_50_mL", "four_bottles"} { // amounts of the practice's own
		lines = append(lines, held{says: "proposal, " + set + ": the slowest of 1,500, CPU", pkg: proposalPackage, bench: "BenchmarkProposeWorst/" + set, unit: "ms-worst", most: 50})
	}
	return lines
}
