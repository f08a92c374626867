// Package compare is the table of options side by side, and what can be done to
// the one selected.
package compare
