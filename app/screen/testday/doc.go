// Package testday is the screen of a day in the field: the sheets of all
// athletes that are unfinished or wait for the laboratory, each with what it
// still misses; the way to a new sheet, by typing a name; and blank sheets on
// paper for those who are tested without a computer at hand.
//
// [State] is what is shown, without a widget; [View] puts it on the screen.
// Nothing of a sheet is changed here.
package testday
