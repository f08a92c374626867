package evidence

// Statement is what a source says without a figure this program calculates with:
// a consensus, another view, a finding worth knowing, or what is not known. Its text
// is in the catalogue under "statement."+ID.
type Statement struct {
	// ID is stable; the part before the first dot is what it is about.
	ID     string
	Source Citation
	Sure   Sureness
}

// The subjects of statements.
const (
	AboutHeat          = "heat"
	AboutHyponatraemia = "hyponatraemia"
	AboutDeficit       = "deficit"
	AboutFuel          = "fuel"
	AboutGutTraining   = "gut-training"
	AboutSodium        = "sodium"
	AboutSteps         = "steps"
	AboutWomen         = "women"
	AboutOlder         = "older"
)

// Statements lists them, in the order of the settings screen.
func Statements() []Statement {
	return append(append(heatStatements(), fuelStatements()...), measuredStatements()...)
}

// heatStatements are about heat, drinking too much, and for whom both matter more.
func heatStatements() []Statement {
	const bjsm, ijsnem = "British Journal of Sports Medicine", "International Journal of Sport Nutrition and Exercise Metabolism"
	memory := Citation{Code: "memory-heat"}
	plasma := Citation{Short: "Baker et al. 2008", Full: "Baker, Lang, Kenney 2008, Journal of Applied Physiology 105:91"}
	return []Statement{
		{"heat.consensus", Citation{Short: "Racinais et al. 2023", Full: "Racinais et al. 2023, " + bjsm + " 57:8, consensus of the International Olympic Committee"}, Second},
		{"heat.policies", Citation{Short: "Bandiera et al. 2024", Full: "Bandiera et al. 2024, " + bjsm + ", exertional heat and the policies of federations"}, Second},
		{"heat.nutrition", Citation{Short: "McCubbin et al. 2020", Full: "McCubbin et al. 2020, " + ijsnem + ", position of sports dietitians on nutrition in the heat"}, Second},
		{"heat.edition", Citation{Short: "ISO 7933:2023", Full: "ISO 7933:2023, Ergonomics of the thermal environment: predicted heat strain"}, Second},
		{"hyponatraemia.update", Citation{Short: "Bennett et al. 2020", Full: "Bennett et al. 2020, Wilderness and Environmental Medicine 31, Wilderness Medical Society"}, Second},
		{"hyponatraemia.other-view", Citation{Short: "Noakes 2026", Full: "Noakes 2026, Endocrine Reviews 47:191"}, Second},
		{"hyponatraemia.equation", plasma, Read},
		{"deficit.by-heat", ownProposal(), Proposal},
		{"women.rate", memory, Memory},
		{"women.cycle", memory, Memory},
		{"women.temperature", memory, Memory},
		{"older.thirst", memory, Memory},
	}
}

// fuelStatements are about carbohydrate, sodium in drinks, and changing a habit.
func fuelStatements() []Statement {
	costa := Citation{Short: "Costa et al. 2017", Full: "Costa et al. 2017, Applied Physiology, Nutrition and Metabolism 42:547"}
	martinez := Citation{Short: "Martinez et al. 2023", Full: "Martinez et al. 2023, Sports Medicine 53:1175"}
	german := Citation{Short: "German Nutrition Society 2020", Full: "German Nutrition Society 2020, position on fluid replacement in sport"}
	brauer := Citation{Short: "Brauer et al. 2022", Full: "Brauer et al. 2022, BMC Nutrition 8:45"}
	return []Statement{
		{"fuel.studied", studied(), Memory},
		{"fuel.recent", Citation{Short: "Podlogar & Wallis 2022", Full: "Podlogar, Wallis 2022, Sports Medicine 52(S1):5"}, Second},
		{"fuel.overstated", Citation{Short: "Wardenaar et al. 2019", Full: "Wardenaar et al. 2019, reported against weighed intake"}, Memory},
		{"gut-training.trial", costa, Read},
		{"gut-training.review", martinez, Memory},
		{"gut-training.recent", Citation{Short: "Costa et al. 2025", Full: "Costa et al. 2025, Sports Medicine, gut training and symptoms"}, Second},
		{"sodium.drink", acsmFluid2007(), Second},
		{"sodium.drink-long", german, Memory},
		{"steps.size", commonPractice(), Practice},
		{"steps.goals", brauer, Memory},
	}
}

// measuredStatements are about measuring sweat, and how far it can be trusted.
func measuredStatements() []Statement {
	runs := Citation{Short: "Cheuvront et al. 2002", Full: "Cheuvront, Haymes, Sawka 2002, Medicine and Science in Sports and Exercise 34:1344"}
	return []Statement{
		{"sweat.uncorrected", runs, Read},
		{"sweat.partly-corrected", runs, Read},
		{"sweat.laboratory", Citation{Short: "Hayden 2004", Full: "Hayden et al. 2004, European Journal of Applied Physiology 91:748"}, Read},
		{"sweat.guessed", Citation{Short: "O'Neal et al. 2020", Full: "O'Neal et al. 2020, Sports 8:113"}, Read},
		{"sweat.models", Citation{Short: "Cheuvront et al. 2023", Full: "Cheuvront et al. 2023, Frontiers in Sports and Active Living"}, Second},
		{"sweat.outdoor", Citation{Short: "J Appl Physiol 2024", Full: "sweat models for outdoor running and cycling, Journal of Applied Physiology 2024"}, Second},
		{"sites.other", Citation{Short: "Baker et al. 2018", Full: "Baker et al. 2018, Journal of Applied Physiology 124, regional equations; not at hand here"}, Second},
		{"sites.storage", Citation{Short: "IJSNEM 2018", Full: "International Journal of Sport Nutrition and Exercise Metabolism 2018;28:238"}, Read},
		{"mouthful.bottle", Citation{Code: "memory-mouthful"}, Memory},
	}
}
