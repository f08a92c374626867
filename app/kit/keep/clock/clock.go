// Package clock is for tests: a clock that goes only when it is told to. What
// waits on it runs on the goroutine that moves it on, so that a test depends
// on no time and nothing runs beside it.
package clock

import (
	"sync"
	"time"
)

// Clock stands still until [Clock.Advance].
type Clock struct {
	mu      sync.Mutex
	now     time.Time
	waiting []*alarm
}

// alarm is one function that waits.
type alarm struct {
	at time.Time
	do func()
}

// New makes a clock that shows a moment.
func New(now time.Time) *Clock { return &Clock{now: now} }

// Now returns what the clock shows.
func (c *Clock) Now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.now
}

// After lets do run once the clock has gone on by d. The function returned
// takes it back.
func (c *Clock) After(d time.Duration, do func()) (stop func()) {
	c.mu.Lock()
	defer c.mu.Unlock()
	a := &alarm{c.now.Add(d), do}
	c.waiting = append(c.waiting, a)
	return func() {
		c.mu.Lock()
		defer c.mu.Unlock()
		c.remove(a)
	}
}

// Advance moves the clock on and runs what has come due, in order.
func (c *Clock) Advance(d time.Duration) {
	until := c.Now().Add(d)
	for {
		a := c.next(until)
		if a == nil {
			return
		}
		a.do()
	}
}

// next moves the clock to the earliest alarm up to until, takes it off and
// returns it; nil when there is none, and the clock shows until.
func (c *Clock) next(until time.Time) *alarm {
	c.mu.Lock()
	defer c.mu.Unlock()
	var first *alarm
	for _, a := range c.waiting {
		if !a.at.After(until) && (first == nil || a.at.Before(first.at)) {
			first = a
		}
	}
	if first == nil {
		c.now = until
		return nil
	}
	c.now = first.at
	c.remove(first)
	return first
}

// remove takes an alarm off; c.mu is held.
func (c *Clock) remove(a *alarm) {
	for i, other := range c.waiting {
		if other == a {
			c.waiting = append(c.waiting[:i], c.waiting[i+1:]...)
			return
		}
	}
}
