// Package mutate tries the tests: it makes one small mistake after another in
// a package, a mutant, and sees whether the package's own tests find it.
//
// Mistakes are comparisons turned round or moved by their boundary, a sign or
// a factor turned round, a constant or a published threshold 10 % larger or smaller (a
// small whole number one larger or smaller), min for max, and a term dropped from a sum.
// The boundary of a comparison of real numbers counts only beside a published
// threshold: elsewhere nobody can say on which side the boundary lies.
//
// A mutant is tried by those tests of its package that run its line, the quick
// ones first, with -short and one at a time; draws of properties are cut to 25.
//
// A mutant never touches the source: the compiler is handed the changed file
// in place of the real one. Nearly all mutants of a package are in one program,
// each behind a number that the environment turns on, so that trying one takes
// as long as its tests do; those in constants are built one at a time.
package mutate
