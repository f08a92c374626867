package climate

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ebbwell/assets"
	"ebbwell/internal/plain"
	"ebbwell/internal/quantity"
)

// months of a year.
const months = 12

// Place is a place of the climate table.
type Place struct {
	Name, Country string
	// also and alsoCountry are how another language calls them; see [Places.Named].
	also, alsoCountry string
	// Latitude and Longitude in degrees, north and east positive.
	Latitude, Longitude float64
	Elevation           quantity.Metres
	// Grade is how complete the station's record is: A, B or C, best first.
	Grade  string
	Months [months]Month
}

// Month is the climate of one month: averages of raw station reports 2003 to
// 2021, not a normal of thirty years. Nil is not known.
type Month struct {
	Mean quantity.Celsius
	// High and Low are the means of the daily highest and lowest.
	High, Low *quantity.Celsius
	Vapour    quantity.Kilopascals
	// Pressure at the station.
	Pressure *quantity.Kilopascals
	// YearsAir and YearsVapour are how many years went in.
	YearsAir, YearsVapour int
}

// Places is the climate table.
type Places struct {
	// Credit must be shown wherever a value of the table is.
	Credit string
	List   []Place
}

// LoadPlaces reads the climate table that comes with the program.
func LoadPlaces() (Places, error) { return readPlaces(assets.Climates()) }

// Named is the table with the names of another language beside its own, to be found
// by either; the functions are asked with the English name.
func (p Places) Named(city, country func(name string) string) Places {
	p.List = slices.Clone(p.List)
	for i := range p.List {
		p.List[i].also, p.List[i].alsoCountry = city(p.List[i].Name), country(p.List[i].Country)
	}
	return p
}

// readPlaces reads a climate table: a credit line that begins with "# ", a
// heading, a place a row.
func readPlaces(data []byte) (Places, error) {
	credit, rest, ok := strings.Cut(string(data), "\n")
	credit, marked := strings.CutPrefix(credit, "# ")
	if !ok || !marked || strings.TrimSpace(credit) == "" {
		return Places{}, fmt.Errorf("read climates: no credit in the first line")
	}
	rows, err := csv.NewReader(bytes.NewReader([]byte(rest))).ReadAll()
	if err != nil {
		return Places{}, fmt.Errorf("read climates: %w", err)
	}
	p := Places{Credit: strings.TrimSpace(credit)}
	for i, row := range rows {
		if i == 0 {
			continue
		}
		place, err := placeFrom(row)
		if err != nil {
			return Places{}, fmt.Errorf("read climates, row %d: %w", i+1, err)
		}
		p.List = append(p.List, place)
	}
	return p, nil
}

// placeFrom reads one row: place, country, latitude, longitude, elevation,
// grade, then seven cells of twelve months.
func placeFrom(row []string) (Place, error) {
	if len(row) != 13 {
		return Place{}, fmt.Errorf("%d cells instead of 13", len(row))
	}
	var where [3]float64
	for i := range where {
		x, err := strconv.ParseFloat(row[2+i], 64)
		if err != nil {
			return Place{}, fmt.Errorf("column %d: %w", 3+i, err)
		}
		where[i] = x
	}
	p := Place{Name: row[0], Country: row[1], Latitude: where[0], Longitude: where[1], Elevation: quantity.Metres(where[2]), Grade: row[5]}
	var cells [7][months]*float64
	for i := range cells {
		cell, err := monthsFrom(row[6+i])
		if err != nil {
			return Place{}, fmt.Errorf("column %d of %s: %w", 7+i, p.Name, err)
		}
		cells[i] = cell
	}
	for m := range p.Months {
		if cells[0][m] == nil || cells[3][m] == nil {
			return Place{}, fmt.Errorf("%s: no mean or vapour pressure in month %d", p.Name, m+1)
		}
		p.Months[m] = Month{
			Mean: quantity.Celsius(*cells[0][m]),
			High: celsius(cells[1][m]), Low: celsius(cells[2][m]),
			Vapour:   quantity.Kilopascals(*cells[3][m] * 100 / kilo),
			YearsAir: whole(cells[5][m]), YearsVapour: whole(cells[6][m]),
		}
		if p4 := cells[4][m]; p4 != nil {
			kpa := quantity.Kilopascals(*p4 * 100 / kilo)
			p.Months[m].Pressure = &kpa
		}
	}
	return p, nil
}

// monthsFrom reads twelve numbers; "-" is not known.
func monthsFrom(cell string) ([months]*float64, error) {
	var list [months]*float64
	words := strings.Fields(cell)
	if len(words) != months {
		return list, fmt.Errorf("%d months", len(words))
	}
	for i, w := range words {
		if w == "-" {
			continue
		}
		x, err := strconv.ParseFloat(w, 64)
		if err != nil {
			return list, fmt.Errorf("month %d: %w", i+1, err)
		}
		list[i] = &x
	}
	return list, nil
}

// celsius makes a temperature that may be unknown.
func celsius(x *float64) *quantity.Celsius {
	if x == nil {
		return nil
	}
	c := quantity.Celsius(*x)
	return &c
}

// whole makes a count; unknown is none.
func whole(x *float64) int {
	if x == nil {
		return 0
	}
	return int(*x)
}

// Search lists the places whose name or country holds every word of the query,
// as people type it (accents and case do not matter): those whose name begins
// with it first, then better grades, then by name. An empty query lists all.
func (p Places) Search(query string) []Place {
	words := plain.Words(query)
	var list []Place
	for _, place := range p.List {
		if plain.Holds(plain.Text(place.Name+" "+place.Country+" "+place.also+" "+place.alsoCountry), words) {
			list = append(list, place)
		}
	}
	slices.SortStableFunc(list, func(a, b Place) int {
		best := func(x Place) int { return max(begins(x.Name, query), begins(x.also, query)) }
		if d := best(b) - best(a); d != 0 {
			return d
		}
		if d := strings.Compare(a.Grade, b.Grade); d != 0 {
			return d
		}
		return strings.Compare(a.Name, b.Name)
	})
	return list
}

// begins tells how a name begins with what is searched for: 2 for the name itself, 1
// for a word in it, else 0.
func begins(name, query string) int {
	name, query = plain.Text(name), plain.Text(query)
	if query == "" || strings.HasPrefix(name, query) {
		return 2
	}
	first := strings.Fields(query)[0]
	for _, word := range strings.Fields(name) {
		if strings.HasPrefix(word, first) {
			return 1
		}
	}
	return 0
}
