// Package colleague is where what another practice sent is taken in: the locked file is
// opened, what would come of it is shown, and only then it is written. What a merge left
// to a person is decided here, and a whole merge taken back.
package colleague
