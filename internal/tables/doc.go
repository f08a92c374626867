// Package tables reads the spreadsheets in which a practice kept its tests before:
// it takes the bytes of a file and returns its cells as texts ([Open]), finds out
// what each column means ([Guess]), and makes athletes, tests and results of a
// laboratory of the rows ([Build]), with every fault by its row and column. It
// reads no file and keeps nothing; a formula is never worked out.
package tables
