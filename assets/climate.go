package assets

import _ "embed"

// The climate of 217 places by month: averages of station reports 2003 to
// 2021, one place a row, twelve months in a cell, "-" where nothing is known.
// Its first line is the credit, which must be shown wherever a value is.
//
//go:embed climates.csv
var climates []byte

// The table of activities with their METs, a selection of the 2011 Compendium
// of Physical Activities (Ainsworth et al., Medicine and Science in Sports and
// Exercise 43:1575). The own speed is this table's: D worked out from the
// activity's speed, P proposed.
//
//go:embed activities.csv
var activities []byte

// Climates returns the table of climates, CSV in UTF-8, credit first.
func Climates() []byte { return climates }

// Activities returns the table of activities, CSV in UTF-8.
func Activities() []byte { return activities }
