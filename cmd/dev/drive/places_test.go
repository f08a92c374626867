package drive

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
)

const onePlace = `{"size":[1180,760],"controls":[{"name":"roster.new","x":20.5,"y":30,"w":120,"h":30,"focused":true,"text":"New"}],"seq":4}`

func TestParsePlaces(t *testing.T) {
	p, err := ParsePlaces([]byte(onePlace))
	if err != nil {
		t.Fatal(err)
	}
	want := Places{
		Size:     [2]float64{1180, 760},
		Controls: []Control{{Name: "roster.new", X: 20.5, Y: 30, W: 120, H: 30, Focused: true, Text: "New"}},
		Seq:      4,
	}
	if !reflect.DeepEqual(p, want) {
		t.Errorf("got %+v", p)
	}
	if c, ok := p.Find("roster.new"); !ok || c.Text != "New" {
		t.Errorf("found %+v, %t", c, ok)
	}
	if _, ok := p.Find("roster"); ok {
		t.Error("found a control by half its name")
	}
	if c, ok := p.Focused(); !ok || c.Name != "roster.new" {
		t.Errorf("the keyboard is at %+v, %t", c, ok)
	}
	if _, ok := (Places{}).Focused(); ok {
		t.Error("no control, and one has the keyboard")
	}
}

func TestParsePlacesRefuses(t *testing.T) {
	for name, c := range map[string]struct{ json, says string }{
		"half a file":    {onePlace[:40], "unexpected end"},
		"empty":          {"", "unexpected end"},
		"no size":        {`{"controls":[],"seq":1}`, "0 x 0"},
		"no name":        {`{"size":[1,1],"controls":[{"x":1,"w":1,"h":1}]}`, "no name"},
		"one name twice": {`{"size":[1,1],"controls":[{"name":"a"},{"name":"a"}]}`, `"a"`},
		"negative width": {`{"size":[1,1],"controls":[{"name":"a","w":-1}]}`, "no possible place"},
		"word for place": {`{"size":[1,1],"controls":[{"name":"a","x":"left"}]}`, "cannot unmarshal string"},
		"endless":        {`{"size":[1,1],"controls":[{"name":"a","x":1.7e308,"y":1.7e308}]}`, "no possible place"},
	} {
		p, err := ParsePlaces([]byte(c.json))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: got %v, want an error about %q", name, err, c.says)
		}
		if !reflect.DeepEqual(p, Places{}) {
			t.Errorf("%s: something half-made came with the error: %+v", name, p)
		}
	}
}

func FuzzParsePlaces(f *testing.F) {
	f.Add([]byte(onePlace))
	f.Add([]byte(`{"size":[1,1],"controls":[{"name":"a"},{"name":"b"}],"seq":-1}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := ParsePlaces(data)
		if err != nil {
			if len(p.Controls) > 0 {
				t.Error("something half-made came with the error")
			}
			return
		}
		again, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		if q, err := ParsePlaces(again); err != nil || !reflect.DeepEqual(p, q) {
			t.Errorf("written and read again: %v\n%+v\n%+v", err, p, q)
		}
	})
}
