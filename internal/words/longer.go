package words

import (
	"regexp"
	"strings"
	"unicode"

	"golang.org/x/text/language"
)

// Longer is English with accents and 40 % more letters, to see what is cut or covered
// where words are longer. It goes through the same catalogue; numbers, dates, what is
// put into texts and what the invented practitioner typed stay as they are.
func Longer() (*Words, error) {
	texts, err := textsOf(language.English)
	if err != nil {
		return nil, err
	}
	for key, e := range texts {
		if strings.HasPrefix(key, "format.") || strings.HasPrefix(key, "demo.") || key == "program.name" {
			continue
		}
		e.text = longer(e.text)
		forms := map[string]string{}
		for name, form := range e.forms {
			forms[name] = longer(form)
		}
		if e.forms != nil {
			e.forms = forms
		}
		texts[key] = e
	}
	return of(language.MustParse("en-XA"), texts)
}

// longer makes the words of a text longer; short ones, which units are, and what is put
// in stay, and the next word makes up for it.
func longer(text string) string {
	put := regexp.MustCompile(`%(\[[0-9]+\])?[sd%]|` + labels().String())
	var b strings.Builder
	due, at := 0, 0
	for _, here := range append(put.FindAllStringIndex(text, -1), []int{len(text), len(text)}) {
		b.WriteString(longerWords(text[at:here[0]], &due))
		b.WriteString(text[here[0]:here[1]])
		at = here[1]
	}
	return b.String()
}

// longerWords makes the words of a text longer that nothing is put into; owed is how many
// fifths of a letter are missing to 40 %.
func longerWords(text string, due *int) string {
	accents := strings.NewReplacer("a", "á", "e", "é", "i", "î", "o", "ö", "u", "û", "n", "ñ", "A", "Å", "E", "É", "I", "Î", "O", "Ö", "U", "Û", "C", "Ç")
	word := regexp.MustCompile(`\p{L}+`)
	return word.ReplaceAllStringFunc(text, func(w string) string {
		letters := []rune(w)
		if *due += 2 * len(letters); len(letters) < 3 {
			return w
		}
		more := make([]rune, (*due+2)/5)
		for i := range more {
			more[i] = unicode.ToLower(letters[i%len(letters)])
		}
		*due -= 5 * len(more)
		return accents.Replace(w + string(more))
	})
}
