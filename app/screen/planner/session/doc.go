// Package session is the session a plan is for and the limits that hold for it:
// lengths, effort, the deficit limit, the aims, what a suggestion may change,
// the tests a plan is based on, another climate.
package session
