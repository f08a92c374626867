// Package giving is where records are given away: one athlete's to the athlete or to
// the coach, those of a group to the coach. What is left out, and why, is shown before
// a file is written and stands in the file in words.
package giving
