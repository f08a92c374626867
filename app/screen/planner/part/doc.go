// Package part is what the panels of the planner have in common: the plan that
// is open ([Plan]), what of the athlete's records it is worked with ([File]),
// what the screen around them does for them ([Shell]), and what a panel is
// ([Part]).
package part
