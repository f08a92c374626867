//go:build !linux

package offline

// Shut returns [ErrUnable].
func Shut() error { return ErrUnable }
