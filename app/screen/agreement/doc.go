// Package agreement is what is asked when a plan is agreed, when an agreed one is
// corrected, and when a new one goes on from it. The planner opens it.
package agreement
