package climate

import "math"

// cholesky is a symmetric matrix K with noise on its diagonal, as the lower triangle L
// of K = L L' (Golub and Van Loan, Matrix Computations, 4.2): row after row, so that
// what is added up lies side by side.
type cholesky struct {
	n int
	// rows holds row i from i(i+1)/2 on: L_i0 to L_ii.
	rows []float64
}

// newCholesky factors a matrix, of which at is asked for the elements i >= j. It is a
// covariance with something of its own on every diagonal, so that it can be factored.
//
//	L_ij = (K_ij - sum over k < j of L_ik L_jk) / L_jj     L_ii = sqrt(K_ii - sum over k < i of L_ik²)
func newCholesky(n int, at func(i, j int) float64) cholesky {
	c := cholesky{n, make([]float64, n*(n+1)/2)}
	for i := range n {
		row := c.row(i)
		for j := range i {
			below := c.row(j)
			row[j] = (at(i, j) - dot(row[:j], below[:j])) / below[j]
		}
		row[i] = math.Sqrt(at(i, i) - dot(row[:i], row[:i]))
	}
	return c
}

// row is row i up to its diagonal.
func (c cholesky) row(i int) []float64 {
	from := i * (i + 1) / 2
	return c.rows[from : from+i+1]
}

// solve is K⁻¹ y: L z = y forward, then L' x = z backward.
func (c cholesky) solve(y []float64) []float64 {
	x := make([]float64, c.n)
	for i := range c.n {
		row := c.row(i)
		x[i] = (y[i] - dot(row[:i], x[:i])) / row[i]
	}
	for i := c.n - 1; i >= 0; i-- {
		row := c.row(i)
		x[i] /= row[i]
		for j := range i {
			x[j] -= row[j] * x[i]
		}
	}
	return x
}

// dot is the sum of the products of two lists of one length.
func dot(a, b []float64) float64 {
	// Four sums go on at once; one alone waits for each product.
	var s0, s1, s2, s3 float64
	b = b[:len(a)]
	i := 0
	for ; i+4 <= len(a); i += 4 {
		s0 += a[i] * b[i]
		s1 += a[i+1] * b[i+1]
		s2 += a[i+2] * b[i+2]
		s3 += a[i+3] * b[i+3]
	}
	for ; i < len(a); i++ {
		s0 += a[i] * b[i]
	}
	return s0 + s1 + s2 + s3
}
