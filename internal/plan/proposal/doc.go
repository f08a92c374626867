// Package proposal finds what to propose to an athlete who does something
// already: no worse than the habit, inside every limit, in amounts and steps
// that people take.
//
// [Propose] reads a [Case] and works in this order. The [Limits] say how much
// fluid may be drunk at all, carried by the breaks, taken by the stomach, and
// what the aim for the deficit needs; from them and the habit comes the target
// of fluid ([FluidCase] tells by which rule). The carbohydrate and the sodium
// asked for come from length and effort. Two routes lead there, drinks alone
// and with food; each is one [Mix], found by four integer programs in turn:
// least fluid missing, then least carbohydrate, then least sodium, then least
// cost of the change. Each route has a ladder of steps from the habit. What is
// said about it comes as codes with figures, most urgent first.
//
// The search is exact: a depth-first search through the allowed amounts that
// leaves a branch only where its bound shows that nothing in it is better, and
// looks only at the amounts of a source that lie where all limits, and what the best
// so far reaches, leave room for them.
//
// Everything here is our own proposal. Volumes are in mL, masses of nutrients
// in g and mg, body mass in kg, times in min unless a name says otherwise.
package proposal
