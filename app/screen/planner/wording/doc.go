// Package wording says a plan in the practice's language and units, for all
// panels of the planner; what only one panel says stands with that panel.
package wording
