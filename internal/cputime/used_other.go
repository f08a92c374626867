//go:build !unix

package cputime

import "time"

// Used is the time of day where the system does not tell the processor time.
func Used() time.Duration { return time.Duration(time.Now().UnixNano()) }
