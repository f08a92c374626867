// Package words is the catalogue of every text a person sees, on screen and
// on paper. A text has a key and lives in a JSON file under the language's
// folder, one file per area; it may have plural forms. [New] opens one
// language; a page may be printed in another language than the window's, so a
// [Words] is handed to whatever writes, and there is no current language.
//
// Number formats (decimal sign, true minus), dates and lists come from here
// too. Keys that no catalogue has are shown as they are and reported by
// [Words.Has]; a test walks the source and fails on one.
package words

import (
	"embed"
	"encoding/json"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"sort"
	"strings"
	"sync"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/message/catalog"
)

//go:embed en/*.json es/*.json fr/*.json de/*.json */same.txt
var files embed.FS

// Words writes texts in one language.
type Words struct {
	tag     language.Tag
	printer *message.Printer
	keys    map[string]bool
	// bare are texts that nothing is put into, as they read; plain those that only
	// texts are put into, so that the language's rules for numbers have no part in them.
	bare, plain map[string]string
	// counted are texts with one whole number, by key and number, as they read.
	counted sync.Map
	// options are the names that the program gives to options, in every language.
	options []given
}

// counting is a text with a whole number in it.
type counting struct {
	key string
	n   int
}

// mostCounted is up to which number such texts are kept.
const mostCounted = 999

// count is the text of a key with one whole number put in.
func (w *Words) count(key string, n int) string {
	at := counting{key, n}
	if text, ok := w.counted.Load(at); ok {
		return text.(string)
	}
	text := w.printer.Sprintf(key, n)
	w.counted.Store(at, text)
	return text
}

// entry is one text in a catalogue file: a plain string, or plural forms
// chosen by argument Arg (1 when absent).
type entry struct {
	text  string
	forms map[string]string
	arg   int
}

// UnmarshalJSON reads "text" or {"one": …, "other": …, "arg": 2}.
func (e *entry) UnmarshalJSON(b []byte) error {
	if err := json.Unmarshal(b, &e.text); err == nil {
		return nil
	}
	var raw map[string]any
	if err := json.Unmarshal(b, &raw); err != nil {
		return fmt.Errorf("read plural forms: %w", err)
	}
	e.forms, e.arg = map[string]string{}, 1
	for k, v := range raw {
		switch v := v.(type) {
		case string:
			e.forms[k] = v
		case float64:
			if k != "arg" {
				return fmt.Errorf("read plural forms: number under %q", k)
			}
			e.arg = int(v)
		default:
			return fmt.Errorf("read plural forms: unexpected %T under %q", v, k)
		}
	}
	if e.forms["other"] == "" {
		return fmt.Errorf("read plural forms: no \"other\"")
	}
	return nil
}

// catalogues are those opened so far, by their language: the texts are part of the
// program, and a catalogue is only read.
var catalogues sync.Map //nolint:gochecknoglobals // tables that never change

// opened is a catalogue, or why there is none.
type opened struct {
	once  sync.Once
	words *Words
	err   error
}

// New returns the catalogue of a language, complete or not: what it lacks reads in
// English. It returns an error when the language has none or a file of it cannot be read.
func New(tag language.Tag) (*Words, error) {
	kept, _ := catalogues.LoadOrStore(tag, &opened{})
	o := kept.(*opened)
	o.once.Do(func() {
		var texts map[string]entry
		if texts, o.err = textsOf(tag); o.err == nil {
			o.words, o.err = of(tag, texts)
		}
	})
	return o.words, o.err
}

// of makes the catalogue of a language from its texts.
func of(tag language.Tag, texts map[string]entry) (*Words, error) {
	var err error
	b := catalog.NewBuilder(catalog.Fallback(tag))
	w := &Words{tag: tag, keys: make(map[string]bool, len(texts)), bare: map[string]string{}, plain: map[string]string{}}
	for key, e := range texts {
		w.keys[key] = true
		if e.forms == nil {
			w.sort(key, e.text)
			err = b.SetString(tag, key, e.text)
		} else {
			err = b.Set(tag, key, plural.Selectf(e.arg, "%d", cases(e.forms)...))
		}
		if err != nil {
			return nil, fmt.Errorf("set text %q: %w", key, err)
		}
	}
	w.printer = message.NewPrinter(tag, message.Catalog(b))
	w.options, err = optionsGiven()
	return w, err
}

// sort notes a text that needs no more than texts put in.
func (w *Words) sort(key, text string) {
	rest := strings.ReplaceAll(text, "%%", "")
	switch {
	case !strings.Contains(rest, "%"):
		w.bare[key] = strings.ReplaceAll(text, "%%", "%")
	case strings.Count(rest, "%") == strings.Count(rest, "%s"):
		w.plain[key] = text
	}
}

// cases lists plural forms in a steady order, "=0" and the like first.
func cases(forms map[string]string) []any {
	names := make([]string, 0, len(forms))
	for name := range forms {
		names = append(names, name)
	}
	sort.Slice(names, func(i, j int) bool {
		if (names[i] == "other") != (names[j] == "other") {
			return names[j] == "other"
		}
		return names[i] < names[j]
	})
	var list []any
	for _, name := range names {
		list = append(list, name, forms[name])
	}
	return list
}

// read gathers the texts of one language's files; a key in two files is an error.
func read(lang string) (map[string]entry, error) {
	names, err := fs.Glob(files, path.Join(lang, "*.json"))
	if err != nil || len(names) == 0 {
		return nil, fmt.Errorf("open catalogue %q: no files", lang)
	}
	all := map[string]entry{}
	for _, name := range names {
		data, err := files.ReadFile(name)
		if err != nil {
			return nil, fmt.Errorf("open catalogue: %w", err)
		}
		var texts map[string]entry
		if err := json.Unmarshal(data, &texts); err != nil {
			return nil, fmt.Errorf("read catalogue %s: %w", name, err)
		}
		for key, e := range texts {
			if _, twice := all[key]; twice {
				return nil, fmt.Errorf("read catalogue %s: key %q stands in two files", name, key)
			}
			all[key] = e
		}
	}
	return all, nil
}

// Language returns the language of the texts.
func (w *Words) Language() language.Tag { return w.tag }

// Say returns the text of a key with its arguments put in (%s, %d, %[2]s …).
// Arguments are texts and counts (string and int): numbers with decimals go in as
// text from [Words.Number].
func (w *Words) Say(key string, args ...any) string {
	if len(args) == 0 {
		if text, ok := w.bare[key]; ok {
			return text
		}
	} else if text, ok := w.plain[key]; ok {
		if filled, ok := fill(text, args); ok {
			return filled
		}
	}
	if len(args) == 1 {
		if n, ok := args[0].(int); ok && n >= 0 && n <= mostCounted {
			return w.count(key, n)
		}
	}
	return w.printer.Sprintf(key, w.copied(args)...)
}

// Has reports whether the catalogue knows a key.
func (w *Words) Has(key string) bool { return w.keys[key] }

// Keys lists all keys, sorted.
func (w *Words) Keys() []string {
	list := make([]string, 0, len(w.keys))
	for k := range w.keys {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}
