// Package review is the follow-up of an agreed plan: the sessions done, what the
// rule proposes, what the practitioner decides.
package review
