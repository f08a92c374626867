package shots

import (
	"os"
	"testing"
)

// Every screen can be drawn.
func TestDraw(t *testing.T) {
	dir := os.Getenv("SHOTS_DIR")
	if dir == "" {
		dir = t.TempDir()
	}
	n := 0
	if err := Draw(dir, Everything(), func(string) { n++ }); err != nil {
		t.Fatal(err)
	}
	if n == 0 || n%4 != 0 {
		t.Errorf("drew %d pictures", n)
	}
}
