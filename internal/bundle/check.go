package bundle

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"reflect"
	"time"

	"ebbwell/internal/record"
)

// mostText is the longest text of a bundle, in bytes.
const mostText = 1 << 20

// errStray means: something belongs to a record that is not in the bundle.
var errStray = errors.New("it belongs to a record that is not there")

// check sees that a bundle hangs together: every id there and once, every row in what
// it says it is in, every number finite, nothing about records of others.
func (b Bundle) check() error {
	c := checker{rows: map[record.ID]bool{}, of: map[record.Ref]bool{}}
	for i := range b.Athletes {
		c.record(record.KindAthlete, "", &b.Athletes[i])
	}
	for i := range b.Tests {
		c.record(record.KindTest, b.Tests[i].AthleteID, &b.Tests[i])
	}
	for i := range b.Plans {
		c.record(record.KindPlan, b.Plans[i].AthleteID, &b.Plans[i])
	}
	for i := range b.Products {
		c.record(record.KindProduct, "", &b.Products[i])
	}
	for _, p := range b.Plans {
		if t := p.Basis.TestID; t != "" && !c.of[record.Ref{Kind: record.KindTest, ID: t}] {
			c.fail(errStray)
		}
	}
	seen := map[record.ID]bool{}
	beside := func(id record.ID, ref record.Ref, texts ...string) {
		if id != "" && (seen[id] || len(id) > mostID) {
			c.fail(errors.New("an id is not one"))
		}
		seen[id] = true
		if !c.of[ref] {
			c.fail(errStray)
		}
		for _, t := range texts {
			c.text(t)
		}
	}
	for _, x := range b.Changes {
		beside(x.ID, record.Ref{Kind: x.Kind, ID: x.Record}, x.Field, x.Before, x.After, x.Why)
	}
	for _, x := range b.Frozen {
		beside(x.ID, record.Ref{Kind: x.Kind, ID: x.Record}, x.Why)
	}
	for _, x := range b.Raw {
		beside("", record.Ref{Kind: x.Kind, ID: x.Record}, x.Field, x.Text)
	}
	for _, x := range b.Prints {
		beside(x.ID, record.Ref{Kind: record.KindAthlete, ID: x.AthleteID}, x.Page, x.Language)
		if x.ID == "" || !bytes.HasPrefix(x.Bytes, []byte("%PDF-")) {
			c.fail(errors.New("a page has no id, or is none"))
		}
	}
	return c.err
}

// mostID is the longest id that can be kept.
const mostID = 36

// checker is such a look on its way; err is the first thing that was wrong.
type checker struct {
	rows map[record.ID]bool
	of   map[record.Ref]bool
	err  error
}

func (c *checker) fail(err error) {
	if c.err == nil {
		c.err = err
	}
}

// text looks at one text.
func (c *checker) text(s string) {
	if len(s) > mostText {
		c.fail(errors.New("a text is too long"))
	}
}

// record looks at one record; of is the athlete whose it is, empty for none.
func (c *checker) record(kind record.Kind, of record.ID, root any) {
	v := reflect.ValueOf(root).Elem()
	c.row(v)
	if of != "" && !c.of[record.Ref{Kind: record.KindAthlete, ID: of}] || of == "" && (kind == record.KindTest || kind == record.KindPlan) {
		c.fail(errStray)
	}
	c.of[record.Ref{Kind: kind, ID: metaOf(v).ID}] = true
}

// row looks at one row and those in it.
func (c *checker) row(v reflect.Value) {
	m := metaOf(v)
	switch {
	case m.ID == "" || len(m.ID) > mostID || c.rows[m.ID]:
		c.fail(fmt.Errorf("the id %q is none, or comes twice", m.ID))
	case m.Deleted():
		c.fail(errors.New("a row was deleted"))
	}
	c.rows[m.ID] = true
	eachLeaf(v, "", func(_ string, leaf reflect.Value, _ reflect.StructField) { c.leaf(leaf) })
	eachList(v, func(l list) {
		for i := range l.rows.Len() {
			row := l.rows.Index(i)
			if row.FieldByIndex(l.parent).String() != string(m.ID) {
				c.fail(errStray)
			}
			c.row(row)
		}
	})
}

// leaf looks at one value.
func (c *checker) leaf(v reflect.Value) {
	switch x := v.Interface().(type) {
	case record.Number:
		if x.Value != nil && (math.IsNaN(*x.Value) || math.IsInf(*x.Value, 0)) {
			c.fail(errors.New("a number is not finite"))
		}
	case record.Date:
		if _, ok := x.Time(); !ok && x != "" {
			c.fail(fmt.Errorf("%q is no day", x))
		}
	case record.Clock:
		if _, ok := x.Minutes(); !ok && x != "" {
			c.fail(fmt.Errorf("%q is no time of day", x))
		}
	case *time.Time:
		if x != nil && (x.Year() < 1900 || x.Year() > 9999) {
			c.fail(errors.New("a time is none"))
		}
	default:
		if v.Kind() == reflect.String {
			c.text(v.String())
		}
	}
}
