package reading

import "strings"

// english counts the syllables of an English word by its spelling: groups of vowels,
// less those that are silent, more those that are two. What spelling does not tell is in
// a list. The word is in small letters.
func english(word string) int {
	if n, ok := irregular()[word]; ok {
		return n
	}
	n := groups(word, "aeiouy") - silentEnd(word) + hiatus(word)
	for _, end := range []string{"ly", "ment", "ments", "less", "ful", "fully", "ness"} {
		if stem, ok := strings.CutSuffix(word, end); ok && silentE(stem) {
			n--
		}
	}
	return max(n, 1)
}

// groups counts the runs of vowels.
func groups(word, vowels string) int {
	n, in := 0, false
	for _, r := range word {
		is := strings.ContainsRune(vowels, r)
		if is && !in {
			n++
		}
		in = is
	}
	return n
}

// vowel reports whether the letter at a place is a vowel; there is none outside.
func vowel(word string, at int) bool {
	return at >= 0 && at < len(word) && strings.IndexByte("aeiouy", word[at]) >= 0
}

// silentE reports whether a stem ends in an e behind a consonant.
func silentE(stem string) bool {
	return strings.HasSuffix(stem, "e") && len(stem) > 1 && !vowel(stem, len(stem)-2)
}

// silentEnd is 1 where the last group of vowels is not spoken: "make", "makes", "looked".
func silentEnd(word string) int {
	switch {
	case silentE(word) && !syllabic(word, "le"):
		return 1
	case strings.HasSuffix(word, "es") && silentE(word[:len(word)-1]) && !syllabic(word, "les"):
		for _, hiss := range []string{"s", "x", "z", "ch", "sh", "c", "g"} {
			if strings.HasSuffix(word[:len(word)-2], hiss) {
				return 0
			}
		}
		return 1
	case strings.HasSuffix(word, "ed") && len(word) > 3 && !vowel(word, len(word)-3) && !syllabic(word, "led"):
		if strings.HasSuffix(word, "ted") || strings.HasSuffix(word, "ded") {
			return 0
		}
		return 1
	}
	return 0
}

// syllabic reports whether a word ends in an l that is a syllable: "little", "bottles".
func syllabic(word, end string) bool {
	stem, ok := strings.CutSuffix(word, end)
	at := len(stem) - 1
	return ok && at >= 0 && !vowel(stem, at) && stem[at] != 'l' && stem[at] != 'r'
}

// hiatus counts neighbouring vowels that are two syllables: "medium", "react", "drying".
func hiatus(word string) int {
	n := 0
	for i := range len(word) - 1 {
		if !vowel(word, i) || !vowel(word, i+1) {
			continue
		}
		if apart(word, i) {
			n++
		}
	}
	return n
}

// apart reports whether the vowels at a place and behind it belong to two syllables.
func apart(word string, i int) bool {
	before, behind := byte(0), byte(0)
	if i > 0 {
		before = word[i-1]
	}
	if i+2 < len(word) {
		behind = word[i+2]
	}
	soft := before == 't' || before == 's' || before == 'c' || before == 'g'
	switch word[i : i+2] {
	case "ia":
		return !soft
	case "io":
		return !soft && before != 'x' && behind != 'u'
	case "iu":
		return true
	case "eo":
		return behind != 'p' && behind != 'u'
	case "ua":
		return before != 'g' && before != 'q' && behind != 'r'
	case "ie":
		return word[i:] == "ier" || behind == 'n' && i+3 < len(word) && (word[i+3] == 'c' || word[i+3] == 't')
	case "ai", "ei", "oi", "ui", "yi":
		return strings.HasPrefix(word[i+1:], "ing") && i > 0
	case "ya", "ye", "yo", "yu":
		return i > 0 && word[i:] != "yed"
	case "uo":
		return strings.HasPrefix(word[i:], "uou")
	}
	return false
}
