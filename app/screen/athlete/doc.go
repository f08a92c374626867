// Package athlete is the two screens of one person in care.
//
// The overview says where things stand: at the left the dated trail of tests,
// agreements, reviews, trips and consents, at the right the last test in a few
// sentences, the sweat rate against the heat of all tests, the steps of the plan
// in force, and what is due. It changes nothing.
//
// The profile is where the person is written down: who they are, what must be
// known before anything is advised, what they consented to, and every
// correction made. For a minor the guardian, the athlete's own assent and
// whether body mass is hidden come first, and no sheet begins before. A new
// athlete is kept from the first letter of the name on.
//
// What is shown is made in plain functions ([file] and the files ending in
// state.go); the views only put it on the screen. Where body mass is hidden from
// the athlete both screens speak of litres only, and the profile keeps the mass
// itself out of sight until somebody asks for it.
package athlete
