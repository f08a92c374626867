// Package state is a plan as it is open, without anything drawn: the record, the
// case it is calculated in, the option and the length selected ([State]), what the
// planner says of them ([Calculation]), and the changes that can be made. A state
// is a value; a change makes another.
package state
