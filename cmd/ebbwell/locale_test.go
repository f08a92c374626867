package main

import (
	"slices"
	"testing"
)

// The environment comes first, in the order of POSIX; LANGUAGE is a list that counts
// before it, but not where no language is wanted.
func TestLocales(t *testing.T) {
	system := func() string { return "fr-FR" }
	for _, c := range []struct {
		env  map[string]string
		want []string
	}{
		{nil, []string{"fr-FR"}},
		{map[string]string{"LANG": "de_AT.UTF-8"}, []string{"de_AT.UTF-8"}},
		{map[string]string{"LANG": "de_AT.UTF-8", "LC_ALL": "es_ES"}, []string{"es_ES"}},
		{map[string]string{"LANG": "de_AT.UTF-8", "LC_MESSAGES": "es_ES"}, []string{"es_ES"}},
		{map[string]string{"LANG": "de_AT.UTF-8", "LANGUAGE": "nl:de"}, []string{"nl", "de", "de_AT.UTF-8"}},
		{map[string]string{"LC_ALL": "C", "LANGUAGE": "nl"}, []string{"C"}},
		{map[string]string{"LANG": "C.UTF-8", "LANGUAGE": "nl"}, []string{"C.UTF-8"}},
	} {
		if got := locales(func(name string) string { return c.env[name] }, system); !slices.Equal(got, c.want) {
			t.Errorf("%v: got %q, want %q", c.env, got, c.want)
		}
	}
}
