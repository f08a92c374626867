package words

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/text/language"
)

// Review is how far a language is, against the English texts.
type Review struct {
	// Language is the tag: "de".
	Language string
	// Ready: the language is offered, and must be complete.
	Ready bool
	// Files by name, in order.
	Files []FileReview
}

// FileReview is how far one file of a language is.
type FileReview struct {
	// Name of the file: "planner.json".
	Name string
	// Keys are those of the English file; Done those of them that are translated.
	Keys, Done int
	// Missing lists keys that the file lacks; Faults what is wrong with those it has.
	Missing, Faults []string
}

// Count adds up the keys of all files, and those that are translated without a fault.
func (r Review) Count() (keys, done int) {
	for _, f := range r.Files {
		keys, done = keys+f.Keys, done+f.Done
	}
	return keys, done
}

// ReviewAll holds every language but English against the English texts.
func ReviewAll() ([]Review, error) {
	english, err := byFile(files, language.English.String())
	if err != nil {
		return nil, err
	}
	var list []Review
	for _, l := range spokenList()[1:] {
		own, err := byFile(files, l.tag.String())
		if err != nil {
			return nil, err
		}
		same, err := sameIn(files, l.tag.String())
		if err != nil {
			return nil, err
		}
		r := review(english, own, same)
		r.Language, r.Ready = l.tag.String(), l.ready
		list = append(list, r)
	}
	return list, nil
}

// byFile reads the files of a language, each by itself.
func byFile(from fs.FS, lang string) (map[string]map[string]entry, error) {
	names, err := fs.Glob(from, path.Join(lang, "*.json"))
	if err != nil {
		return nil, fmt.Errorf("list catalogue %q: %w", lang, err)
	}
	all := map[string]map[string]entry{}
	for _, name := range names {
		data, err := fs.ReadFile(from, name)
		if err != nil {
			return nil, fmt.Errorf("open catalogue: %w", err)
		}
		var texts map[string]entry
		if err := json.Unmarshal(data, &texts); err != nil {
			return nil, fmt.Errorf("read catalogue %s: %w", name, err)
		}
		all[path.Base(name)] = texts
	}
	return all, nil
}

// sameIn lists the keys whose text rightly reads as in English: a line each in same.txt.
func sameIn(from fs.FS, lang string) (map[string]bool, error) {
	data, err := fs.ReadFile(from, path.Join(lang, "same.txt"))
	if err != nil {
		return nil, fmt.Errorf("read the words that are the same: %w", err)
	}
	same := map[string]bool{}
	for line := range strings.Lines(string(data)) {
		if key := strings.TrimSpace(line); key != "" && !strings.HasPrefix(key, "#") {
			same[key] = true
		}
	}
	return same, nil
}

// review holds the files of a language against the English ones.
func review(english, own map[string]map[string]entry, same map[string]bool) Review { //nolint:gocognit // one question after the other
	var r Review
	used := map[string]bool{}
	for _, name := range slices.Sorted(maps.Keys(english)) {
		f := FileReview{Name: name, Keys: len(english[name])}
		for _, key := range slices.Sorted(maps.Keys(english[name])) {
			theirs, ok := own[name][key]
			if !ok {
				f.Missing = append(f.Missing, key)
				continue
			}
			fault := faultOf(english[name][key], theirs)
			if fault == "" && !isName(key) && untranslated(english[name][key], theirs) {
				if used[key] = same[key]; !same[key] {
					fault = "reads as in English; translate it, or list the key in same.txt"
				}
			}
			if fault == "" {
				f.Done++
				continue
			}
			f.Faults = append(f.Faults, key+": "+fault)
		}
		for _, key := range slices.Sorted(maps.Keys(own[name])) {
			if _, ok := english[name][key]; !ok {
				f.Faults = append(f.Faults, key+": is not in the English file of this name")
			}
		}
		r.Files = append(r.Files, f)
	}
	for _, name := range slices.Sorted(maps.Keys(own)) {
		if english[name] == nil {
			r.Files = append(r.Files, FileReview{Name: name, Faults: []string{"the file: English has none of this name"}})
		}
	}
	if stale := staleOf(same, used); len(stale) > 0 {
		r.Files = append(r.Files, FileReview{Name: "same.txt", Faults: stale})
	}
	return r
}

// isName reports whether a text is the name of a place, which often is the same.
func isName(key string) bool {
	return strings.HasPrefix(key, "city.") || strings.HasPrefix(key, "country.")
}

// staleOf lists the keys of same.txt whose text is not the same, or not there.
func staleOf(same, used map[string]bool) []string {
	var list []string
	for _, key := range slices.Sorted(maps.Keys(same)) {
		if !used[key] {
			list = append(list, key+": does not read as in English; take it off same.txt")
		}
	}
	return list
}

// faultOf says what is wrong with a translation; empty when nothing is.
func faultOf(english, own entry) string {
	if mine, theirs := argsOf(english), argsOf(own); !slices.Equal(mine, theirs) {
		return fmt.Sprintf("has the arguments %v, in English %v", theirs, mine)
	}
	switch {
	case english.forms == nil && own.forms != nil:
		return "has plural forms, in English it has none"
	case english.forms != nil && own.forms == nil:
		return "has no plural forms, in English it has"
	case english.forms == nil:
		if strings.Trim(own.text, " \t\n") == "" && english.text != "" { // a narrow space is a text: it parts thousands
			return "is empty"
		}
		return ""
	case english.arg != own.arg:
		return fmt.Sprintf("chooses the form by argument %d, in English by %d", own.arg, english.arg)
	}
	exact := regexp.MustCompile(`^=\d+$`)
	for _, form := range slices.Sorted(maps.Keys(own.forms)) {
		if !exact.MatchString(form) && !slices.Contains([]string{"one", "many", "other"}, form) {
			return fmt.Sprintf("has the form %q; there are one, many, other and =0, =1 …", form)
		}
	}
	if _, needs := english.forms["one"]; needs && own.forms["one"] == "" && own.forms["=1"] == "" {
		return "lacks the form \"one\""
	}
	return ""
}

// argsOf lists the arguments that a text puts in, by number, each with its kind:
// "1s", "2d". Of plural forms it is what any of them puts in.
func argsOf(e entry) []string {
	found := map[string]bool{}
	for _, text := range e.all() {
		for _, a := range arguments(text) {
			found[strconv.Itoa(a.number)+a.kind] = true
		}
	}
	return slices.Sorted(maps.Keys(found))
}

// argument is a place of a text where something is put in: which of what it is
// handed, from 1, and how it is written ("s", "d").
type argument struct {
	number int
	kind   string
}

// arguments are the places of a text, in their order: %s counts on, %[3]s is the
// third.
func arguments(text string) []argument {
	var list []argument
	next := 0
	for _, m := range verbs().FindAllStringSubmatch(text, -1) {
		switch {
		case m[0] == "%%":
			continue
		case m[1] != "":
			next, _ = strconv.Atoi(m[1])
		default:
			next++
		}
		list = append(list, argument{next, m[0][len(m[0])-1:]})
	}
	return list
}

// verbs finds what is put into a text: %s, %d, %[2]s; and %%, which is a sign.
func verbs() *regexp.Regexp {
	return regexp.MustCompile(`%(?:%|[-+# 0]*(?:\[(\d+)\])?[-+# 0-9.]*[a-zA-Z])`)
}

// all lists the forms of a text.
func (e entry) all() []string {
	if e.forms == nil {
		return []string{e.text}
	}
	return slices.Collect(maps.Values(e.forms))
}

// untranslated reports whether a text with a word in it reads as in English.
func untranslated(english, own entry) bool {
	word := regexp.MustCompile(`\pL{2}`)
	if english.text != own.text || !maps.Equal(english.forms, own.forms) {
		return false
	}
	return slices.ContainsFunc(own.all(), func(text string) bool {
		return word.MatchString(labels().ReplaceAllString(verbs().ReplaceAllString(text, ""), ""))
	})
}
