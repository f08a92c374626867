//go:build !unix

package apptest

import "time"

// CPU is the time of day where the system does not tell the processor time.
func CPU() time.Duration { return time.Duration(time.Now().UnixNano()) }
