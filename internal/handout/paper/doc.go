// Package paper lays a printed page out once and draws it twice: as a PDF
// whose text can be selected, and as a picture for the screen and for tests.
//
// A page is a list of [Mark]s in millimetres from the top left corner of the
// sheet: text, lines, boxes, check boxes and hatching. A [Block] is a piece of
// a page laid out from its own corner; [Stack] and [Beside] put blocks
// together, and [Pour] fills pages with them, on to a second and a third page
// where they do not fit on one.
//
// Text is measured with the embedded typeface ([Faces]). What the typeface
// cannot draw is replaced by a visible sign and never dropped; text that is
// too wide is wrapped, a word that is too wide is broken.
//
// Start with [Load], build blocks, pour them, put the pages in a [Document]
// and call [Document.PDF] or [Document.Picture]. The package knows nothing of
// sweat tests: that is the business of its parent.
package paper
