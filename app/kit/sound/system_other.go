//go:build !windows

package sound

import "runtime"

// System plays with what this system has.
func System() Player { return systemPrograms(runtime.GOOS) }
