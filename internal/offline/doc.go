// Package offline shuts a program off from every network, so that a test can tell
// whether it dials: from then on the system ends the program, by SIGSYS, at the
// first socket that is not one of this machine's own (AF_UNIX), whoever opens it,
// whatever library it comes from. It needs no rights and cannot be taken back; the
// programs that are started from then on are shut off too. Only Linux can do it
// (seccomp, see https://docs.kernel.org/userspace-api/seccomp_filter.html).
package offline

import "errors"

// ErrUnable says that this system cannot shut a program off.
var ErrUnable = errors.New("this system cannot shut a program off from networks")
