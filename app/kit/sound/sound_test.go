package sound

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// TestTone: the file says what it holds, and the two notes have their pitch, told by how
// often the samples change sign.
func TestTone(t *testing.T) {
	wav := Tone()
	if string(wav[:4]) != "RIFF" || string(wav[8:16]) != "WAVEfmt " || string(wav[36:40]) != "data" {
		t.Fatalf("it begins with %q", wav[:header])
	}
	u32 := func(at int) int { return int(binary.LittleEndian.Uint32(wav[at:])) }
	if u32(4) != len(wav)-8 || u32(40) != len(wav)-header || u32(24) != rate || u32(28) != 2*rate {
		t.Errorf("sizes %d, %d, rates %d, %d of %d bytes", u32(4), u32(40), u32(24), u32(28), len(wav))
	}
	samples := make([]int16, (len(wav)-header)/2)
	if err := binary.Read(bytes.NewReader(wav[header:]), binary.LittleEndian, samples); err != nil {
		t.Fatal(err)
	}
	half := len(samples) / 2
	for i, want := range []float64{low, high} {
		part := samples[i*half : (i+1)*half]
		changes, loudest := 0, int16(0)
		for j, x := range part {
			loudest = max(loudest, x)
			if j > 0 && (x < 0) != (part[j-1] < 0) {
				changes++
			}
		}
		if got := float64(changes) / 2 / note; math.Abs(got-want) > 5 {
			t.Errorf("note %d has %.0f Hz, want %.0f", i+1, got, want)
		}
		if share := float64(loudest) / math.MaxInt16; math.Abs(share-volume) > 0.01 {
			t.Errorf("note %d reaches %.2f", i+1, share)
		}
		if part[0] != 0 || math.Abs(float64(part[half-1])) > 300 {
			t.Errorf("note %d begins at %d and ends at %d", i+1, part[0], part[half-1])
		}
	}
}

// system is a system whose programs are there, or fail.
type system struct {
	there, fails []string
	ran          []string
	file         string
	bytes        []byte
}

func (s *system) programs(list []command) programs {
	return programs{
		list: list,
		find: func(name string) (string, error) {
			if slices.Contains(s.there, name) {
				return "/usr/bin/" + name, nil
			}
			return "", errors.New("not found")
		},
		run: func(ctx context.Context, path string, args []string) error {
			name := filepath.Base(path)
			s.ran, s.file = append(s.ran, name), args[len(args)-1]
			s.bytes, _ = os.ReadFile(s.file)
			if slices.Contains(s.fails, name) {
				return errors.New("no sound server")
			}
			return ctx.Err()
		},
	}
}

// TestPrograms: the first program that is there and can plays the tone, once; the file is
// gone afterwards; where there is none that is said.
func TestPrograms(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	for name, c := range map[string]struct {
		s    system
		ran  []string
		none bool
		fail bool
	}{
		"none":      {system{}, nil, true, false},
		"first":     {system{there: []string{"pw-play", "aplay"}}, []string{"pw-play"}, false, false},
		"last":      {system{there: []string{"canberra-gtk-play"}}, []string{"canberra-gtk-play"}, false, false},
		"no server": {system{there: []string{"pw-play", "paplay", "aplay"}, fails: []string{"pw-play", "paplay"}}, []string{"pw-play", "paplay", "aplay"}, false, false},
		"all fail":  {system{there: []string{"aplay"}, fails: []string{"aplay"}}, []string{"aplay"}, false, true},
	} {
		err := c.s.programs(commands("linux")).Play(context.Background())
		if !slices.Equal(c.s.ran, c.ran) || errors.Is(err, ErrNone) != c.none || (err != nil) != (c.none || c.fail) {
			t.Errorf("%s: ran %q, %v", name, c.s.ran, err)
		}
		if len(c.ran) > 0 && !bytes.Equal(c.s.bytes, Tone()) {
			t.Errorf("%s: the file held %d bytes", name, len(c.s.bytes))
		}
		if _, err := os.Stat(c.s.file); err == nil {
			t.Errorf("%s: the file is still there", name)
		}
	}
	if c := commands("darwin"); len(c) != 1 || c[0].name != "afplay" {
		t.Errorf("on macOS %v", c)
	}
}

// TestStopped: a program that was ended may have played, so that no other is tried.
func TestStopped(t *testing.T) {
	s := system{there: []string{"pw-play", "aplay"}}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if err := s.programs(commands("linux")).Play(ctx); !errors.Is(err, context.Canceled) || len(s.ran) != 1 {
		t.Errorf("ran %q, %v", s.ran, err)
	}
}

// TestRunProgram: a program that hangs is killed when its context ends.
func TestRunProgram(t *testing.T) {
	if err := runProgram(context.Background(), os.Args[0], []string{"-test.run=^$"}); err != nil {
		t.Error(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if err := runProgram(ctx, os.Args[0], nil); err == nil {
		t.Error("a program runs after its context has ended")
	}
}

// plays counts what is played, and waits for its end where asked to.
type plays struct {
	n     int
	err   error
	waits bool
}

func (p *plays) Play(ctx context.Context) error {
	p.n++
	if p.waits {
		<-ctx.Done()
		return ctx.Err()
	}
	return p.err
}

// atOnce runs work at once.
func atOnce(work func(context.Context) error, done func(error)) (stop func()) {
	done(work(context.Background()))
	return func() {}
}

// TestRingsOnce: a reminder rings once, also in a program that was started anew, and one
// that was given by hand or while the sound was off not at all.
func TestRingsOnce(t *testing.T) {
	p, memory := &plays{}, &forgetful{}
	b := NewBell(p, memory, atOnce)
	quiet := func(err error) { t.Error(err) }
	b.Ring([]string{"a"}, quiet)
	if b.On() || p.n != 0 {
		t.Errorf("rang %d times while off", p.n)
	}
	b.Switch(true)
	b.Ring([]string{"a"}, quiet)
	b.Given([]string{"b"})
	b.Ring([]string{"a", "b"}, quiet)
	if p.n != 0 {
		t.Errorf("rang %d times for what was given", p.n)
	}
	b.Ring([]string{"b", "c", "d"}, quiet)
	b.Ring([]string{"c", "d"}, quiet)
	if p.n != 1 {
		t.Errorf("rang %d times", p.n)
	}
	b = NewBell(p, memory, atOnce)
	b.Ring([]string{"c"}, quiet)
	if p.n != 1 || !b.On() {
		t.Errorf("started anew: %d times, on %v", p.n, b.On())
	}
	b.Ring([]string{"e"}, quiet)
	if p.n != 2 {
		t.Errorf("%d times", p.n)
	}
	var many []string
	for i := range mostGiven {
		many = append(many, string(rune('α'+i)))
	}
	b.Given(many)
	if len(memory.given) != mostGiven {
		t.Errorf("%d reminders are remembered", len(memory.given))
	}
}

// TestFailedTone: that a tone failed is told, and that nothing plays one.
func TestFailedTone(t *testing.T) {
	b := NewBell(&plays{err: errors.New("no sound server")}, &forgetful{on: true}, atOnce)
	var failed error
	b.Ring([]string{"a"}, func(err error) { failed = err })
	if failed == nil {
		t.Error("a tone that failed is not told")
	}
	Silent().Try(func(err error) { failed = err })
	if !errors.Is(failed, ErrNone) {
		t.Errorf("nothing plays: %v", failed)
	}
}

// TestClose: closing stops a tone that would never end, and lets no other begin.
func TestClose(t *testing.T) {
	p := &plays{waits: true}
	ended, begun := make(chan error, 1), make(chan struct{})
	b := NewBell(p, &forgetful{}, func(work func(context.Context) error, done func(error)) (stop func()) {
		ctx, cancel := context.WithCancel(context.Background())
		go func() {
			close(begun)
			done(work(ctx))
		}()
		return cancel
	})
	b.Try(func(err error) { ended <- err })
	<-begun
	b.Close()
	if err := <-ended; !errors.Is(err, context.Canceled) {
		t.Errorf("ended with %v", err)
	}
	b.Try(func(error) { t.Error("plays after closing") })
	if p.n != 1 {
		t.Errorf("played %d times", p.n)
	}
}
