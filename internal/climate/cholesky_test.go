package climate

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// TestCholeskyAsTheLibrary: for matrices like those of tests, a covariance with noise on
// its diagonal, the factor and what it solves are those of gonum's.
func TestCholeskyAsTheLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 40).Draw(t, "n")
		drawn := func(low, high float64) []float64 {
			return rapid.SliceOfN(rapid.Float64Range(low, high), n, n).Draw(t, "list")
		}
		where, noise, y := drawn(-3, 3), drawn(0.01, 0.3), drawn(-1, 1)
		k := mat.NewSymDense(n, nil)
		for i := range n {
			for j := range i + 1 {
				k.SetSym(i, j, 0.2*math.Exp(-square(where[i]-where[j])/2))
			}
			k.SetSym(i, i, k.At(i, i)+noise[i])
		}
		var library mat.Cholesky
		if !library.Factorize(k) {
			t.Skip("not positive definite")
		}
		c := newCholesky(n, k.At)
		var low mat.TriDense
		library.LTo(&low)
		for i := range n {
			for j, got := range c.row(i) {
				if want := low.At(i, j); math.Abs(got-want) > 1e-12 {
					t.Fatalf("L %d, %d is %g, not %g", i, j, got, want)
				}
			}
		}
		want := mat.NewVecDense(n, nil)
		if err := library.SolveVecTo(want, mat.NewVecDense(n, y)); err != nil {
			t.Fatal(err)
		}
		for i, got := range c.solve(y) {
			if math.Abs(got-want.AtVec(i)) > 1e-9*(1+math.Abs(got)) {
				t.Fatalf("x %d is %g, not %g", i, got, want.AtVec(i))
			}
		}
	})
}

// TestCholeskyByHand: of two by two: K = (4 2; 2 5) is L L' of L = (2 0; 1 2), and
// K x = (8, 9) has x = (22, 20)/16.
func TestCholeskyByHand(t *testing.T) {
	k := [][]float64{{4, 2}, {2, 5}}
	c := newCholesky(2, func(i, j int) float64 { return k[i][j] })
	for i, want := range []float64{2, 1, 2} {
		if c.rows[i] != want {
			t.Errorf("L is %v", c.rows)
		}
	}
	if x := c.solve([]float64{8, 9}); math.Abs(x[0]-22.0/16) > 1e-15 || math.Abs(x[1]-20.0/16) > 1e-15 {
		t.Errorf("x is %v", x)
	}
}

// BenchmarkCholesky factors what an athlete with many tests has.
func BenchmarkCholesky(b *testing.B) {
	const n = 500
	k := mat.NewSymDense(n, nil)
	for i := range n {
		for j := range i + 1 {
			k.SetSym(i, j, 0.2*math.Exp(-square(float64(i-j)/50)/2))
		}
		k.SetSym(i, i, 0.3)
	}
	for b.Loop() {
		newCholesky(n, k.At)
	}
}

// BenchmarkCholeskyBaseline is the same by gonum.
func BenchmarkCholeskyBaseline(b *testing.B) {
	const n = 500
	k := mat.NewSymDense(n, nil)
	for i := range n {
		for j := range i + 1 {
			k.SetSym(i, j, 0.2*math.Exp(-square(float64(i-j)/50)/2))
		}
		k.SetSym(i, i, 0.3)
	}
	for b.Loop() {
		var c mat.Cholesky
		c.Factorize(k)
	}
}
