package saveto

import (
	"os"
	"path/filepath"
	"strings"
	"time"
)

// Newest is the file changed last whose name has an ending, among the folders used last,
// the user's documents and downloads; empty where there is none.
func Newest(ending string) string {
	folders := append(Folders(), Documents())
	if home, err := os.UserHomeDir(); err == nil {
		folders = append(folders, filepath.Join(home, "Downloads"))
	}
	newest, at := "", time.Time{}
	for _, folder := range folders {
		entries, err := os.ReadDir(folder)
		if err != nil {
			continue // a folder that cannot be read offers nothing
		}
		for _, e := range entries {
			info, err := e.Info()
			if err == nil && info.Mode().IsRegular() && strings.HasSuffix(e.Name(), ending) && info.ModTime().After(at) {
				newest, at = filepath.Join(folder, e.Name()), info.ModTime()
			}
		}
	}
	return newest
}
