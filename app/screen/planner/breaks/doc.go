// Package breaks is what to take at each chance to drink: the line of time, the
// chances as rows, the athlete's own mouthful.
package breaks
