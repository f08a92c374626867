package otherclimate

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Widths in px at 100 % text: words of a row, a number, a choice, a city.
const (
	wordWidth   = 128
	numberWidth = 112
	choiceWidth = 210
	cityWidth   = 240
)

// form is what is asked: each way has its own rows, sun and wind are everybody's.
type form struct {
	p                     *panel
	test                  *field.Choice
	city                  *field.Suggest
	numbers               map[string]*field.Number
	byTest, byCity, byAir fyne.CanvasObject
	weather               fyne.CanvasObject
	box                   *fyne.Container
}

// newForm makes the rows.
func newForm(p *panel) *form {
	f := &form{p: p, numbers: map[string]*field.Number{}}
	say := p.desk.Words.Say
	f.test = field.NewChoice(p.desk.Host, "climate.test", f.tests())
	f.test.Choose(string(p.s.test))
	f.test.OnChosen = func(key string) {
		p.s.test = record.ID(key)
		p.follow()
	}
	f.byTest = row(say("otherclimate.test.label"), 420, f.test)
	f.byCity = f.cityRows()
	air := func(a *record.Air, name string) *record.Number {
		return map[string]*record.Number{"temperature": &a.Temperature, "humidity": &a.Humidity, "wind": &a.Wind, "altitude": &a.Altitude}[name]
	}
	number := func(name string, e evidence.Field, u quantity.Unit) *field.Number {
		return f.number(name, e, u, func() *record.Number { return air(&p.s.stop.Air, name) })
	}
	f.byAir = look.VBox(6,
		pair(row(say("trip.temperature"), numberWidth, number("temperature", evidence.AirTemperature, quantity.DegreeCelsius)),
			row(say("trip.humidity"), numberWidth, number("humidity", evidence.Humidity, quantity.PerCent))),
		row(say("trip.altitude"), numberWidth, number("altitude", evidence.Altitude, quantity.Metre)))
	sun := f.choice("climate.sun", "sun.", suns(), string(p.s.stop.Air.Sun), func(key string) { p.s.stop.Air.Sun = record.Sun(key) })
	sun.SetPlaceholder(say("trip.choose"))
	clothing := f.choice("climate.clothing", "clothing.", []string{consult.ClothingVest, consult.ClothingShirt, consult.ClothingTracksuit}, clothingOf(p.s.stop.Air),
		func(key string) { p.s.stop.Air.Clothing = key })
	f.weather = look.VBox(6, pair(row(say("trip.sun"), choiceWidth, sun), row(say("trip.wind"), numberWidth, number("wind", evidence.Wind, quantity.MetrePerSecond))),
		row(say("trip.clothing"), choiceWidth, clothing))
	f.box = look.VBox(6, f.byTest, f.byCity, f.byAir, f.weather)
	f.numbers["wind"].SetPlaceholder(p.desk.Words.Number(evidence.WindNotKnown, 0))
	f.fill()
	return f
}

// fill writes what is known at first into the fields.
func (f *form) fill() {
	if wind := f.p.s.stop.Air.Wind; wind.Known() {
		f.numbers["wind"].SetValue(*wind.Value)
	}
}

// cityRows are city, month and hour.
func (f *form) cityRows() fyne.CanvasObject {
	p, say := f.p, f.p.desk.Words.Say
	f.city = field.NewSuggest(p.desk.Host, "climate.city", true, f.cities).Choosy()
	f.city.SetPlaceholder(say("trip.city.type"))
	f.city.OnChanged = func(text string) {
		p.s.stop.City = strings.TrimSpace(text)
		p.follow()
	}
	f.city.OnLeft = func(string, bool) { p.follow() }
	var months []field.Option
	for m := 1; m <= 12; m++ {
		months = append(months, field.Option{Key: strconv.Itoa(m), Text: say("month." + strconv.Itoa(m))})
	}
	month := field.NewChoice(p.desk.Host, "climate.month", months)
	month.Choose(strconv.Itoa(p.s.stop.Month))
	month.OnChosen = func(key string) {
		if m, err := strconv.Atoi(key); err == nil {
			p.s.stop.Month = m
		}
		p.follow()
	}
	hour := f.choice("climate.hour", "trip.hour.", []string{consult.Afternoon, consult.MeanOfDay, consult.HotDay}, p.s.stop.TimeOfDay, func(key string) { p.s.stop.TimeOfDay = key })
	return look.VBox(6, row(say("trip.city"), cityWidth, f.city), pair(row(say("trip.month"), choiceWidth, month), row(say("trip.hour"), choiceWidth, hour)))
}

// tests are the athlete's tests to choose from.
func (f *form) tests() []field.Option {
	var list []field.Option
	for _, t := range f.p.in.tests {
		text := f.p.sp.Day(consult.TestDay(t.Test))
		if t.Test.Session.Place != "" {
			text = f.p.sp.Words.Say("heat.test.day", text, t.Test.Session.Place)
		}
		list = append(list, field.Option{Key: string(t.Test.ID), Text: f.p.sp.Words.Say("otherclimate.test.line", text, f.p.sp.Air(t.Test.Air))})
	}
	return list
}

// cities are the places of the table that fit a text.
func (f *form) cities(text string) []field.Option {
	const most = 12
	var list []field.Option
	for i, c := range f.p.in.places.Search(text) {
		if i == most {
			break
		}
		list = append(list, field.Option{Key: c.Name, Text: f.p.sp.Words.Say("trip.city.named", f.p.sp.Words.City(c.Name), f.p.sp.Words.Country(c.Country))})
	}
	return list
}

// suns are the presets of the sun, the strongest first.
func suns() []string {
	var list []string
	for _, s := range climate.Suns() {
		list = append([]string{string(s)}, list...)
	}
	return list
}

func clothingOf(a record.Air) string {
	if a.Clothing == "" {
		return consult.ClothingShirt
	}
	return a.Clothing
}

// choice makes one of a closed list.
func (f *form) choice(name, beginning string, words []string, now string, set func(key string)) *field.Choice {
	var options []field.Option
	for _, w := range words {
		options = append(options, field.Option{Key: w, Text: f.p.desk.Words.Say(beginning + w)})
	}
	c := field.NewChoice(f.p.desk.Host, name, options)
	c.Choose(now)
	c.OnChosen = func(key string) {
		set(key)
		f.p.follow()
	}
	return c
}

// number makes a number of the air. One that cannot be read, or is refused,
// counts as not there.
func (f *form) number(name string, e evidence.Field, u quantity.Unit, of func() *record.Number) *field.Number {
	n := field.NewNumber(f.p.desk.Host, "climate."+name, e, u)
	n.SetShown(f.p.sp.By.Unit(u))
	n.OnChanged = func(r field.Reading) {
		*of() = record.Number{}
		if r.Known {
			*of() = record.Num(r.Value, r.Unit)
		}
		f.p.follow()
	}
	f.numbers[name] = n
	return n
}

// show shows the rows of the chosen way.
func (f *form) show() {
	way := f.p.s.way
	look.ShowIf(f.byTest, way == byTest)
	look.ShowIf(f.byCity, way == byCity)
	look.ShowIf(f.byAir, way == byAir)
	look.ShowIf(f.weather, way != byTest)
}

// trouble shows at the city that the table has none such.
func (f *form) trouble(sp heat.Speaker, err error, s record.Stop) {
	weight, sentence := field.Fine, ""
	for _, t := range sp.Troubles(err, s) {
		if t.Field == evidence.PlaceField && f.p.s.way == byCity {
			weight, sentence = field.Wrong, t.Sentence
		}
	}
	f.city.SetTrouble(weight, sentence)
}

// hints show in an empty field what is taken instead.
func (f *form) hints(out answer) {
	text := ""
	if a := out.air.Air.Altitude; a.Known() && f.p.s.way == byAir {
		text = f.p.desk.Words.Number(*a.Value, 0)
	}
	f.numbers["altitude"].SetPlaceholder(text)
}

// row is words with a field beside them, no wider than most px at 100 % text.
func row(words string, most float32, o fyne.CanvasObject) fyne.CanvasObject {
	return look.Columns(10, []look.Track{look.Fixed(wordWidth), look.Share(1)}, look.NewParagraph(words, look.Body, look.Ink2), look.MaxWidth(most, o))
}

// pair is two rows side by side.
func pair(a, b fyne.CanvasObject) fyne.CanvasObject { return look.Columns(16, nil, a, b) }
