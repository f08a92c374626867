// Package heat says and shows what an athlete's tests say about a session in
// some air: which of them holds and by what the others differ, the sweat rate
// to expect, what the heat calls for, and why.
//
// A [Speaker] turns a [consult.Calculation] into words; it calculates nothing. Of
// the parts, [Tests] and [Cautions] are widgets made once and then set,
// [ShowWhy] is a dialog, and [Picture] is the data of a chart. A trip's stops
// and the planner's question about another climate are both made of these.
//
// What is shown is held to two rules. An estimate is called one and stands
// with its range. Where body mass is hidden, nothing that could lead back to
// it is written: no formula, no body area, no per cent of mass.
package heat
