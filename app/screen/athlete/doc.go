// Package athlete is the overview of one person in care: where things stand. First
// stands what is due, beside it the last test in one sentence and one picture; then
// the sweat rates by date and against the heat, and the steps of the plan in force.
// All dates, what is due and what has happened, stand behind a link. It changes
// nothing; the person is written down in package profile.
//
// What is shown is made in plain functions ([file] and the files ending in
// state.go); the view only puts it on the screen. Where body mass is hidden from
// the athlete it speaks of litres only.
package athlete
