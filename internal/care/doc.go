// Package care is what changes for whom: the conditions of the profile with what
// each asks for, minors and what comes before their first sheet, and what is shown
// where body mass is hidden. It is one table ([Effects]) and plain functions of an
// athlete's record; screens, pages and results ask it.
package care
