// Package planner is the screen on which dietitian and athlete settle what is
// drunk and eaten in a session. At the left are the sliders of one option's mix,
// at the right, live, what it comes to; below, behind tabs, the options side by
// side, the steps from habit to aim, what to take at each break, the day, and
// the session with the limit set together.
//
// [New] opens a plan. The plan is a [desk.Document]: every movement and every
// keystroke changes the record, is saved by itself and can be taken back; a drag
// is one step. What is shown is a state and a calculation, plain values of package
// state; package wording says them. Each panel has a package of its own (mix,
// figures, breaks, steps, compare, day, session, review) that works on a part.Plan
// and knows no other panel; this package puts them on the page and lets them
// follow what is moved. Every figure comes from package plan, every condition of
// the athlete from package consult: nothing is computed here.
//
// A slider stops at the ceiling of its plan, with the reason in words: more than
// is lost cannot be planned. An agreed plan is read only but for its follow-up.
// Where body mass is hidden from the athlete, litres are all that is shown.
package planner
