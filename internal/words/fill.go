package words

import "strings"

// What is put into a text is looked at and copied, never kept: so a caller's
// arguments stay on its stack. Texts are written anew at every movement of a slider.

// fill puts texts into a text that has as many places (%s) for them; ok is false
// where it has more or fewer, or where something else than a text is put in. The point of
// an abbreviation ends the sentence too ("bis 2. Jan.").
func fill(text string, args []any) (filled string, ok bool) {
	var room [256]byte
	out := room[:0]
	next := 0
	for {
		i := strings.IndexByte(text, '%')
		if i < 0 || i+1 == len(text) {
			break
		}
		out = append(out, text[:i]...)
		if text[i+1] == '%' {
			out = append(out, '%')
		} else {
			if next == len(args) {
				return "", false
			}
			part, is := args[next].(string)
			if !is {
				return "", false
			}
			out = append(out, part...)
			next++
		}
		text = text[i+2:]
		if strings.HasPrefix(text, ".") && len(out) > 0 && out[len(out)-1] == '.' {
			text = text[1:]
		}
	}
	if next != len(args) {
		return "", false
	}
	return string(append(out, text...)), true
}

// copied are the arguments of a text once more: texts and counts, and nothing else.
func (w *Words) copied(args []any) []any {
	list := make([]any, len(args))
	for i, a := range args {
		switch a := a.(type) {
		case string:
			list[i] = a
		case int:
			list[i] = total{w, a}
		default:
			list[i] = "%!(neither text nor count)"
		}
	}
	return list
}
