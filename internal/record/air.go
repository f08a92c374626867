package record

// AirKind says what a field of the air belongs to.
type AirKind int

// What the fields of the air belong to.
const (
	// AirOfPlace is the weather and the height of a place: another place has
	// another.
	AirOfPlace AirKind = iota
	// AirRead was read on an instrument, and is of the hour it was read in.
	AirRead
	// AirOfSession goes with the session wherever it is: how much wind and sun
	// one is in, what one wears.
	AirOfSession
)

// AirField describes one field of the air. Whatever compares airs or takes one to
// another place goes through [AirFields], so that a new field is not forgotten.
type AirField struct {
	// Path is the field as texts that cannot be read are kept under it.
	Path string
	Kind AirKind
	// at is the field itself: a *Number, *Sun or *string.
	at func(a *Air) any
}

// AirFields describes every field of the air, in the order of the sheet.
func AirFields() []AirField {
	return []AirField{
		{"temperature", AirOfPlace, func(a *Air) any { return &a.Temperature }},
		{"humidity", AirOfPlace, func(a *Air) any { return &a.Humidity }},
		{"wind", AirOfSession, func(a *Air) any { return &a.Wind }},
		{"sun", AirOfSession, func(a *Air) any { return &a.Sun }},
		{"altitude", AirOfPlace, func(a *Air) any { return &a.Altitude }},
		{"wbgt", AirRead, func(a *Air) any { return &a.Wbgt }},
		{"clothing", AirOfSession, func(a *Air) any { return &a.Clothing }},
	}
}

// Same reports whether two airs say the same.
func (a Air) Same(b Air) bool {
	for _, f := range AirFields() {
		same := false
		switch x := f.at(&a).(type) {
		case *Number:
			y, ok := f.at(&b).(*Number)
			same = ok && x.Same(*y)
		case *Sun:
			y, ok := f.at(&b).(*Sun)
			same = ok && *x == *y
		case *string:
			y, ok := f.at(&b).(*string)
			same = ok && *x == *y
		}
		if !same {
			return false
		}
	}
	return true
}

// Without is the air with the fields of some kinds left empty.
func (a Air) Without(kinds ...AirKind) Air {
	for _, f := range AirFields() {
		for _, k := range kinds {
			if f.Kind != k {
				continue
			}
			switch x := f.at(&a).(type) {
			case *Number:
				*x = Number{}
			case *Sun:
				*x = ""
			case *string:
				*x = ""
			}
		}
	}
	return a
}
