package drive

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
)

// The steps a script is made of, beside its own.

// Start starts the program.
func Start(extra ...string) Step {
	return Step{strings.TrimSpace("start " + strings.Join(extra, " ")), func(ctx context.Context, d *Driver) error { return d.Start(ctx, extra...) }}
}

// Quit ends the program the friendly way.
func Quit() Step {
	return Step{"quit", func(ctx context.Context, d *Driver) error { return d.Quit(ctx) }}
}

// Kill ends the program in the middle of anything.
func Kill() Step {
	return Step{"kill", func(_ context.Context, d *Driver) error { return d.Kill() }}
}

// Click clicks a control.
func Click(name string) Step {
	return Step{"click " + name, func(ctx context.Context, d *Driver) error { return d.Click(ctx, name) }}
}

// Drag drags along a control from one share of its width to another.
func Drag(name string, from, to float64) Step {
	return Step{fmt.Sprintf("drag %s from %g to %g", name, from, to), func(ctx context.Context, d *Driver) error { return d.Drag(ctx, name, from, to, 20) }}
}

// Fill replaces what a field holds; the field must then show the text.
func Fill(name, text string) Step {
	return Step{fmt.Sprintf("fill %s with %q", name, text), func(ctx context.Context, d *Driver) error { return d.Fill(ctx, name, text) }}
}

// Press presses keys.
func Press(keys ...string) Step {
	return Step{"press " + strings.Join(keys, ", "), func(ctx context.Context, d *Driver) error { return d.Press(ctx, keys...) }}
}

// Write types into whatever has the keyboard.
func Write(text string) Step {
	return Step{fmt.Sprintf("type %q", text), func(ctx context.Context, d *Driver) error { return d.Write(ctx, text) }}
}

// See waits for a control to be there.
func See(name string) Step {
	return Step{"see " + name, func(ctx context.Context, d *Driver) error {
		_, _, err := d.Wait(ctx, name)
		return err
	}}
}

// Gone waits for a control to be gone.
func Gone(name string) Step {
	return Step{name + " is gone", func(ctx context.Context, d *Driver) error { return d.WaitGone(ctx, name) }}
}

// Shows waits for a control to show a text.
func Shows(name, text string) Step {
	return Step{fmt.Sprintf("%s shows %q", name, text), func(ctx context.Context, d *Driver) error { return d.WaitText(ctx, name, text) }}
}

// Focus waits for a control to have the keyboard.
func Focus(name string) Step {
	return Step{name + " has the keyboard", func(ctx context.Context, d *Driver) error { return d.WaitFocus(ctx, name) }}
}

// Shot takes a picture.
func Shot(name string) Step {
	return Step{"picture " + name, func(ctx context.Context, d *Driver) error { return d.Shot(ctx, name) }}
}

// Coloured looks whether a pixel of the window, counted from its left and upper edge, has a
// colour, to be written as "#F5F2EB".
func Coloured(x, y int, colour string) Step {
	return Step{fmt.Sprintf("%d, %d is %s", x, y, colour), func(ctx context.Context, d *Driver) error {
		return d.until(ctx, "the colour", func() error {
			got, err := d.display.colour(ctx, d.window, filepath.Join(d.config.Work, "colour.png"), x, y)
			if err == nil && got != colour {
				err = fmt.Errorf("it is %s", got)
			}
			return err
		})
	}}
}

// Check looks at what the program left in its data folder.
func Check(says string, look func(ctx context.Context, dataDir string) error) Step {
	return Step{"check: " + says, func(ctx context.Context, d *Driver) error { return look(ctx, d.Data()) }}
}

// Sound checks that the program's log has no complaint.
func Sound() Step {
	return Step{"the log has no complaint", func(_ context.Context, d *Driver) error {
		list, err := d.Complaints()
		if err == nil && len(list) > 0 {
			err = fmt.Errorf("the log says: %s", strings.Join(list, "; "))
		}
		return err
	}}
}
