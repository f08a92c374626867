package look

// marksGap is the least room between the words of two marks, px.
const marksGap float32 = 6

// MarkPlaces places the words of the two marks of a level scale on one line below
// it: those of the first, a triangle at the px first, stand behind it, those of the
// second, an upright line at the px second, in its middle. Where they would touch each
// other or the triangle, those of the first stand before it, or those of the second give
// way. Widths of nothing are words that are not there.
func MarkPlaces(width, first, firstWide, second, secondWide, half float32) (x, y float32) {
	x = first + half
	if x+firstWide > width {
		x = max(first-half-firstWide, 0)
	}
	y = min(max(second-secondWide/2, 0), max(width-secondWide, 0))
	if firstWide <= 0 || secondWide <= 0 || apart(min(x, first-half), firstWide+2*half, y, secondWide) {
		return x, y
	}
	behind, before, beside := first+half, first-half-firstWide, y
	if first <= second {
		beside = max(y, behind+marksGap)
	}
	right, left, farLeft := behind+firstWide+marksGap, first-half-marksGap-secondWide, before-marksGap-secondWide
	switch {
	case before >= 0 && beside+secondWide <= width && apart(before, firstWide+2*half, beside, secondWide):
		return before, beside
	case first <= second && right+secondWide <= width:
		return behind, right
	case left >= 0 && behind+firstWide <= width:
		return behind, left
	case farLeft >= 0:
		return before, farLeft
	case right+secondWide <= width:
		return behind, right
	}
	y = max(width-secondWide, 0)
	return max(y-marksGap-firstWide, 0), y
}

// apart reports whether two words do not touch.
func apart(x, wide, y, other float32) bool { return x+wide+marksGap <= y || y+other+marksGap <= x }
