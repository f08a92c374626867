package bundle

import (
	"bytes"
	"compress/gzip"
	"io"
	"strings"
	"testing"

	"ebbwell/internal/record"
)

// TestFormOfTheFirstVersion: the lists of records stand beside who sent them, so that
// bundles of the first version, like this one, are read, and read ours.
func TestFormOfTheFirstVersion(t *testing.T) {
	const first = `{"Format":"ebbwell bundle","Version":1,"Program":"1"}
{"From":"Saltmarsh (invented)","By":"Ada","Made":"2026-05-18T12:00:00Z","Athletes":[{"ID":"a1","Name":"Wren"}],` +
		`"Tests":[{"ID":"t1","AthleteID":"a1"}],"Plans":null,"Products":null,"Changes":null,"Frozen":null,"Raw":null}`
	var packed bytes.Buffer
	to := gzip.NewWriter(&packed)
	if _, err := io.WriteString(to, first); err != nil {
		t.Fatal(err)
	}
	if err := to.Close(); err != nil {
		t.Fatal(err)
	}
	b, err := Read(&packed)
	if err != nil || b.From != "Saltmarsh (invented)" || len(b.Athletes) != 1 || b.Athletes[0].Name != "Wren" || len(b.Tests) != 1 {
		t.Fatalf("a bundle of the first version: %v, %+v", err, b)
	}
	var out bytes.Buffer
	if err := Write(&out, Bundle{By: "Ada", Records: Records{Athletes: []record.Athlete{{Name: "Wren"}}}}, "1"); err != nil {
		t.Fatal(err)
	}
	from, err := gzip.NewReader(&out)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(from)
	if err != nil || !strings.Contains(string(text), `,"Athletes":[{`) || strings.Contains(string(text), `"Records"`) {
		t.Errorf("what is written: %v, %s", err, text)
	}
}
