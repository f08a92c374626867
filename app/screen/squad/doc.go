// Package squad is the test day of a group: one row for each athlete in the order
// of the scale, one row wide open, worked with a keyboard and a number pad alone.
//
// Every row is that athlete's own sheet, the record that the sheet's own screen
// opens. What is entered for all goes into every sheet that has no value of its own
// (see internal/squad). The session and its sheets are one document: one step back
// takes back what one visit to a field changed, wherever it stands, and what differs
// from what is kept is saved in one transaction.
//
// Keys: Enter goes on as the hands do; + goes to the second weighing, * takes the
// patches on or off, - leaves the athlete for now, / begins a bib number, a letter
// begins a name; they act only where the field is empty. Up and Down go through the
// rows, F2 starts and ends the session.
package squad
