// Package look is how Ebbwell looks: calm paper, hairlines, white sheets, ink.
//
// Three things are decided here and nowhere else. The [Palette]: colour means
// a substance (water, drink, food, loss, salt) and nothing else; controls,
// focus and warnings are ink on paper. The type: one typeface in a handful of
// [Style] values, from the key figure down to the note. The spacing: layouts
// on a grid of 4 px whose columns have widths one can name ([Columns],
// [Panels]), so that fields in a table line up.
//
// [NewTheme] makes the toolkit's theme; setting it anew with another palette
// or text size is all it takes to go dark or to 150 %. Widgets read the theme
// when they are refreshed, so none keeps a colour.
//
// Text that wraps needs to know its width before its height: what implements
// [Flowing] is asked by the layouts here in one pass, so nothing jumps after
// it was first shown. Rows line up on the baseline of what stands in them
// ([Based]).
package look
