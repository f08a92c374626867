package app

import "os"

// CloseOn closes the window, as a person would, at each signal that comes: what
// was typed is saved first, and where that fails the window asks. It returns
// when the signals end.
func (s *Shell) CloseOn(signals <-chan os.Signal) {
	for range signals {
		s.options.OnWindow(s.closeAsked)
	}
}
