// Command words says how far the languages are, and what is long in the English
// texts. With -lang de it lists what is missing and wrong in one language, with
// -file planner too in one file only.
package main

import (
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"ebbwell/internal/words"
	"ebbwell/internal/words/reading"
)

func main() {
	lang := flag.String("lang", "", "list what is missing and wrong in this language")
	file := flag.String("file", "", "only in this file: planner")
	flag.Parse()
	name := strings.TrimSuffix(*file, ".json")
	var err error
	if *lang == "" {
		err = tellAll(os.Stdout, name)
	} else {
		err = tell(os.Stdout, *lang, name)
	}
	if err != nil {
		_, _ = fmt.Fprintln(os.Stderr, "words:", err)
		os.Exit(1)
	}
}

// tell writes the report; an error says that a language asked for has faults.
func tell(w io.Writer, lang, file string) error {
	all, err := words.ReviewAll()
	if err != nil {
		return err
	}
	faults := 0
	for _, r := range all {
		if lang != "" && r.Language != lang {
			continue
		}
		keys, done := r.Count()
		state := "being written"
		if r.Ready {
			state = "offered"
		}
		_, _ = fmt.Fprintf(w, "%s: %d of %d texts, %.1f %%, %s\n", r.Language, done, keys, 100*float64(done)/float64(keys), state)
		for _, f := range r.Files {
			if file == "" || strings.TrimSuffix(f.Name, ".json") == file {
				_, _ = fmt.Fprintf(w, "  %-22s %4d of %4d, %d missing, %d wrong\n", f.Name, f.Done, f.Keys, len(f.Missing), len(f.Faults))
				faults += len(f.Faults)
				if lang != "" {
					list(w, "missing", f.Missing, file == "")
					list(w, "wrong", f.Faults, false)
				}
			}
		}
	}
	if lang != "" && faults > 0 {
		return fmt.Errorf("%s: %d wrong", lang, faults)
	}
	return nil
}

// tellAll writes the report of all languages: how hard the pages are to read, the longest
// sentences, and where the terms of the glossaries are from.
func tellAll(w io.Writer, file string) error {
	for _, part := range []func() error{
		func() error { return tell(w, "", file) },
		func() error { return tellReading(w) },
		func() error { return tellLongest(w) },
		func() error { return tellGlossaries(w, filepath.Join("internal", "words")) },
	} {
		if err := part(); err != nil {
			return err
		}
	}
	return nil
}

// tellLongest writes the ten longest sentences of each language.
func tellLongest(w io.Writer) error {
	for _, tag := range words.Written() {
		longest, err := words.Longest(tag, 10)
		if err != nil {
			return err
		}
		_, _ = fmt.Fprintf(w, "%s, the ten longest sentences:\n", tag)
		for _, s := range longest {
			_, _ = fmt.Fprintf(w, "  %3d words  %s: %s\n", s.Words, s.Key, s.Text)
		}
	}
	return nil
}

// tellReading writes how hard the athlete's pages are to read, by language.
func tellReading(w io.Writer) error {
	names := map[words.Paper]string{words.AthletePage: "athlete's page", words.KitBagCard: "kit-bag card"}
	for _, tag := range words.Written() {
		f, ok := reading.FormulaOf(tag.String())
		for _, paper := range []words.Paper{words.AthletePage, words.KitBagCard} {
			texts, err := words.OnPaper(tag, paper)
			if err != nil {
				return err
			}
			m := reading.Of(tag.String(), texts...)
			if !ok || m.Sentences == 0 {
				continue
			}
			_, _ = fmt.Fprintf(w, "%s, %s: %s %.1f, %d sentences of %.1f words, %.2f syllables a word (%s, %s)\n", tag, names[paper], f.Name, f.Value(m),
				m.Sentences, float64(m.Words)/float64(m.Sentences), float64(m.Syllables)/float64(m.Words), f.Source, f.Sure)
		}
	}
	return nil
}

// tellGlossaries writes of how many terms a glossary names a text that has them.
func tellGlossaries(w io.Writer, folder string) error {
	files, err := filepath.Glob(filepath.Join(folder, "*", "glossary.csv"))
	if err != nil {
		return fmt.Errorf("find glossaries: %w", err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			return fmt.Errorf("read glossary: %w", err)
		}
		rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
		if err != nil {
			return fmt.Errorf("read glossary %s: %w", name, err)
		}
		from := map[string]int{}
		for _, row := range rows[1:] {
			if source, sure := row[len(row)-2], row[len(row)-1]; sure == "" {
				from[source]++
			} else {
				from[sure]++
			}
		}
		_, _ = fmt.Fprintf(w, "%s: glossary of %d terms, %d of the trade (%d from a text that was read, %d from one remembered, %d by usage), %d our own\n",
			filepath.Base(filepath.Dir(name)), len(rows)-1, len(rows)-1-from["own term"], from["R"], from["M"], from["usage"], from["own term"])
	}
	return nil
}

// list writes keys; of many only the first, where short is asked for.
func list(w io.Writer, what string, keys []string, short bool) {
	const most = 5
	for i, key := range keys {
		if short && i == most {
			_, _ = fmt.Fprintf(w, "    … and %d more %s; -file shows all\n", len(keys)-most, what)
			return
		}
		_, _ = fmt.Fprintf(w, "    %s: %s\n", what, key)
	}
}
