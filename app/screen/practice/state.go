// Package practice is the practitioner's own house: who makes the entries, how
// figures are shown, which bands and limits hold, every threshold in use with
// its source, the copies of the records, what was deleted, and how long records
// are kept.
package practice

import (
	"math"
	"slices"
	"strings"
	"time"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plain"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// The parts of the screen.
const (
	PartHouse      = "house"
	PartStandards  = "standards"
	PartThresholds = "thresholds"
	PartRecords    = desk.PartRecords
	PartRedFlags   = "redflags"
	PartAbout      = "about"
)

// parts lists them in their order.
func parts() []string {
	return []string{PartHouse, PartStandards, PartThresholds, PartRecords, PartRedFlags, PartAbout}
}

// threshold is one line of the evidence, in words.
type threshold struct {
	entry evidence.Entry
	what  string
	// says is true for a statement, which has no figure.
	says bool
}

// thresholdsOf words every entry of the evidence: what was published first, then
// what is said without a figure, the limits of what can be typed last.
func thresholdsOf(w *words.Words) []threshold {
	var list, limits []threshold
	for _, e := range evidence.All() {
		if field, end, ok := limitOf(e.ID); ok {
			limits = append(limits, threshold{entry: e, what: w.Say("practice.limit."+end, fieldWord(w, field))})
			continue
		}
		what := readable(e.ID)
		if w.Has(e.Key()) {
			what = w.Say(e.Key())
		}
		list = append(list, threshold{entry: e, what: what})
	}
	for _, s := range evidence.Statements() {
		list = append(list, threshold{entry: evidence.Entry{ID: s.ID, Source: s.Source, Sure: s.Sure}, what: w.Say("statement." + s.ID), says: true})
	}
	return append(list, limits...)
}

// value writes the figure; a statement has none.
func (t threshold) value(w *words.Words) string {
	if t.says {
		return ""
	}
	return amount(w, t.entry)
}

// limitOf reads the id of an input limit: "limit.body mass.warn.high" is the
// field "body mass" and the end "warn.high".
func limitOf(id string) (field evidence.Field, end string, ok bool) {
	rest, ok := strings.CutPrefix(id, "limit.")
	if !ok {
		return "", "", false
	}
	for _, end := range []string{"warn.low", "warn.high", "refuse.low", "refuse.high"} {
		if name, found := strings.CutSuffix(rest, "."+end); found {
			return evidence.Field(name), end, true
		}
	}
	return "", "", false
}

// fieldWord is the word of a field, or its own name.
func fieldWord(w *words.Words, f evidence.Field) string {
	if key := "measure." + strings.ReplaceAll(strings.ToLower(string(f)), " ", "-"); w.Has(key) {
		return w.Say(key)
	}
	return string(f)
}

// readable makes words of an id that has none: "group.soccer.mean" becomes
// "group, soccer, mean".
func readable(id string) string {
	return strings.ReplaceAll(strings.ReplaceAll(id, ".", ", "), "-", " ")
}

// search shows only the thresholds whose words, source or unit hold every word
// of a text.
func search(all []threshold, text string, w *words.Words) []threshold {
	wanted := plain.Words(text)
	return slices.DeleteFunc(slices.Clone(all), func(t threshold) bool {
		e := t.entry
		hay := plain.Text(strings.Join([]string{t.what, e.ID, e.Source.Name(w.Say), e.Source.Title(w.Say), string(e.Unit), desk.Sureness(w, e.Sure)}, " "))
		return !plain.Holds(hay, wanted)
	})
}

// figure writes a threshold's number as its source gives it: all its decimals,
// up to six; what is smaller than they show, as a power of ten.
func figure(w *words.Words, x float64) string {
	const most = 6
	if x != 0 && math.Abs(x) < 1e-4 {
		power := int(math.Floor(math.Log10(math.Abs(x))))
		return w.Say("practice.power", w.Number(x/math.Pow10(power), 3), w.Number(float64(power), 0))
	}
	for d := range most {
		if math.Abs(quantity.Round(x, d)-x) <= 1e-12*math.Max(1, math.Abs(x)) {
			return w.Number(x, d)
		}
	}
	return w.Number(x, most)
}

// amount writes it with its unit.
func amount(w *words.Words, e evidence.Entry) string {
	if e.Unit == quantity.None {
		return figure(w, e.Value)
	}
	return figure(w, e.Value) + "\u00a0" + string(e.Unit)
}

// past is an athlete whose records have been kept as long as the practice keeps
// them.
type past struct {
	id   record.ID
	name string
	// last is the day of the last entry, due the day the time was over.
	last, due record.Date
}

// majority is the age from which the records of a minor are counted; common
// practice, no source: local law decides.
const majority = 18

// pastRetention lists the athletes whose last entry lies more than so many
// years back. For one who was a minor then, the years count from the 18th
// birthday. Without years nobody is past.
func pastRetention(list []store.AthleteSummary, last map[record.ID]record.Date, years int, today record.Date) []past {
	var out []past
	if years <= 0 {
		return nil
	}
	for _, a := range list {
		at := lastEntry(a, last[a.ID])
		from, ok := at.Time()
		if !ok {
			continue
		}
		if born, known := a.Born.Time(); known && born.AddDate(majority, 0, 0).After(from) {
			from = born.AddDate(majority, 0, 0)
		}
		if due := record.DateOf(from.AddDate(years, 0, 0)); due < today {
			out = append(out, past{id: a.ID, name: a.Name, last: at, due: due})
		}
	}
	slices.SortFunc(out, func(a, b past) int { return strings.Compare(string(a.due), string(b.due)) })
	return out
}

// lastEntry is the newest of what is known of an athlete.
func lastEntry(a store.AthleteSummary, more record.Date) record.Date {
	newest := record.DateOf(a.ChangedAt)
	for _, d := range []record.Date{a.LastTest.Date, more} {
		if d > newest {
			newest = d
		}
	}
	return newest
}

// bandRow is one line of a band set, in words.
type bandRow struct {
	marker evidence.Marker
	code   string
	// low and high bound it; infinite where they do not. Open says that high
	// itself belongs to the next band.
	low, high float64
	open      bool
	sure      evidence.Sureness
}

// bandRows lists the bands of a set.
func bandRows(set evidence.BandSet) []bandRow {
	var list []bandRow
	for _, scale := range set.Scales {
		low := math.Inf(-1)
		for _, b := range scale.Bands {
			list = append(list, bandRow{marker: scale.Marker, code: b.Code, low: low, high: b.High, open: b.Open, sure: scale.Sure})
			low = b.High
		}
	}
	return list
}

// edgesInOrder reports whether the practice's own edges rise.
func edgesInOrder(s record.Settings) bool {
	low := math.Inf(-1)
	for _, n := range []record.Number{s.OwnGravityWell, s.OwnGravityMinimal, s.OwnGravityGreat} {
		if !n.Known() {
			continue
		}
		if *n.Value <= low {
			return false
		}
		low = *n.Value
	}
	return true
}

// ago is how many whole days lie between a moment and now.
func ago(at, now time.Time) int { return int(now.Sub(at).Hours() / 24) }
