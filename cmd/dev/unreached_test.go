package main

import (
	"slices"
	"testing"
)

func TestDiffering(t *testing.T) {
	found := lines("a F\n\nb G.H\n")
	fresh, gone := differing(found, lines("# a remark\nb G.H\nc I\n"))
	if !slices.Equal(fresh, []string{"a F"}) || !slices.Equal(gone, []string{"c I"}) {
		t.Errorf("fresh %v, gone %v", fresh, gone)
	}
}
