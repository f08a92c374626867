//go:build unix

package cputime

import (
	"syscall"
	"time"
)

// Used is the processor time this program has used so far, on all its threads.
func Used() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
