package offline

import (
	"fmt"
	"runtime"
	"syscall"
	"unsafe"
)

// Numbers of the system's own headers: linux/prctl.h, linux/seccomp.h,
// linux/filter.h. What is asked of a call lies at these places of seccomp_data.
const (
	noNewPrivileges = 38 // PR_SET_NO_NEW_PRIVS

	modeFilter = 1 // SECCOMP_SET_MODE_FILTER
	allThreads = 1 // SECCOMP_FILTER_FLAG_TSYNC

	ioUringSetup = 425 // a second way to open sockets, the same number everywhere

	callNumber = 0  // seccomp_data.nr
	firstValue = 16 // the low half of seccomp_data.args[0]

	loadWord = 0x20 // BPF_LD | BPF_W | BPF_ABS
	ifEqual  = 0x15 // BPF_JMP | BPF_JEQ | BPF_K
	answer   = 0x06 // BPF_RET | BPF_K

	endProgram = 0x80000000 // SECCOMP_RET_KILL_PROCESS
	goOn       = 0x7fff0000 // SECCOMP_RET_ALLOW
)

// filter is a sock_fprog: what the system asks at each call.
type filter struct {
	n     uint16
	steps *syscall.SockFilter
}

// Shut shuts this program off, all its threads. The error is [ErrUnable] where the
// system does not know how.
func Shut() error {
	number, known := seccompCall(runtime.GOARCH)
	if !known {
		return fmt.Errorf("%w: %s", ErrUnable, runtime.GOARCH)
	}
	steps := []syscall.SockFilter{
		{Code: loadWord, K: callNumber},
		{Code: ifEqual, K: ioUringSetup, Jt: 3},
		{Code: ifEqual, K: syscall.SYS_SOCKET, Jf: 3},
		{Code: loadWord, K: firstValue},
		{Code: ifEqual, K: syscall.AF_UNIX, Jt: 1},
		{Code: answer, K: endProgram},
		{Code: answer, K: goOn},
	}
	program := filter{n: uint16(len(steps)), steps: &steps[0]}
	runtime.LockOSThread() // the two calls belong to one thread
	defer runtime.UnlockOSThread()
	if _, _, err := syscall.Syscall6(syscall.SYS_PRCTL, noNewPrivileges, 1, 0, 0, 0, 0); err != 0 {
		return fmt.Errorf("%w: %w", ErrUnable, err)
	}
	if _, _, err := syscall.Syscall(number, modeFilter, allThreads, uintptr(unsafe.Pointer(&program))); err != 0 {
		return fmt.Errorf("%w: %w", ErrUnable, err)
	}
	runtime.KeepAlive(steps)
	return nil
}

// seccompCall is the number of the call for a processor.
func seccompCall(processor string) (number uintptr, known bool) {
	numbers := map[string]uintptr{"amd64": 317, "arm64": 277}
	number, known = numbers[processor]
	return number, known
}
