package main

import (
	"strings"

	"fyne.io/fyne/v2/lang"
)

// locales are the languages the system asks for, best first: those of the environment
// where it names any, as POSIX systems do, else the one the system has set.
func locales(env func(string) string, system func() string) []string {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		set := env(name)
		switch {
		case set == "":
			continue
		case set == "C", set == "POSIX", strings.HasPrefix(set, "C."):
			return []string{set} // no language is wanted
		}
		var list []string
		for one := range strings.SplitSeq(env("LANGUAGE"), ":") {
			if one != "" {
				list = append(list, one)
			}
		}
		return append(list, set)
	}
	return []string{system()}
}

// systemLocale is the language the system has set.
func systemLocale() string { return lang.SystemLocale().String() }
