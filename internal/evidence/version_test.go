package evidence

import (
	"crypto/sha256"
	"fmt"
	"os"
	"strings"
	"testing"
)

// digest is what all entries come to: it changes with every threshold that is added,
// removed or changed.
func digest() string {
	h := sha256.New()
	for _, e := range All() {
		_, _ = fmt.Fprintf(h, "%s %g %s %g %g\n", e.ID, e.Value, e.Unit, e.Valid.Low, e.Valid.High)
	}
	return fmt.Sprintf("%x", h.Sum(nil))[:16]
}

// TestVersionChangesWithTheThresholds: each version has the digest of its entries in
// testdata/versions.txt. Where an entry changed, raise Version and add a line at the
// end; lines of earlier versions stay.
func TestVersionChangesWithTheThresholds(t *testing.T) {
	data, err := os.ReadFile("testdata/versions.txt")
	if err != nil {
		t.Fatal(err)
	}
	seen, last := map[string]string{}, ""
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		version, of, ok := strings.Cut(line, " ")
		if !ok || seen[version] != "" {
			t.Fatalf("line %q: no digest, or the version stands twice", line)
		}
		seen[version], last = of, version
	}
	if last != Version {
		t.Errorf("the last version listed is %s, Version is %s", last, Version)
	}
	if seen[Version] != digest() {
		t.Errorf("the entries come to %s, those of version %s to %s: a threshold changed, so Version has to", digest(), Version, seen[Version])
	}
}
