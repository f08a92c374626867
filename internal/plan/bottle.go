package plan

import "math"

// bottling decides which drink stands at which chance: one bottle a chance, the
// drink with most carbohydrate at the long breaks, water at the short ones.
type bottling struct {
	takes []Take
	// order holds the chances as [Take.before] puts them.
	order []int
	// even and most are what the chances of the order up to here are filled with
	// and can carry, mL; both begin with 0.
	even, most []float64
	// worst and from belong to cut: the worst strain up to here, and where the last
	// drink's chances begin.
	worst [Drinks][]float64
	from  [Drinks][]int
}

// put sorts the chances and sums what they are filled with.
func (b *bottling) put(takes []Take, most float64) {
	b.takes, b.order = takes, b.order[:0]
	for i := range takes {
		b.order = append(b.order, i)
		for j := i; j > 0 && takes[b.order[j]].before(&takes[b.order[j-1]]); j-- {
			b.order[j], b.order[j-1] = b.order[j-1], b.order[j]
		}
	}
	b.even, b.most = append(b.even[:0], 0), append(b.most[:0], 0)
	for n, i := range b.order {
		b.even = append(b.even, b.even[n]+takes[i].even)
		b.most = append(b.most, b.most[n]+takes[i].Chance.wantML(most))
	}
}

// stand puts drinks, in the order given and each with its mL, at the chances.
func (b *bottling) stand(drinks []int, ml [Drinks]float64) {
	for i := range b.takes {
		b.takes[i].stands = [Drinks]bool{}
	}
	if len(drinks) == 0 {
		return
	}
	var ends [Drinks]int
	b.cut(drinks, ml, &ends)
	for first := 0; first < len(b.order); {
		end := first
		for end < len(b.order) && b.alike(first, end) {
			end++
		}
		b.mingle(drinks, ends, first, end)
		first = end
	}
}

// alike reports whether two places of the order differ in time alone.
func (b *bottling) alike(i, j int) bool {
	x, y := b.takes[b.order[i]].Chance, b.takes[b.order[j]].Chance
	return x.Seconds == y.Seconds && x.mayNotHappen() == y.mayNotHappen()
}

// cut finds where in the order one drink's chances end and the next one's begin,
// so that the chance which has to be filled furthest from even is strained least.
func (b *bottling) cut(drinks []int, ml [Drinks]float64, ends *[Drinks]int) {
	n := len(b.order)
	for k, d := range drinks {
		b.worst[k], b.from[k] = b.worst[k][:0], b.from[k][:0]
		for end := 0; end <= n; end++ {
			least, from := b.strain(ml[d], 0, end), 0
			for begin := 0; k > 0 && begin <= end; begin++ {
				if x := max(b.worst[k-1][begin], b.strain(ml[d], begin, end)); begin == 0 || x < least {
					least, from = x, begin
				}
			}
			b.worst[k], b.from[k] = append(b.worst[k], least), append(b.from[k], from)
		}
	}
	end := n
	for k := len(drinks) - 1; k >= 0; k-- {
		ends[k] = end
		end = b.from[k][end]
	}
}

// notCarried marks chances that cannot carry a drink, beyond any strain that can
// be borne.
const notCarried = math.MaxInt32

// strain is how much more than even the chances between two places of the order
// have to be filled with so many mL.
func (b *bottling) strain(ml float64, begin, end int) float64 {
	most, even := b.most[end]-b.most[begin], b.even[end]-b.even[begin]
	switch {
	case ml <= 0:
		return 0
	case exceeds(ml, most):
		return notCarried - most/ml
	}
	return ml / (even + 1)
}

// mingle hands the chances of one kind, from place to place of the order, to the
// drinks whose parts lie there, evenly over the time.
func (b *bottling) mingle(drinks []int, ends [Drinks]int, first, end int) {
	var parts, given [Drinks]int
	begin := 0
	for k := range drinks {
		parts[k] = max(0, min(ends[k], end)-max(begin, first))
		begin = ends[k]
	}
	n := end - first
	for j := range n {
		best, lag := 0, 0.0 // one lags, as long as there are chances left
		for k := range drinks {
			if x := float64(parts[k])*(float64(j)+0.5)/float64(n) - float64(given[k]); x > lag {
				best, lag = k, x
			}
		}
		given[best]++
		b.takes[b.order[first+j]].stands[drinks[best]] = true
	}
}
