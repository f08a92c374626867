package colleague

import (
	"encoding/json"
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/bundle"
	"ebbwell/internal/care"
	"ebbwell/internal/exchange"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// speaker says what a bundle brings.
type speaker struct{ desk *desk.Desk }

// field names a field or a row of a record.
func (s speaker) field(kind record.Kind, path string) string {
	w := s.desk.Words
	table, name := map[record.Kind]string{record.KindAthlete: "athletes", record.KindTest: "tests", record.KindPlan: "plans", record.KindProduct: "products"}[kind], path
	parts := strings.Split(path, ".")
	switch {
	case path == "":
		return w.Say("take.whole." + string(kind))
	case len(parts) > 1 && (parts[0] == "flags" || parts[0] == "consents"):
		return w.Say("take.row." + parts[0])
	case kind == record.KindTest:
		table, name = tableAndName(path)
	}
	if text := s.desk.ColumnOnScreen(table, exchange.Column{Name: name}); text != "" {
		return text
	}
	return w.Say("take.detail." + string(kind))
}

// tableAndName parts the path of a field of a sheet into the table and the column that
// it has in an export.
func tableAndName(path string) (table, name string) {
	table = "tests"
	lists := map[string]bool{"weighings": true, "bottles": true, "refills": true, "foods": true, "patches": true, "partway": true, "safety": true}
	for {
		list, behind, _ := strings.Cut(path, ".")
		_, rest, ok := strings.Cut(behind, ".")
		if !ok || !lists[list] {
			return table, path
		}
		table, path = table+"."+list, rest
	}
}

// value says what a field holds; where body mass is hidden nothing that tells it.
func (s speaker) value(v bundle.Value, path string, hidden bool) string {
	w := s.desk.Words
	switch {
	case v.Number != nil && hidden && tellsMass(v.Unit):
		return w.Say("take.value.hidden")
	case v.Number != nil:
		return s.desk.Speaker(false).By.Amount(*v.Number, v.Unit)
	case v.Text == "":
		return w.Say("take.value.none")
	case v.Text == "true" || v.Text == "false":
		return w.Say("take.value." + v.Text)
	case v.Text == "present":
		return w.Say("take.value.present")
	}
	if day, ok := record.Date(v.Text).Time(); ok {
		return w.Date(day)
	}
	for _, key := range []string{"flag." + v.Text + ".name", "profile.purpose." + v.Text} {
		if strings.HasPrefix(path, "flags.") != strings.HasPrefix(key, "profile") && w.Has(key) {
			return w.Say(key)
		}
	}
	if hidden && strings.ContainsAny(v.Text, "0123456789") {
		return w.Say("take.value.hidden")
	}
	return v.Text
}

// tellsMass reports whether an amount in a unit may tell a body mass.
func tellsMass(u quantity.Unit) bool {
	switch u {
	case quantity.Kilogram, quantity.PerCent, quantity.Kilocalorie, quantity.Watt:
		return true
	}
	return false
}

// hidden reports whether body mass is hidden for an athlete; it is for one nobody knows.
func (s speaker) hidden(a record.Athlete) bool {
	return a.ID == "" || care.MassHidden(a, s.desk.Now())
}

// name names an athlete.
func (s speaker) name(a record.Athlete) string { return desk.NameOf(s.desk.Words, a) }

// sheet names a sheet by its day.
func (s speaker) sheet(t record.Test) string {
	day, ok := t.Session.Date.Time()
	if !ok {
		return s.desk.Words.Say("take.sheet.undated")
	}
	return s.desk.Words.Say("take.sheet", s.desk.Words.Date(day))
}

// decoded is a value as it was kept for a question.
func decoded(data []byte) (v bundle.Value) {
	if json.Unmarshal(data, &v) != nil {
		return bundle.Value{}
	}
	return v
}
