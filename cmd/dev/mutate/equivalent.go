package mutate

import (
	"fmt"
	"os"
	"strings"
)

// Equivalents reads the list of mutants that no test can tell from the
// program, with their reasons: a line each, "name | reason".
func Equivalents(file string) (map[string]string, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, fmt.Errorf("read the equivalents: %w", err)
	}
	list := map[string]string{}
	for i, line := range strings.Split(string(data), "\n") {
		if line = strings.TrimSpace(line); line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		name, reason, ok := cutLast(line, " | ")
		if !ok || len(strings.Fields(reason)) < 3 {
			return nil, fmt.Errorf("%s, line %d: want a mutant, a bar and the reason", file, i+1)
		}
		list[name] = reason
	}
	return list, nil
}

func cutLast(s, sep string) (before, after string, ok bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return strings.TrimSpace(s[:i]), strings.TrimSpace(s[i+len(sep):]), true
}
