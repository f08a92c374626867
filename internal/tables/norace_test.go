//go:build !race

package tables

// grown is how often a buffer that grows is counted.
const grown = 1
