package fuel

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"ebbwell/assets"
	"ebbwell/internal/evidence"
)

// ErrTable means: a table of products cannot be read.
var ErrTable = errors.New("table of products")

// Catalogue is a list of products in a fixed order, found by id.
type Catalogue struct {
	products []Product
	place    map[string]int
}

// Generic reads the catalogue that comes with the program. Rows of the USDA
// National Nutrient Database carry their number (release 26); generic drinks
// and gels are from memory and meant to be overwritten from the label.
func Generic() (*Catalogue, error) { return ReadCatalogue(bytes.NewReader(assets.Foods())) }

// Products lists the catalogue in its order; the slice is the caller's own.
func (c *Catalogue) Products() []Product { return slices.Clone(c.products) }

// Find returns the product with an id.
func (c *Catalogue) Find(id string) (Product, bool) {
	i, ok := c.place[id]
	if !ok {
		return Product{}, false
	}
	return c.products[i], true
}

// Named is the catalogue with the names of its products, and of their portions, in
// another language. The functions are asked with id and name, and answer with the
// name to show.
func (c *Catalogue) Named(name, portion func(id, otherwise string) string) *Catalogue {
	named := &Catalogue{products: slices.Clone(c.products), place: c.place}
	for i := range named.products {
		p := &named.products[i]
		p.Name, p.Portion.Name = name(p.ID, p.Name), portion(p.ID, p.Portion.Name)
	}
	return named
}

// ReadCatalogue reads a table of products: CSV with a row of column names, in
// any order. Every known column must be there and no other; an empty cell is
// unknown. The error wraps [ErrTable] and names line and column.
func ReadCatalogue(r io.Reader) (*Catalogue, error) {
	rows, err := csv.NewReader(r).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrTable, err)
	}
	if len(rows) < 2 {
		return nil, fmt.Errorf("%w: no rows", ErrTable)
	}
	head, err := columnsOf(rows[0])
	if err != nil {
		return nil, err
	}
	c := &Catalogue{place: make(map[string]int, len(rows))}
	for i, cells := range rows[1:] {
		p, err := readProduct(row{head: head, cells: cells})
		if err != nil {
			return nil, fmt.Errorf("%w: row %d: %w", ErrTable, i+1, err)
		}
		if _, twice := c.place[p.ID]; twice {
			return nil, fmt.Errorf("%w: row %d: id %q stands twice", ErrTable, i+1, p.ID)
		}
		c.place[p.ID] = len(c.products)
		c.products = append(c.products, p)
	}
	return c, nil
}

// textColumns and numberColumns are the columns of the table.
const (
	textColumns   = "id name form sure source number title portion note"
	numberColumns = "portion_g density energy water carbohydrate_total fibre carbohydrate sugars glucose fructose " +
		"sucrose lactose maltose starch maltodextrin sodium_mg potassium_mg osmolality"
)

// columnsOf finds every column of the table by its name.
func columnsOf(names []string) (map[string]int, error) {
	want := strings.Fields(textColumns + " " + numberColumns)
	head := make(map[string]int, len(names))
	for i, name := range names {
		name = strings.TrimPrefix(name, "\ufeff")
		if _, twice := head[name]; twice || !slices.Contains(want, name) {
			return nil, fmt.Errorf("%w: column %q not expected", ErrTable, name)
		}
		head[name] = i
	}
	for _, name := range want {
		if _, ok := head[name]; !ok {
			return nil, fmt.Errorf("%w: column %q missing", ErrTable, name)
		}
	}
	return head, nil
}

// row is one line of the table; the first error stays.
type row struct {
	head  map[string]int
	cells []string
	err   error
}

func (r *row) text(name string) string { return strings.TrimSpace(r.cells[r.head[name]]) }

// number reads a cell; an empty one is unknown.
func (r *row) number(name string) Content {
	s := r.text(name)
	if s == "" {
		return Content{}
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(x) || x < 0 || x > maxFinite {
		if r.err == nil {
			r.err = fmt.Errorf("column %q: %q is not an amount", name, s)
		}
		return Content{}
	}
	return Of(x)
}

// readProduct reads one line.
func readProduct(r row) (Product, error) {
	p := Product{
		ID:      r.text("id"),
		Name:    r.text("name"),
		Form:    Form(r.text("form")),
		Density: r.number("density"),
		Per100:  readComposition(&r),
		Portion: Portion{Name: r.text("portion"), Grams: r.number("portion_g").Value},
		Origin: Origin{
			Source: r.text("source"), Number: r.text("number"), Title: r.text("title"),
			Sure: evidence.Sureness(r.text("sure")), Note: r.text("note"),
		},
	}
	if r.err != nil {
		return Product{}, r.err
	}
	return p, p.Check()
}

func readComposition(r *row) Composition {
	return Composition{
		Water: r.number("water"), Energy: r.number("energy"),
		Carbohydrate: r.number("carbohydrate_total"), Fibre: r.number("fibre"), Available: r.number("carbohydrate"),
		Sugars: Sugars{
			Total: r.number("sugars"), Glucose: r.number("glucose"), Fructose: r.number("fructose"),
			Sucrose: r.number("sucrose"), Lactose: r.number("lactose"), Maltose: r.number("maltose"),
			Starch: r.number("starch"), Maltodextrin: r.number("maltodextrin"),
		},
		Sodium: r.number("sodium_mg"), Potassium: r.number("potassium_mg"), Osmolality: r.number("osmolality"),
	}
}
