// Package otherclimate asks, over whatever is shown, what a plan should be based on
// in another air: another test of the athlete, a city in a month, or air as
// typed. It shows at once which test holds there, the sweat rate with its
// range, what the heat calls for, and the difference this makes to the plan.
//
// [Ask] is all there is. Nothing is kept here: the chosen basis is handed to
// whoever asked.
package otherclimate
