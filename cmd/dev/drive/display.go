package drive

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"image/png"
	"os"
	"os/exec"
	"strings"
	"time"
)

// Display is a virtual screen: an Xvfb of its own, on a free number.
type Display struct {
	// Name is what DISPLAY is set to: ":7".
	Name string
	xvfb *exec.Cmd
}

// StartDisplay starts a virtual screen of a size in pixels.
func StartDisplay(ctx context.Context, width, height int) (*Display, error) {
	r, w, err := os.Pipe()
	if err != nil {
		return nil, fmt.Errorf("start the virtual screen: %w", err)
	}
	defer r.Close() //nolint:errcheck // nothing is written to it
	// Xvfb picks the number itself and tells it on the descriptor.
	c := exec.CommandContext(ctx, "Xvfb", "-displayfd", "3", "-screen", "0", fmt.Sprintf("%dx%dx24", width, height),
		"-dpi", "96", "-nolisten", "tcp", "-noreset")
	c.ExtraFiles = []*os.File{w}
	c.Cancel = func() error { return c.Process.Signal(os.Interrupt) }
	c.WaitDelay = 5 * time.Second
	err = c.Start()
	if err := errors.Join(err, w.Close()); err != nil {
		return nil, fmt.Errorf("start the virtual screen: %w", err)
	}
	number, err := bufio.NewReader(r).ReadString('\n')
	if err != nil {
		return nil, fmt.Errorf("start the virtual screen: Xvfb told no number: %w", errors.Join(err, c.Wait()))
	}
	d := &Display{Name: ":" + strings.TrimSpace(number), xvfb: c}
	if _, err := d.call(ctx, "setxkbmap", "-layout", layout); err != nil {
		return nil, errors.Join(err, d.Stop())
	}
	return d, nil
}

// Stop ends the virtual screen.
func (d *Display) Stop() error {
	if err := d.xvfb.Process.Signal(os.Interrupt); err != nil {
		return fmt.Errorf("stop the virtual screen: %w", err)
	}
	var ended *exec.ExitError
	if err := d.xvfb.Wait(); err != nil && !errors.As(err, &ended) {
		return fmt.Errorf("stop the virtual screen: %w", err)
	}
	return nil
}

// xdotool does one line of actions on the display and returns what it printed.
func (d *Display) xdotool(ctx context.Context, line ...string) (string, error) {
	return d.call(ctx, "xdotool", line...)
}

// Shot writes a window, or "root" for the whole screen, to a PNG file. It is an
// error when the picture shows next to nothing: fewer than five colours.
func (d *Display) Shot(ctx context.Context, window, file string) error {
	if err := d.capture(ctx, window, file); err != nil {
		return err
	}
	n, err := colours(file, 5)
	if err == nil && n < 5 {
		err = fmt.Errorf("%s shows only %d colours", file, n)
	}
	return err
}

// capture writes a window to a PNG file, whatever it shows.
func (d *Display) capture(ctx context.Context, window, file string) error {
	_, err := d.call(ctx, "import", "-window", window, file)
	return err
}

// colour takes a picture of a window and returns the colour of one of its pixels.
func (d *Display) colour(ctx context.Context, window, file string, x, y int) (string, error) {
	if err := d.capture(ctx, window, file); err != nil {
		return "", err
	}
	f, err := os.Open(file)
	if err != nil {
		return "", fmt.Errorf("look at the screenshot: %w", err)
	}
	defer f.Close() //nolint:errcheck // it was only read
	picture, err := png.Decode(f)
	if err != nil {
		return "", fmt.Errorf("look at the screenshot: %w", err)
	}
	r, g, b, _ := picture.At(x, y).RGBA()
	return fmt.Sprintf("#%02X%02X%02X", r>>8, g>>8, b>>8), nil
}

// call runs a program on the display.
func (d *Display) call(ctx context.Context, name string, args ...string) (string, error) {
	c := exec.CommandContext(ctx, name, args...)
	c.Env = append(os.Environ(), "DISPLAY="+d.Name, "LC_ALL=C.UTF-8")
	printed, err := c.CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("%s %s: %w: %s", name, strings.Join(args, " "), err, strings.TrimSpace(string(printed)))
	}
	return string(printed), nil
}

// colours counts the colours of a PNG file, up to enough.
func colours(file string, enough int) (int, error) {
	f, err := os.Open(file)
	if err != nil {
		return 0, fmt.Errorf("look at the screenshot: %w", err)
	}
	defer f.Close() //nolint:errcheck // it was only read
	picture, err := png.Decode(f)
	if err != nil {
		return 0, fmt.Errorf("look at the screenshot: %w", err)
	}
	seen := map[[3]uint32]bool{}
	for y := picture.Bounds().Min.Y; y < picture.Bounds().Max.Y; y++ {
		for x := picture.Bounds().Min.X; x < picture.Bounds().Max.X; x++ {
			r, g, b, _ := picture.At(x, y).RGBA()
			seen[[3]uint32{r, g, b}] = true
			if len(seen) >= enough {
				return len(seen), nil
			}
		}
	}
	return len(seen), nil
}
