package field

// Option is one of several to choose from.
type Option struct {
	// Key is what is kept, Text what is read.
	Key, Text string
	// Note stands beside the text in a list, in note style.
	Note string
}

// chosenOf is the option that is chosen; none for a place that is not there.
func chosenOf(options []Option, at int) Option {
	if at < 0 || at >= len(options) {
		return Option{}
	}
	return options[at]
}

// optionAt is the place of a key, -1 when it is not there.
func optionAt(options []Option, key string) int {
	for i, o := range options {
		if o.Key == key {
			return i
		}
	}
	return -1
}
