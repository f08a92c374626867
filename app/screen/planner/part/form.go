package part

import "ebbwell/app/kit/look"

// FormWords is the width of the words before a field, in px at 100 % text.
const FormWords float32 = 142

// NewForm makes the form of this screen: wide fields, in as many columns as have
// room below the panels.
func NewForm(entries ...look.Entry) *look.Form {
	return look.NewForm(entries...).Measured(FormWords, 430, 0)
}
