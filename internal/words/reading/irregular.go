package reading

// irregular are English words whose spelling misleads, with their syllables.
func irregular() map[string]int {
	return map[string]int{
		"area": 3, "associated": 5, "averaged": 2, "baseline": 2, "changeover": 3, "diabetes": 4, "diarrhoea": 4, "diet": 2,
		"efficiency": 4, "elsewhere": 2, "european": 4, "everybody": 4, "everyone": 3, "everything": 3, "everywhere": 3, "eyes": 1,
		"february": 4, "fibre": 2, "fluid": 2, "fluids": 2, "forecasts": 2, "forehead": 2, "foresees": 2, "increment": 3,
		"january": 4, "kcal": 2, "laboratory": 4, "linear": 3, "litres": 2, "metres": 2, "millilitres": 4, "nausea": 3, "opinion": 3,
		"permeability": 6, "ratio": 3, "realistic": 4, "reopen": 3, "serious": 3, "somebody": 3, "someone": 2, "something": 2,
		"supplements": 3, "therefore": 2, "typeface": 2, "union": 2, "whoever": 3,
	}
}
