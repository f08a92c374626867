// Package chart draws the live pictures of the screens from lines, rectangles
// and quadrilaterals of the canvas.
//
// Each chart is a widget with a plain data struct: Set takes new data, moves
// and recolours what is there and asks for one repaint. As long as the number
// of points stays the same nothing is made anew, so that a slider can be drawn
// along with. Texts come in already worded; a chart formats no number and
// knows no science.
//
// The same marks mean the same everywhere: a filled triangle is the habit, a
// pale band the advice, a black line a hard limit, a dashed line the limit set
// with the athlete, a whisker or a pale area the range, a dashed box an
// estimate. Colour means substance and nothing else, and is never the only
// cue: each chart also says its Summary to a screen reader.
package chart
