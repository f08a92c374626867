// Package figures is what a mix comes to: the deficit with its course,
// carbohydrate, sodium, drinking rate, and why.
package figures
