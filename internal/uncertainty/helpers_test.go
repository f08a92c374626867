package uncertainty

import "math"

// Correlation is the coefficient between the errors of q and r, -1 to 1; zero
// when one of them is exact.
func (q Quantity) Correlation(r Quantity) float64 {
	both := 0.0
	i, j := 0, 0
	for i < len(q.parts) && j < len(r.parts) {
		switch order(q.parts[i].source, r.parts[j].source) {
		case -1:
			i++
		case 1:
			j++
		default:
			both += q.parts[i].size * r.parts[j].size
			i++
			j++
		}
	}
	if both == 0 {
		return 0
	}
	return both / (q.U() * r.U())
}

// Sum adds quantities.
func Sum(list ...Quantity) Quantity {
	total := Exact(0)
	for _, q := range list {
		total = total.Plus(q)
	}
	return total
}

// From is the standard uncertainty that the sources of one name give q.
func (q Quantity) From(name string) float64 {
	sum := 0.0
	for _, p := range q.parts {
		if p.source.Name == name {
			sum += p.size * p.size
		}
	}
	return math.Sqrt(sum)
}
