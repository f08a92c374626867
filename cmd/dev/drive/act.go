package drive

import (
	"context"
	"errors"
	"time"
)

// locate waits for a control and returns a pixel within it.
func (d *Driver) locate(ctx context.Context, name string, across, down float64) (point, error) {
	c, size, err := d.Wait(ctx, name)
	if err != nil {
		return point{}, err
	}
	printed, err := d.display.xdotool(ctx, "getwindowgeometry", "--shell", d.window)
	if err != nil {
		return point{}, err
	}
	f, err := parseFrame(printed)
	if err != nil {
		return point{}, err
	}
	return f.within(c, size, across, down)
}

// act does one line of xdotool.
func (d *Driver) act(ctx context.Context, line []string) error {
	_, err := d.display.xdotool(ctx, line...)
	return err
}

// Click clicks the middle of a control.
func (d *Driver) Click(ctx context.Context, name string) error {
	return d.ClickAt(ctx, name, 0.5, 0.5)
}

// ClickAt clicks a control at a share of its width and height: on a slider,
// 0.25 across is a quarter of its length.
func (d *Driver) ClickAt(ctx context.Context, name string, across, down float64) error {
	p, err := d.locate(ctx, name, across, down)
	if err != nil {
		return err
	}
	return d.act(ctx, clickLine(p, 1))
}

// Drag drags along the middle of a control, from one share of its width to
// another, in a number of moves.
func (d *Driver) Drag(ctx context.Context, name string, from, to float64, moves int) error {
	a, err := d.locate(ctx, name, from, 0.5)
	if err != nil {
		return err
	}
	b, err := d.locate(ctx, name, to, 0.5)
	if err != nil {
		return err
	}
	return d.act(ctx, dragLine(a, between(a, b, moves)))
}

// Sway presses the mouse on a control at a share of its width, moves it so many times, by
// turns to one of two others and back, waits after each, and lets go where it began.
// moved is called before the first movement and after the last wait.
func (d *Driver) Sway(ctx context.Context, name string, at float64, to [2]float64, moves int, wait time.Duration, moved func() error) error {
	var p [3]point
	for i, share := range []float64{at, to[0], to[1]} {
		var err error
		if p[i], err = d.locate(ctx, name, share, 0.5); err != nil {
			return err
		}
	}
	return d.display.sway(ctx, p[0], [2]point(p[1:]), moves, wait, moved)
}

// Press presses keys one after the other: "Tab", "Return", "ctrl+z".
func (d *Driver) Press(ctx context.Context, keys ...string) error {
	return d.act(ctx, keyLine(keys))
}

// Write types a text into whatever has the keyboard.
func (d *Driver) Write(ctx context.Context, text string) error {
	if private(text) {
		d.typed = append(d.typed, text)
	}
	for _, line := range typeLines(text) {
		if err := d.act(ctx, line); err != nil {
			return err
		}
	}
	return nil
}

// Fill clicks a field, replaces what it holds by a text and waits until it
// shows the text.
func (d *Driver) Fill(ctx context.Context, name, text string) error {
	if err := d.Click(ctx, name); err != nil {
		return err
	}
	if err := d.WaitFocus(ctx, name); err != nil {
		return err
	}
	return d.Replace(ctx, name, text)
}

// Replace is Fill for the field that has the keyboard already.
func (d *Driver) Replace(ctx context.Context, name, text string) error {
	if err := d.Press(ctx, "ctrl+a", "BackSpace"); err != nil {
		return err
	}
	if text != "" {
		if err := d.Write(ctx, text); err != nil {
			return err
		}
	}
	return d.WaitText(ctx, name, text)
}

// Sway is [Driver.Sway] at a place of the screen, in pixels, and two others beside it.
func (d *Display) Sway(ctx context.Context, x, y int, to [2]int, moves int, wait time.Duration, moved func() error) error {
	return d.sway(ctx, point{x, y}, [2]point{{to[0], y}, {to[1], y}}, moves, wait, moved)
}

func (d *Display) sway(ctx context.Context, at point, to [2]point, moves int, wait time.Duration, moved func() error) (err error) {
	pause := machineClock().pause
	do := func(line ...string) error {
		_, err := d.xdotool(ctx, line...)
		return errors.Join(err, pause(ctx, wait))
	}
	if err := do(append(moveLine(at), "mousedown", "1")...); err != nil {
		return err
	}
	if err := moved(); err != nil {
		return err
	}
	for i := range moves {
		if err := do(moveLine(to[i%2])...); err != nil {
			return err
		}
	}
	if err := moved(); err != nil {
		return err
	}
	return do(append(moveLine(at), "mouseup", "1")...)
}
