// Package athlete is the overview of one person in care: where things stand. At
// the left is the dated trail of tests, agreements, reviews, trips and consents, at
// the right the last test in a few sentences, the sweat rate against the heat of
// all tests, the steps of the plan in force, and what is due. It changes nothing;
// the person is written down in package profile.
//
// What is shown is made in plain functions ([file] and the files ending in
// state.go); the view only puts it on the screen. Where body mass is hidden from
// the athlete it speaks of litres only.
package athlete
