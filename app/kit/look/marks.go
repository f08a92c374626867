package look

// marksGap is the least room between the words of two marks, px.
const marksGap float32 = 6

// MarkPlaces places the words of the two marks of a level scale on one line below
// it: those of the first, a triangle at the px first, stand behind it, those of the
// second, an upright line at the px second, in its middle. Where they would touch,
// those of the first stand before it, or those of the second give way. Widths of
// nothing are words that are not there.
func MarkPlaces(width, first, firstWide, second, secondWide, half float32) (x, y float32) {
	x = first + half
	if x+firstWide > width {
		x = max(first-half-firstWide, 0)
	}
	y = min(max(second-secondWide/2, 0), max(width-secondWide, 0))
	if firstWide <= 0 || secondWide <= 0 || apart(x, firstWide, y, secondWide) {
		return x, y
	}
	if before := first - half - firstWide; before >= 0 && apart(before, firstWide, y, secondWide) {
		return before, y
	}
	if y >= x || first <= second {
		y = x + firstWide + marksGap
	} else {
		y = x - marksGap - secondWide
	}
	if y+secondWide > width {
		y = width - secondWide
		x = y - marksGap - firstWide
	}
	if y < 0 {
		y = 0
		x = secondWide + marksGap
	}
	return max(x, 0), y
}

// apart reports whether two words do not touch.
func apart(x, wide, y, other float32) bool { return x+wide+marksGap <= y || y+other+marksGap <= x }
