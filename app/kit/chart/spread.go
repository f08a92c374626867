package chart

// label is a text that wants to stand over or under a place.
type label struct {
	at, width float32
	// x is where its left end goes.
	x float32
}

// labelGap is the least room between labels, px.
const labelGap = 8

// spread places labels, given from left to right, as near to their places as
// it can without one touching another. It reports false when there is not
// enough room; then nothing is placed.
//
// Labels are pushed apart once to the right and once to the left, and stand in
// the middle of the two: what touches in neither does not touch there.
func spread(list []label, from, to float32) bool {
	need := roomFor(list)
	if need > to-from+0.01 {
		return false
	}
	least, most := from, to-need
	for i := range list {
		l := &list[i]
		l.x = min(max(l.at-l.width/2, least), most)
		least = l.x + l.width + labelGap
		most += l.width + labelGap
	}
	next, low := to, from+need
	for i := len(list) - 1; i >= 0; i-- {
		l := &list[i]
		low -= l.width
		pushed := max(min(l.at-l.width/2, next-l.width), low)
		next = pushed - labelGap
		low -= labelGap
		l.x = (l.x + pushed) / 2
	}
	return true
}

// roomFor is the least room that labels take.
func roomFor(list []label) float32 {
	if len(list) == 0 {
		return 0
	}
	need := float32(-labelGap)
	for i := range list {
		need += list[i].width + labelGap
	}
	return need
}
