package sound

import (
	"context"
	"errors"
	"path/filepath"
	"runtime"
	"syscall"
	"unsafe"
)

// How PlaySound is asked (winmm, mmsystem.h): the sound lies in memory, no other is played
// in its place, and the call returns when it has ended.
const (
	sndSync      = 0x0000
	sndNoDefault = 0x0002
	sndMemory    = 0x0004
)

// windows plays through the system.
type windows struct{}

// System plays with what this system has.
func System() Player { return windows{} }

// Play plays the tone; when the context ends it stops it and does not wait.
func (windows) Play(ctx context.Context) error {
	folder, err := systemFolder()
	if err != nil {
		return ErrNone
	}
	library := syscall.NewLazyDLL(filepath.Join(folder, "winmm.dll"))
	play, devices := library.NewProc("PlaySoundW"), library.NewProc("waveOutGetNumDevs")
	if play.Find() != nil || devices.Find() != nil {
		return ErrNone
	}
	if n, _, _ := devices.Call(); n == 0 {
		return ErrNone
	}
	ended := make(chan error, 1)
	go func() {
		tone := Tone()
		done, _, err := play.Call(uintptr(unsafe.Pointer(&tone[0])), 0, sndSync|sndNoDefault|sndMemory)
		runtime.KeepAlive(tone)
		if done == 0 {
			ended <- errors.Join(errors.New("play a tone"), err)
			return
		}
		ended <- nil
	}()
	ctx, cancel := context.WithTimeout(ctx, longest)
	defer cancel()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
		go func() { _, _, _ = play.Call(0, 0, 0) }() // stops what plays
		return ctx.Err()
	}
}

// systemFolder is where the system keeps its libraries, so that none of the same name
// beside the program is taken.
func systemFolder() (string, error) {
	proc := syscall.NewLazyDLL("kernel32.dll").NewProc("GetSystemDirectoryW")
	name := make([]uint16, syscall.MAX_PATH)
	n, _, err := proc.Call(uintptr(unsafe.Pointer(&name[0])), uintptr(len(name)))
	if n == 0 || int(n) > len(name) {
		return "", err
	}
	return syscall.UTF16ToString(name[:n]), nil
}
