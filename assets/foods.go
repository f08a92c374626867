package assets

import _ "embed"

// The table of drinks and foods: a product a row, per 100 g, with its source.
// An empty cell is not known.
//
//go:embed foods.csv
var foods []byte

// The table of chances to drink: a kind of chance a row, by sport.
//
//go:embed breaks.csv
var breaks []byte

// Foods returns the table of drinks and foods, CSV in UTF-8.
func Foods() []byte { return foods }

// Breaks returns the table of chances to drink, CSV in UTF-8.
func Breaks() []byte { return breaks }
