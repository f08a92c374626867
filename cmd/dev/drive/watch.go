package drive

import (
	"context"
	"errors"
	"fmt"
	"time"
)

// until tries again and again until a try succeeds. It gives up when the
// program has ended, or when patience has: then it tells the last try's error.
func (d *Driver) until(ctx context.Context, what string, try func() error) error {
	deadline := d.clock.now().Add(d.config.Patience)
	for {
		running := d.program != nil && d.program.running()
		err := try()
		switch {
		case err == nil:
			return nil
		case !running:
			return fmt.Errorf("wait for %s: the program has ended: %w", what, errors.Join(d.endError(), err))
		case d.clock.now().After(deadline):
			return fmt.Errorf("wait for %s, %s long: %w", what, d.config.Patience, err)
		}
		if err := d.clock.pause(ctx, readEvery); err != nil {
			return fmt.Errorf("wait for %s: %w", what, err)
		}
	}
}

// endError is how the program ended; nil when well or not at all.
func (d *Driver) endError() error {
	if d.program == nil || d.program.running() {
		return nil
	}
	return d.program.err
}

// Until waits for the places to be as a check wants them.
func (d *Driver) Until(ctx context.Context, what string, check func(Places) error) error {
	return d.until(ctx, what, func() error {
		p, err := readPlaces(d.placesFile())
		if err != nil {
			return err
		}
		return check(p)
	})
}

// Wait waits for a control to be there and to stay where it is, and returns it
// with the window's size.
func (d *Driver) Wait(ctx context.Context, name string) (Control, [2]float64, error) {
	var last Control
	var size [2]float64
	var since time.Time
	err := d.Until(ctx, name, func(p Places) error {
		c, ok := p.Find(name)
		if !ok {
			since = time.Time{}
			return fmt.Errorf("it is not there; there are: %s", p.names())
		}
		if moved := c.X != last.X || c.Y != last.Y || c.W != last.W || c.H != last.H || p.Size != size; moved || since.IsZero() {
			last, size, since = c, p.Size, d.clock.now()
		}
		if d.clock.now().Sub(since) < settle {
			return errors.New("it has not come to rest")
		}
		last = c
		return nil
	})
	return last, size, err
}

// WaitText waits for a control to show a text.
func (d *Driver) WaitText(ctx context.Context, name, text string) error {
	return d.Until(ctx, fmt.Sprintf("%s to show %q", name, text), func(p Places) error {
		c, ok := p.Find(name)
		switch {
		case !ok:
			return fmt.Errorf("it is not there; there are: %s", p.names())
		case c.Text != text:
			return fmt.Errorf("it shows %q", c.Text)
		}
		return nil
	})
}

// WaitFocus waits for a control to have the keyboard.
func (d *Driver) WaitFocus(ctx context.Context, name string) error {
	return d.Until(ctx, name+" to have the keyboard", func(p Places) error {
		c, ok := p.Focused()
		switch {
		case !ok:
			return errors.New("nothing has it")
		case c.Name != name:
			return fmt.Errorf("%s has it", c.Name)
		}
		return nil
	})
}

// WaitGone waits for a control to be gone.
func (d *Driver) WaitGone(ctx context.Context, name string) error {
	return d.Until(ctx, name+" to go", func(p Places) error {
		if _, ok := p.Find(name); ok {
			return errors.New("it is still there")
		}
		return nil
	})
}
