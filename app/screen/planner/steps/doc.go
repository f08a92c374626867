// Package steps is the way from habit to aim: the picture of the steps, their
// list, the rules they are made by.
package steps
