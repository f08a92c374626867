//go:build unix

package apptest

import (
	"syscall"
	"time"
)

// CPU is the processor time this program has used so far, on all its threads. On a
// machine that does other things too it says more than the time of day.
func CPU() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
