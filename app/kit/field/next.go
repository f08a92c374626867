package field

import "fyne.io/fyne/v2"

// PassBy has Enter go past a control on its way to the next field: a link that opens
// something. Tab still reaches it.
func (c *control) PassBy() { c.passedBy = true }

// PassedBy reports whether Enter goes past the control.
func (c *control) PassedBy() bool { return c.passedBy }

// mostPassed is how many controls in a row Enter goes past at most.
const mostPassed = 40

// Next gives the keyboard to the next field of a window, as Enter does.
func Next(on fyne.Canvas) {
	for range mostPassed {
		on.FocusNext()
		if p, ok := on.Focused().(interface{ PassedBy() bool }); !ok || !p.PassedBy() {
			return
		}
	}
}
