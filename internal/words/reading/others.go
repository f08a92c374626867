package reading

import "strings"

// spanish counts the syllables of a Spanish word: each strong vowel, or weak one with an
// accent, is a syllable; weak ones join it, and a run of weak ones alone is one. The u of
// que, qui, gue and gui is silent, and a y at the end is a weak vowel.
func spanish(word string) int {
	const strong, weak = "aeoáéóíú", "iuü"
	for _, silent := range []string{"que", "qui", "gue", "gui", "qué", "quí", "gué", "guí"} {
		word = strings.ReplaceAll(word, silent, silent[:1]+silent[2:])
	}
	n, alone := 0, false // alone: weak vowels that have met no strong one yet
	met := false
	letters := []rune(word)
	for i, r := range letters {
		switch {
		case strings.ContainsRune(strong, r):
			n++
			alone, met = false, true
		case strings.ContainsRune(weak, r), r == 'y' && i == len(letters)-1:
			alone = alone || !met
		default:
			if alone {
				n++
			}
			alone, met = false, false
		}
	}
	if alone {
		n++
	}
	return max(n, 1)
}

// french counts the syllables of a French word as it is spoken: runs of vowels, parted
// behind an é and at a diaeresis, without a mute e at the end.
func french(word string) int {
	const vowels = "aeiouyàâäéèêëîïôöùûüœæ"
	n := 0
	before := rune(0)
	for _, r := range word {
		if strings.ContainsRune(vowels, r) {
			in := strings.ContainsRune(vowels, before)
			if !in || before == 'é' && r != 'e' || r == 'ï' || r == 'ë' {
				n++
			}
		}
		before = r
	}
	for _, mute := range []string{"e", "es"} {
		stem, ok := strings.CutSuffix(word, mute)
		if last := []rune(stem); ok && n > 1 && len(last) > 0 && !strings.ContainsRune(vowels, last[len(last)-1]) {
			return n - 1
		}
		if strings.HasSuffix(stem, "qu") || strings.HasSuffix(stem, "gu") {
			return max(n-1, 1)
		}
	}
	return max(n, 1)
}

// german counts the syllables of a German word: each vowel, where ei, ai, ie, au, eu, äu
// and doubled vowels are one and the u of qu is none.
func german(word string) int {
	const vowels = "aeiouyäöüé"
	n := 0
	letters := []rune(strings.ReplaceAll(word, "qu", "q"))
	for i := 0; i < len(letters); i++ {
		if !strings.ContainsRune(vowels, letters[i]) {
			continue
		}
		n++
		if i+1 < len(letters) && strings.Contains("ei ai ie au eu äu aa ee oo", string(letters[i:i+2])) && letters[i+1] != ' ' {
			i++
		}
	}
	return max(n, 1)
}
