// Package uncertainty carries measurement error through arithmetic.
//
// The law of propagation (JCGM 100:2008, clause 5) says that a result
// y = f(x1 … xn) has the variance
//
//	u²(y) = Σ Σ (∂f/∂xi) (∂f/∂xj) u(xi) u(xj) r(xi, xj)
//
// and there are three ways to it here.
//
// [Quantity] is an algebra: each quantity remembers the signed contribution
// (∂f/∂xi) u(xi) of every independent source, and a sum, product or quotient
// combines them source by source. Two quantities that share a source are
// correlated through it without anybody saying so: a scale that reads 0.2 kg
// high before and after drops out of the difference. The budget of a result
// (which source makes how much of its variance) falls out of it too. A quantity
// that is only known to lie between two ends ([Between]: a bottle two people
// drank from) keeps those ends through the arithmetic as they are, because a
// bound is not a spread.
//
// [Propagate] takes any model function, inputs with standard uncertainties and
// a correlation matrix, finds the sensitivities by central differences and
// gives the effective degrees of freedom of Welch and Satterthwaite.
//
// [MonteCarlo] draws the inputs from their distributions (JCGM 101:2008) and is
// the check on the other two: where a model is far from straight over its
// inputs' spread the first order is wrong, and the draws show it.
//
// All uncertainties are standard uncertainties (one standard deviation) in the
// unit of the value. Nothing here knows what is measured.
package uncertainty
