package fuel

// Codes lists the codes of every [Advice], as they stand under "advice.", so
// that a catalogue of texts can be held against it.
func Codes() []string {
	return []string{
		FuelNone, FuelRinse, FuelMiddle, FuelLong, FuelStopStart, FuelStudied,
		BeforeEarly, BeforeLate, FuelBefore,
		AfterGain, AfterNone, AfterSoon, AfterDay, AfterLarge, AfterMeals, FuelAfter, FuelAsUsual,
		DrinkStrength,
	}
}
