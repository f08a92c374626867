package climate

import (
	"errors"
	"math"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/mat"
)

// Test is one of the athlete's field tests.
type Test struct {
	Session Session
	// Rate is the measured sweat rate, respiratory water and gas exchange
	// taken off; U its standard uncertainty.
	Rate, U quantity.LitresPerHour
	// MonthsAgo is how long before the plan's day the test was.
	MonthsAgo float64
}

// refused is the error of measured values that cannot be.
func (t Test) refused(l limits) error {
	return l.refused(
		fieldValue{evidence.SweatRate, float64(t.Rate)},
		fieldValue{evidence.TestUncertainty, float64(t.U)},
		fieldValue{evidence.TestMonths, t.MonthsAgo},
	)
}

// Refusal says why a test does not count.
type Refusal struct {
	// Test counts from 0 in the tests given.
	Test int
	// Err holds the problems of an impossible test.
	Err error
}

// Start is where an athlete is taken to stand before a test: a usual rate is
// exp(Offset) of the first figure, with a standard deviation of its logarithm
// between athletes.
type Start struct {
	Offset, SD float64
	// Athletes is how many of the practice's own are behind it; 0 in the usual one.
	Athletes int
}

// UsualStart is the start of the rule: 0.33 and 0.23, which make the usual
// sessions of untested athletes 1.21 ± 0.73 L/h (Baker et al. 2016: 1.21 ± 0.68).
func UsualStart() Start { return Start{Offset: evidence.StartOffset, SD: evidence.StartSD} }

// TestSet is what an athlete's tests say, worked through once so that a planned
// session costs little.
type TestSet struct {
	body    Body
	start   Start
	limits  limits
	tests   []Test
	used    []int // which of the tests count
	refused []Refusal
	demands []demand      // of the tests that count
	own     []float64     // the diagonal of K
	offset  *mat.VecDense // d, ln rate less first figure and offset
	pull    *mat.VecDense // K⁻¹ d
	factor  mat.Cholesky  // of K
	chi2    float64       // d' K⁻¹ d
	odd     []float64     // |d| over its own SD
}

// NewTestSet works through an athlete's tests.
//
//	d_i = ln rate_i - g_i - offset
//	K_ij = c(i,j), and on the diagonal day_i² + min(u_i/rate_i, 0.4)² more
//
// A test that cannot be, or was in water, is refused and the others go on. With
// a test that counts the start is the usual one. It returns an [evidence.Problem] for a body that cannot be.
func NewTestSet(a Athlete, tests []Test) (*TestSet, error) {
	s := &TestSet{body: a.Body, start: a.Start, limits: evidence.Limits(), tests: tests}
	if err := s.limits.refused(a.Body.values()...); err != nil {
		return nil, err
	}
	for i, t := range tests {
		x, err := s.limits.calculate(a.Body, t.Session)
		if err = errors.Join(err, t.refused(s.limits)); err != nil {
			s.refused = append(s.refused, Refusal{i, err})
			continue
		}
		d := demandOf(x, t.Session)
		d.at[alongMonths] = t.MonthsAgo / evidence.LikeMonths
		s.used, s.demands = append(s.used, i), append(s.demands, d)
	}
	if s.start == (Start{}) || len(s.used) > 0 {
		s.start = UsualStart()
	}
	s.weigh()
	return s, nil
}

// Later is the set for another day: the same tests, with how long before it each
// was. Their heat balances are not worked out again. It returns an
// [evidence.Problem] for a body that cannot be.
func (s *TestSet) Later(tests []Test) (*TestSet, error) {
	later := *s
	later.tests, later.demands = tests, slices.Clone(s.demands)
	for i, at := range s.used {
		if err := tests[at].refused(s.limits); err != nil {
			return NewTestSet(Athlete{Body: s.body, Start: s.start}, tests)
		}
		later.demands[i].at[alongMonths] = tests[at].MonthsAgo / evidence.LikeMonths
	}
	later.factor = mat.Cholesky{}
	later.weigh()
	return &later, nil
}

// weigh factors K and finds what the tests pull at.
func (s *TestSet) weigh() {
	n := len(s.used)
	if n == 0 {
		return
	}
	k := mat.NewSymDense(n, nil)
	s.offset, s.pull = mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	s.own, s.odd = make([]float64, n), make([]float64, n)
	for i, at := range s.used {
		t := s.tests[at]
		for j := range i {
			k.SetSym(i, j, s.demands[i].covariance(&s.demands[j], s.start.SD))
		}
		s.own[i] = s.demands[i].covariance(&s.demands[i], s.start.SD) + s.demands[i].day + square(min(float64(t.U/t.Rate), evidence.TestErrorMost))
		k.SetSym(i, i, s.own[i])
		d := math.Log(float64(t.Rate)) - s.demands[i].log - s.start.Offset
		s.offset.SetVec(i, d)
		s.odd[i] = math.Abs(d) / math.Sqrt(s.own[i])
	}
	// K is a covariance with something of its own on every diagonal: it factors.
	s.factor.Factorize(k)
	s.solve(s.pull, s.offset)
	s.chi2 = mat.Dot(s.offset, s.pull)
}

// solve is x = K⁻¹ y, through the two triangles of the factor. With noise on its
// diagonal K is not near to singular.
func (s *TestSet) solve(x, y *mat.VecDense) {
	u, ok := s.factor.RawU().(*mat.TriDense)
	if !ok {
		return
	}
	x.CopyVec(y)
	blas64.Trsv(blas.Trans, u.RawTriangular(), x.RawVector())
	blas64.Trsv(blas.NoTrans, u.RawTriangular(), x.RawVector())
}

// outcome is the rule's answer for one session, logarithms of L/h.
type outcome struct {
	mean float64
	// unknown is V, what no test has shown, before h; day what a day to come adds.
	unknown, day float64
	// wider is h, how much the tests disagree; reach how far they say anything.
	wider, reach float64
	lowEnd       float64
	weights      []float64 // K⁻¹ k, by test that counts
	alone        []float64 // V with that one test only
}

// outcome works out a session.
//
//	ln mean = g + offset + k' K⁻¹ d      V = p - k' K⁻¹ k
//	h = max(0.8, (6 + chi2)/(6 + n))     s² = (V + day²) (1 + (h - 1)(1 - V/p))
//	low = mean exp(-(1.96 + lambda) s)   high = mean exp(1.96 s)
func (s *TestSet) outcome(plan *demand) outcome {
	p, n := plan.covariance(plan, s.start.SD), len(s.used)
	o := outcome{mean: plan.log + s.start.Offset, unknown: p, day: plan.day, wider: 1, lowEnd: plan.lowEnd}
	if n == 0 {
		return o
	}
	k, w := mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	o.alone = make([]float64, n)
	for i := range s.demands {
		shared := s.demands[i].covariance(plan, s.start.SD)
		k.SetVec(i, shared)
		o.alone[i] = p - shared*shared/s.own[i]
	}
	s.solve(w, k)
	o.mean += mat.Dot(w, s.offset)
	o.unknown = max(0, p-mat.Dot(w, k))
	o.wider = max(evidence.AgreeLeast, (evidence.AgreeTests+s.chi2)/(evidence.AgreeTests+float64(n)))
	o.reach = 1 - o.unknown/p
	o.weights = w.RawVector().Data
	return o
}

// sd is the standard deviation of the logarithm of the rate.
func (o outcome) sd() float64 {
	return math.Sqrt((o.unknown + o.day) * (1 + (o.wider-1)*o.reach))
}

// share is what no test has shown, of the whole variance.
func (o outcome) share() float64 { return o.unknown / (o.unknown + o.day) }

// ends are the middle and the 95 % range in L/h.
func (o outcome) ends() (low, middle, high float64) {
	s := o.sd()
	return math.Exp(o.mean - (evidence.CoverageFactor+o.lowEnd)*s), math.Exp(o.mean), math.Exp(o.mean + evidence.CoverageFactor*s)
}
