package app

import "strings"

// facts stand behind the title of a screen, parts with dots between them.
type facts struct{ full, short string }

// less leaves the last parts of some facts out, so many of them, and keeps the first:
// a part is said whole or not at all.
func less(text string, parts int) string {
	const between = " · "
	list := strings.Split(text, between)
	return strings.Join(list[:max(1, len(list)-parts)], between)
}
