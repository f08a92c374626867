package store

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"syscall"
	"unsafe"
)

// A second program is watched call by call (ptrace), and hit at one change of a
// file, chosen by its number: so every moment between two changes can be aimed
// at, and nothing in the program knows of it.

// blow is what happens at the chosen change.
type blow string

const (
	// noBlow only counts.
	noBlow blow = "count"
	// killBefore ends the program before the change is made.
	killBefore blow = "kill"
	// killHalfway lets half of the bytes be written and then ends the program.
	killHalfway blow = "torn"
	// noRoomFrom answers from then on that the disk is full.
	noRoomFrom blow = "full"
	// failFrom answers from then on that the disk does not work.
	failFrom blow = "broken"
)

// strike says at which change, counted from 1, which blow falls.
type strike struct {
	at   int
	with blow
}

// Requests and options of ptrace that package syscall does not name, see ptrace(2).
const (
	callInfo      = 0x420e   // PTRACE_GET_SYSCALL_INFO
	endWithTracer = 0x100000 // PTRACE_O_EXITKILL
	everyThread   = 0x40000000
	entering      = 1 // PTRACE_SYSCALL_INFO_ENTRY
	leaving       = 2 // PTRACE_SYSCALL_INFO_EXIT
)

// call is a call of the system that a program is about to make, or has made.
type call struct {
	op     uint8
	_      [3]uint8
	_      uint32
	_, _   uint64
	number uint64 // of the call; on leaving what it answered
	values [6]uint64
	_      uint64
}

// errNoWatching says that this system lets no program watch another.
var errNoWatching = errors.New("this system lets no program watch another")

// watched is a program that is being watched.
type watched struct {
	strike
	seen   int // changes so far
	struck bool
	answer map[int]syscall.Errno // by thread: what its call is answered with
	ending map[int]bool          // by thread: the program ends after its call
	names  []string              // of the calls that were counted
}

// run starts a program, watches it to its end, and returns how many changes of
// files it made or tried, and how it ended.
func (s strike) run(cmd *exec.Cmd) (w *watched, status syscall.WaitStatus, err error) {
	runtime.LockOSThread() // one thread watches
	defer runtime.UnlockOSThread()
	cmd.SysProcAttr = &syscall.SysProcAttr{Ptrace: true}
	if err := cmd.Start(); err != nil {
		return nil, 0, fmt.Errorf("%w: %w", errNoWatching, err)
	}
	w = &watched{strike: s, answer: map[int]syscall.Errno{}, ending: map[int]bool{}}
	pid := cmd.Process.Pid
	if _, err := syscall.Wait4(pid, &status, 0, nil); err != nil {
		return nil, 0, err
	}
	options := syscall.PTRACE_O_TRACESYSGOOD | syscall.PTRACE_O_TRACECLONE | endWithTracer
	if err := syscall.PtraceSetOptions(pid, options); err != nil {
		return nil, 0, fmt.Errorf("%w: %w", errNoWatching, err)
	}
	if err := syscall.PtraceSyscall(pid, 0); err != nil {
		return nil, 0, err
	}
	status, err = w.follow(pid)
	if err != nil {
		return nil, 0, err
	}
	return w, status, cmd.Process.Release()
}

// follow goes from stop to stop until the program has ended, and returns how.
func (w *watched) follow(pid int) (status syscall.WaitStatus, err error) {
	for {
		thread, err := syscall.Wait4(-1, &status, everyThread, nil)
		switch {
		case errors.Is(err, syscall.EINTR):
			continue
		case err != nil:
			return 0, err
		case status.Exited() || status.Signaled():
			if thread == pid {
				return status, nil
			}
			continue
		}
		pass, err := w.stopped(pid, thread, status.StopSignal())
		if err == nil {
			err = ignoreGone(syscall.PtraceSyscall(thread, pass))
		}
		if err != nil {
			return 0, err
		}
	}
}

// stopped looks at a thread that stopped, and returns the signal it is to get.
func (w *watched) stopped(pid, thread int, sig syscall.Signal) (pass int, err error) {
	switch sig {
	case syscall.SIGTRAP | 0x80:
		return 0, w.look(pid, thread)
	case syscall.SIGTRAP, syscall.SIGSTOP: // a thread that begins, or has begun another
		return 0, nil
	}
	return int(sig), nil
}

// look looks at a call as a thread enters or leaves it.
func (w *watched) look(pid, thread int) error {
	var c call
	_, _, errno := syscall.Syscall6(syscall.SYS_PTRACE, callInfo, uintptr(thread), unsafe.Sizeof(c), uintptr(unsafe.Pointer(&c)), 0, 0)
	if errno != 0 {
		return ignoreGone(errno)
	}
	switch c.op {
	case entering:
		name, changes := changeOf(thread, c)
		if !changes {
			return nil
		}
		w.seen++
		w.names = append(w.names, name)
		if w.at > 0 && w.seen >= w.at {
			return w.hit(pid, thread, c)
		}
	case leaving:
		if w.ending[thread] {
			return ignoreGone(syscall.Kill(pid, syscall.SIGKILL))
		}
		if answer, changed := w.answer[thread]; changed {
			delete(w.answer, thread)
			return setRegisters(thread, func(r *syscall.PtraceRegs) { r.Rax = uint64(-int64(answer)) })
		}
	}
	return nil
}

// hit lets the blow fall on a call that a thread is about to make.
func (w *watched) hit(pid, thread int, c call) error {
	if w.with == noBlow {
		return nil
	}
	first := !w.struck
	w.struck = true
	switch w.with {
	case killBefore:
		return ignoreGone(syscall.Kill(pid, syscall.SIGKILL))
	case killHalfway:
		if !first {
			return nil
		}
		w.ending[thread] = true
		if n := c.values[2]; writes(c.number) && n > 1 {
			return setRegisters(thread, func(r *syscall.PtraceRegs) { r.Rdx = n / 2 })
		}
		return nil
	}
	w.answer[thread] = map[blow]syscall.Errno{noRoomFrom: syscall.ENOSPC, failFrom: syscall.EIO}[w.with]
	if w.with == noRoomFrom && !grows(c) {
		delete(w.answer, thread) // a full disk still lets files be removed and renamed
		return nil
	}
	return setRegisters(thread, func(r *syscall.PtraceRegs) { r.Orig_rax = ^uint64(0) })
}

// ignoreGone is no error where a thread is gone already.
func ignoreGone(err error) error {
	if errors.Is(err, syscall.ESRCH) {
		return nil
	}
	return err
}

// setRegisters changes what a call is made with, or has answered.
func setRegisters(thread int, change func(*syscall.PtraceRegs)) error {
	var r syscall.PtraceRegs
	if err := syscall.PtraceGetRegs(thread, &r); err != nil {
		return ignoreGone(err)
	}
	change(&r)
	return ignoreGone(syscall.PtraceSetRegs(thread, &r))
}

// writes reports whether a call writes bytes into a file.
func writes(number uint64) bool { return number == syscall.SYS_WRITE || number == syscall.SYS_PWRITE64 }

// grows reports whether a call may need room on the disk.
func grows(c call) bool {
	switch c.number {
	case syscall.SYS_WRITE, syscall.SYS_PWRITE64, syscall.SYS_FALLOCATE, syscall.SYS_OPENAT, syscall.SYS_MKDIRAT, syscall.SYS_MKDIR:
		return true
	case syscall.SYS_FTRUNCATE:
		return c.values[1] > 0
	}
	return false
}

// changeOf reports whether a call changes a file or a folder, and its name.
func changeOf(thread int, c call) (name string, changes bool) {
	switch c.number {
	case syscall.SYS_WRITE, syscall.SYS_PWRITE64, syscall.SYS_FTRUNCATE, syscall.SYS_FALLOCATE, syscall.SYS_FSYNC, syscall.SYS_FDATASYNC:
		// Not pipes and the like.
		path, err := os.Readlink(fmt.Sprintf("/proc/%d/fd/%d", thread, c.values[0]))
		if err != nil || !strings.HasPrefix(path, "/") || strings.HasPrefix(path, "/dev/") {
			return "", false
		}
		return path, true
	case syscall.SYS_OPENAT:
		return "open", c.values[2]&syscall.O_CREAT != 0
	case syscall.SYS_RENAME, syscall.SYS_RENAMEAT, syscall.SYS_UNLINK, syscall.SYS_UNLINKAT, syscall.SYS_MKDIR, syscall.SYS_MKDIRAT,
		syscall.SYS_LINK, syscall.SYS_LINKAT, syscall.SYS_CHMOD, syscall.SYS_FCHMOD, syscall.SYS_FCHMODAT, 316: // renameat2
		return fmt.Sprint("call ", c.number), true
	}
	return "", false
}
