package sound

import (
	"context"
	"errors"
	"time"
)

// Player plays the tone.
type Player interface {
	// Play plays it once and returns when it has ended, sooner when its context does.
	// [ErrNone] says that there is nothing to play it with.
	Play(ctx context.Context) error
}

// ErrNone means: this computer has nothing that plays a sound.
var ErrNone = errors.New("nothing that plays sounds")

// longest is how long a player may take: the tone takes half a second.
const longest = 5 * time.Second

// none plays nothing.
type none struct{}

// Play says that there is nothing to play with.
func (none) Play(context.Context) error { return ErrNone }
