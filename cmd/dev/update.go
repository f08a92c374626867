package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// updatable lists the packages whose tests know the flag -update: given to
// any other, the flag is an error. A test knows it when it defines the flag.
func updatable(root string) ([]string, error) {
	var packages []string
	err := walkGo(root, func(file string) error {
		if !strings.HasSuffix(file, "_test.go") {
			return nil
		}
		data, err := os.ReadFile(filepath.Join(root, file))
		if err != nil {
			return fmt.Errorf("read test: %w", err)
		}
		if name := "./" + path.Dir(file); bytes.Contains(data, []byte(`flag.Bool("update"`)) && !slices.Contains(packages, name) {
			packages = append(packages, name)
		}
		return nil
	})
	if err == nil && len(packages) == 0 {
		err = errors.New("no test defines the flag -update")
	}
	return packages, err
}
