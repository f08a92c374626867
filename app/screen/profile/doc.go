// Package profile is where a person is written down: who they are, what must be
// known before anything is advised, what they consented to, and every correction
// made. For a minor the guardian, the athlete's own assent and whether body mass is
// hidden come first, and no sheet begins before. A new athlete is kept from the
// first letter of the name on.
//
// What is shown is made in plain functions (state.go, historywords.go); the view
// only puts it on the screen. The body mass of an athlete from whom it is hidden
// is kept out of sight until somebody asks for it.
package profile
