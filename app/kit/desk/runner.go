package desk

import (
	"context"

	"fyne.io/fyne/v2"
)

// Runner runs slow work beside the window's thread.
type Runner interface {
	// Run starts work and calls done on the window's thread when it has ended.
	// The function returned stops it: the context is cancelled, and done is
	// called all the same, with the context's error.
	Run(work func(ctx context.Context) error, done func(error)) (stop func())
}

// Aside runs work on a goroutine of its own.
type Aside struct{}

// Run starts the work.
func (Aside) Run(work func(ctx context.Context) error, done func(error)) (stop func()) {
	ctx, cancel := context.WithCancel(context.Background())
	go func() {
		err := work(ctx)
		cancel()
		fyne.Do(func() { done(err) })
	}()
	return cancel
}

// Inline runs work at once, for tests.
type Inline struct{}

// Run does the work and then calls done.
func (Inline) Run(work func(ctx context.Context) error, done func(error)) (stop func()) {
	done(work(context.Background()))
	return func() {}
}
