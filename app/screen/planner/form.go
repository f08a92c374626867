package planner

import "ebbwell/app/kit/look"

// formWords is the width of the words before a field, in px at 100 % text.
const formWords float32 = 132

// newForm makes the form of this screen: wide fields, in as many columns as have
// room below the panels.
func newForm(entries ...look.Entry) *look.Form {
	return look.NewForm(entries...).Measured(formWords, 430, 0)
}
