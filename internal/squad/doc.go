// Package squad is a session that a group shares, without anything drawn: what is
// entered once for all, how each athlete's row stands, who is next, what is odd
// while one can still weigh again, and what the group shows together.
//
// What is entered for all stands in the session and in the sheet of every athlete
// that has no value of its own: [Share] writes a change through to them. A sheet is
// then whole by itself, so that findings, closing, history, print, correction and
// erasing need no session; and a value of an athlete's own is one that differs from
// the session's, so that no second mark can say otherwise.
//
// Times are kept and never counted: how long a patch is on, or a session runs, is
// worked out from the clock at each look, and goes on through sleep and restart.
package squad
