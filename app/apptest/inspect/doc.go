// Package inspect is for tests: it reads what a window would paint, without
// painting it, and tells what breaks the rules of the layout. No text is cut or
// shortened, no text lies on another and no control on another, nothing lies
// outside the window, and all can be told from what is under it: text by 4.5:1
// (3:1 when it is large), shapes that carry a message by 3:1 (WCAG 2.2, success
// criteria 1.4.3 and 1.4.11).
package inspect
