package desk

import (
	"fyne.io/fyne/v2"

	"ebbwell/internal/record"
)

// View is a screen as the window shows it. Its methods are called on the
// window's thread.
type View interface {
	// Head is what stands above the screen; it is asked again after
	// [Desk.HeadChanged].
	Head() Head
	// Body is the screen; the same object every time.
	Body() fyne.CanvasObject
	// Leave is called before another screen is shown; what is still to be
	// saved is handed over there.
	Leave()
}

// Undoer is a [View] on which steps can be taken back.
type Undoer interface {
	Undo() bool
	Redo() bool
	CanUndo() bool
	CanRedo() bool
}

// Clearer is a [View] that may have made something for nothing, such as a record
// that holds nothing. It is told once another view is about to take its place, or
// the window closes (an empty Place), and takes that away.
type Clearer interface{ ClearUp(next Place) }

// Shower is a [View] that is told when it stands in the window: it may ask for
// the keyboard then.
type Shower interface{ Shown() }

// Stayer is a [View] that is told when it was left but stays in the window after all,
// since it could not be saved or the other screen could not be opened.
type Stayer interface{ Stayed() }

// Printer is a [View] that can be printed (Ctrl+P).
type Printer interface{ Print() }

// Head is the strip above a screen.
type Head struct {
	Title, Under string
	// Short stands for Under where that finds no room; empty for none.
	Short string
	// Athlete whose tabs are shown; empty for none.
	Athlete record.ID
	// Tab is the chosen one of the athlete's tabs; none for the profile.
	Tab Screen
	// Actions stand at the right, the main one last.
	Actions []fyne.CanvasObject
	// Spare stand before them and go first where room is short: each can be had
	// elsewhere too.
	Spare []fyne.CanvasObject
}
