package shots

import (
	"flag"
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
)

// Asked reads from the arguments of a command what is to be drawn, and where.
func Asked(args []string) (which Which, dir string, err error) {
	which = Everything()
	flags := flag.NewFlagSet("shots", flag.ContinueOnError)
	only := flags.String("only", "", "beginnings of names of screens, with commas")
	size := flags.String("size", "", "sizes of the window, as 1366x768, with commas")
	text := flags.String("text", "", "sizes of text in per cent, with commas")
	theme := flags.String("theme", "", "light or dark; both without")
	flags.StringVar(&which.Language, "lang", which.Language, "language: a tag, or \"long\" for English with longer words")
	if err := flags.Parse(args); err != nil {
		return which, "", err
	}
	if flags.NArg() != 1 {
		return which, "", fmt.Errorf("name one folder for the pictures")
	}
	which.Only = list(*only)
	if *size != "" {
		which.Sizes = nil
	}
	for _, s := range list(*size) {
		var at fyne.Size
		if _, err := fmt.Sscanf(s, "%fx%f", &at.Width, &at.Height); err != nil {
			return which, "", fmt.Errorf("read the size %q: %w", s, err)
		}
		which.Sizes = append(which.Sizes, at)
	}
	if *text != "" {
		which.Percent = nil
	}
	for _, s := range list(*text) {
		n, err := strconv.Atoi(s)
		if err != nil {
			return which, "", fmt.Errorf("read the size of text %q: %w", s, err)
		}
		which.Percent = append(which.Percent, n)
	}
	if *theme != "" {
		which.Dark = []bool{*theme == "dark"}
	}
	return which, flags.Arg(0), nil
}

// list parts a text at its commas.
func list(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, ",")
}
