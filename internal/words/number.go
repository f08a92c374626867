package words

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"

	"ebbwell/internal/quantity"
)

// Number writes x with a fixed number of decimals, the language's decimal sign
// and a true minus. Thousands are grouped from 10,000 on, with the language's sign;
// counts that are put into texts read the same.
func (w *Words) Number(x float64, decimals int) string {
	return w.write(x, decimals, "", "")
}

// Typed is Number as it stands in a field, without groups: one comma or one point marks
// the decimal when it is read again ([quantity.Parse]).
func (w *Words) Typed(x float64, decimals int) string {
	return strings.ReplaceAll(w.Number(x, decimals), w.Say("format.thousands"), "")
}

// NumberIn is Number with a unit behind it, which may be empty.
func (w *Words) NumberIn(x float64, decimals int, unit string) string {
	return w.write(x, decimals, "", unit)
}

// SignedIn is Signed with a unit behind it, which may be empty.
func (w *Words) SignedIn(x float64, decimals int, unit string) string {
	if quantity.Round(x, decimals) > 0 {
		return w.write(x, decimals, "+", unit)
	}
	return w.write(x, decimals, "", unit)
}

// write puts a number together in one piece: figures are written anew at every
// movement of a slider.
func (w *Words) write(x float64, decimals int, before, unit string) string {
	var digits [40]byte
	var room [96]byte
	text := append(room[:0], before...)
	sign := w.Say("format.decimal")
	written := strconv.AppendFloat(digits[:0], quantity.Round(x, decimals), 'f', max(decimals, 0), 64)
	left := whole(written)
	grouped := left >= groupedFrom
	for _, b := range written {
		if b != '-' && left > 0 {
			if grouped && left%3 == 0 && len(text) > len(before) && text[len(text)-1] >= '0' && text[len(text)-1] <= '9' {
				text = append(text, w.Say("format.thousands")...)
			}
			left--
		}
		switch b {
		case '.':
			text = append(text, sign...)
		case '-':
			text = append(text, "−"...)
		default:
			text = append(text, b)
		}
	}
	if unit != "" {
		text = append(append(text, "\u00a0"...), unit...)
	}
	return string(text)
}

// groupedFrom is how many digits before the decimal sign are grouped by thousands, in
// every language: Spanish never groups four (CLDR, minimumGroupingDigits 2), medical
// writing closes them up (AMA Manual of Style, 11th ed., 17.4.3), and "1.100" or "1,100"
// typed as it was read would be taken for 1.1.
const groupedFrom = 5

// total is a count as it stands in a text, where the toolkit of languages would group it
// by another rule.
type total struct {
	w *Words
	n int
}

// Format writes the count, whatever the place in the text asks for.
func (c total) Format(s fmt.State, _ rune) { _, _ = io.WriteString(s, c.w.Number(float64(c.n), 0)) }

// PluralForm is the form that the count takes in a language.
func (c total) PluralForm(t language.Tag, _ int) (plural.Form, int) {
	n := max(c.n, -c.n)
	return plural.Cardinal.MatchPlural(t, n, 0, 0, 0, 0), n
}

// whole is how many digits of a number stand before its decimal point.
func whole(written []byte) int {
	n := 0
	for _, b := range written {
		if b == '.' {
			break
		}
		if b != '-' {
			n++
		}
	}
	return n
}

// Signed is Number with a plus before what is above zero.
func (w *Words) Signed(x float64, decimals int) string {
	return w.SignedIn(x, decimals, "")
}

// Amount writes a number with the decimals usual for its unit, and the unit.
func (w *Words) Amount(x float64, u quantity.Unit) string {
	s := w.Number(x, quantity.Decimals(u))
	if u == quantity.None {
		return s
	}
	return s + "\u00a0" + string(u)
}

// Between writes a range: "1.29–1.43"; ends that read alike are written once.
func (w *Words) Between(r quantity.Range, decimals int) string {
	low, high := w.Number(r.Low, decimals), w.Number(r.High, decimals)
	if low == high {
		return low
	}
	return low + "–" + high
}

// Half writes a number of portions in halves: "½", "1", "2½"; other numbers
// with one decimal.
func (w *Words) Half(x float64) string {
	whole := int(x)
	switch {
	case x == float64(whole):
		return strconv.Itoa(whole)
	case x == 0.5:
		return "½"
	case x == float64(whole)+0.5:
		return strconv.Itoa(whole) + "½"
	}
	return w.Number(x, 1)
}

// Day writes day and month: "14 May".
func (w *Words) Day(t time.Time) string {
	return w.Say("format.day", w.dayOfMonth(t), w.Say("month."+strconv.Itoa(int(t.Month()))))
}

// ShortDay writes day and month as in a table: "14 Oct".
func (w *Words) ShortDay(t time.Time) string {
	return w.Say("format.day.short", w.dayOfMonth(t), w.ShortMonth(t.Month()))
}

// ShortMonth writes a month as in a table: "Oct".
func (w *Words) ShortMonth(m time.Month) string { return w.Say("month.short." + strconv.Itoa(int(m))) }

// Date writes day, month and year: "14 May 2026".
func (w *Words) Date(t time.Time) string {
	return w.Say("format.date", w.dayOfMonth(t), w.Say("month."+strconv.Itoa(int(t.Month()))), strconv.Itoa(t.Year()))
}

// ShortDate writes a day as in a table: with its year only where that is not today's.
func (w *Words) ShortDate(t, today time.Time) string {
	if t.Year() == today.Year() {
		return w.ShortDay(t)
	}
	return w.Say("format.date.short", w.dayOfMonth(t), w.ShortMonth(t.Month()), strconv.Itoa(t.Year()))
}

// Clock writes a time of day: "09:05".
func (w *Words) Clock(t time.Time) string { return t.Format("15:04") }

// Commas joins the items of a list that is no sentence: "a, b, c".
func (w *Words) Commas(parts []string) string { return strings.Join(parts, w.Say("format.comma")) }

// Dots joins facts that stand side by side: "a · b".
func (w *Words) Dots(parts []string) string { return strings.Join(parts, w.Say("format.dot")) }

// Semicolons joins parts that have commas of their own: "a; b".
func (w *Words) Semicolons(parts []string) string {
	return strings.Join(parts, w.Say("format.semicolon"))
}

// Plus joins amounts that are added: "0.45 + 0.35".
func (w *Words) Plus(parts []string) string { return strings.Join(parts, w.Say("format.plus")) }

// List joins texts as a sentence does: "a", "a and b", "a, b and c".
func (w *Words) List(parts []string) string {
	switch len(parts) {
	case 0:
		return ""
	case 1:
		return parts[0]
	}
	last := len(parts) - 1
	and := "format.and"
	if soundsLikeAnd(parts[last]) {
		and = "format.and.vowel"
	}
	return w.Say(and, w.Commas(parts[:last]), parts[last])
}

// soundsLikeAnd reports whether a word begins with the sound of Spanish "y", which
// then reads "e": "sodio e hidratos", not before "hie" (hielo). Languages without
// the rule have one text for both.
func soundsLikeAnd(text string) bool {
	s := strings.ToLower(text)
	if strings.HasPrefix(s, "hie") || strings.HasPrefix(s, "ie") {
		return false
	}
	return strings.HasPrefix(s, "i") || strings.HasPrefix(s, "hi") || strings.HasPrefix(s, "í") || strings.HasPrefix(s, "hí")
}

// dayOfMonth is the number of a day; the first may read otherwise ("1er").
func (w *Words) dayOfMonth(t time.Time) string {
	if t.Day() == 1 {
		return w.Say("format.first")
	}
	return strconv.Itoa(t.Day())
}
