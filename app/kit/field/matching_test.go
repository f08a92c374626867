package field

import (
	"strings"
	"testing"
)

// What begins with the typed letters comes first, so that two letters and Enter
// take it.
func TestMatchingPutsBeginningsFirst(t *testing.T) {
	var list []Option
	for _, name := range []string{"Josefa Lind", "Lotte Sefton", "Sefa Omber", "Banana", "Fresh banana", "banana bread", "Jürg Ångström"} {
		list = append(list, Option{Text: name})
	}
	for text, want := range map[string]string{
		"Se":       "Sefa Omber|Lotte Sefton|Josefa Lind",
		"banana":   "Banana|banana bread|Fresh banana",
		"fa om":    "Sefa Omber",
		"banana b": "banana bread|Banana|Fresh banana",
		"ang jur":  "Jürg Ångström",
		"":         "Josefa Lind|Lotte Sefton|Sefa Omber|Banana|Fresh banana|banana bread|Jürg Ångström",
		"xyz":      "",
	} {
		var got []string
		for _, o := range Matching(list, text) {
			got = append(got, o.Text)
		}
		if strings.Join(got, "|") != want {
			t.Errorf("%q gives %q, want %q", text, got, want)
		}
	}
}
