package mutate

import (
	"fmt"
	"syscall"
)

// memory is the address space that a program may take, bytes: a compiler needs less, and a
// mistake that gathers without end is found before the machine stands still.
const memory = 7 << 30

// LimitMemory holds this program and those it starts to that.
func LimitMemory() error {
	if err := syscall.Setrlimit(syscall.RLIMIT_AS, &syscall.Rlimit{Cur: memory, Max: memory}); err != nil {
		return fmt.Errorf("limit the memory: %w", err)
	}
	return nil
}
