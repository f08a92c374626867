// Package day is the day plan: what is drunk and eaten before, in and after the
// session, with the further sessions of the day.
package day
