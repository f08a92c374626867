package sound

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"time"
)

// command is a program that plays a file: its name, and what stands before the file.
type command struct {
	name string
	args []string
}

// commands lists what may be there on a system, what plays beside other sounds first.
func commands(system string) []command {
	if system == "darwin" {
		return []command{{"afplay", nil}}
	}
	return []command{{"pw-play", nil}, {"paplay", nil}, {"aplay", []string{"-q"}}, {"canberra-gtk-play", []string{"-f"}}}
}

// programs plays the tone with the first program that is there and can.
type programs struct {
	list []command
	// find finds a program by its name, run runs it.
	find func(name string) (path string, err error)
	run  func(ctx context.Context, path string, args []string) error
}

// systemPrograms are the programs of a system.
func systemPrograms(system string) programs {
	return programs{list: commands(system), find: exec.LookPath, run: runProgram}
}

// Play writes the tone into a file of its own, which only the user can read, and hands it
// to one program after the other until one has played it. One that was ended because it
// took too long may have played: no other is tried.
func (p programs) Play(ctx context.Context) (err error) {
	var found []command
	for _, c := range p.list {
		if path, err := p.find(c.name); err == nil {
			found = append(found, command{path, c.args})
		}
	}
	if len(found) == 0 {
		return ErrNone
	}
	file, err := toneFile()
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.Remove(file)) }()
	ctx, cancel := context.WithTimeout(ctx, longest)
	defer cancel()
	for _, c := range found {
		if err = p.run(ctx, c.name, append(append([]string{}, c.args...), file)); err == nil || ctx.Err() != nil {
			break
		}
	}
	if err != nil {
		err = fmt.Errorf("play a tone: %w", err)
	}
	return err
}

// toneFile is a file with the tone.
func toneFile() (path string, err error) {
	f, err := os.CreateTemp("", "ebbwell-*.wav")
	if err != nil {
		return "", fmt.Errorf("write a tone: %w", err)
	}
	_, err = f.Write(Tone())
	if err = errors.Join(err, f.Close()); err != nil {
		return "", errors.Join(fmt.Errorf("write a tone: %w", err), os.Remove(f.Name()))
	}
	return f.Name(), nil
}

// runProgram runs a program to its end; it is killed when the context ends.
func runProgram(ctx context.Context, path string, args []string) error {
	c := exec.CommandContext(ctx, path, args...)
	c.WaitDelay = time.Second
	return c.Run()
}
