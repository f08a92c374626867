package app

import "ebbwell/app/kit/desk"

// View returns the screen that is shown.
func (p *Program) View() desk.View { return p.view }
