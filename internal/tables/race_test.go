//go:build race

package tables

// grown is how often a buffer that grows is counted: under the race detector the compiler
// makes the room that is appended first by itself.
const grown = 2
