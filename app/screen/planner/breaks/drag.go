package breaks

// Drag shows a column at another height, no higher than the chance carries.
func (t *BreaksTab) Drag(stop int, to float64) { t.editor.Drag(stop, to) }

// Release sets the amount of the chance; the others are filled around it.
func (t *BreaksTab) Release() { t.editor.Release() }
