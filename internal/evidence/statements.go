package evidence

// Statement is what a source says without a figure this program calculates with:
// a consensus, another view, or what is not known. Its text is in the catalogue
// under "statement."+ID.
type Statement struct {
	// ID is stable.
	ID     string
	Source Citation
	Sure   Sureness
}

// Statements lists them, in the order of the settings screen.
func Statements() []Statement {
	bjsm, ijsnem := "British Journal of Sports Medicine", "International Journal of Sport Nutrition and Exercise Metabolism"
	memory := Citation{Short: "from memory", Full: "physiology of exercise in the heat, from memory; no single source"}
	return []Statement{
		{"heat.consensus", Citation{"Racinais et al. 2023", "Racinais et al. 2023, " + bjsm + " 57:8, consensus of the International Olympic Committee"}, Second},
		{"heat.policies", Citation{"Bandiera et al. 2024", "Bandiera et al. 2024, " + bjsm + ", exertional heat and the policies of federations"}, Second},
		{"heat.nutrition", Citation{"McCubbin et al. 2020", "McCubbin et al. 2020, " + ijsnem + ", position of sports dietitians on nutrition in the heat"}, Second},
		{"hyponatraemia.update", Citation{"Bennett et al. 2020", "Bennett et al. 2020, Wilderness and Environmental Medicine 31, Wilderness Medical Society"}, Second},
		{"hyponatraemia.other-view", Citation{"Noakes 2026", "Noakes 2026, Endocrine Reviews 47:191"}, Second},
		{"fuel.studied", studied(), Memory},
		{"fuel.recent", Citation{"Podlogar & Wallis 2022", "Podlogar, Wallis 2022, Sports Medicine 52(S1):5"}, Second},
		{"gut-training.recent", Citation{"Costa et al. 2025", "Costa et al. 2025, Sports Medicine, gut training and symptoms"}, Second},
		{"strain.edition", Citation{"ISO 7933:2023", "ISO 7933:2023, Ergonomics of the thermal environment: predicted heat strain"}, Second},
		{"sweat.models", Citation{"Cheuvront et al. 2023", "Cheuvront et al. 2023, Frontiers in Sports and Active Living"}, Second},
		{"sweat.outdoor", Citation{"J Appl Physiol 2024", "sweat models for outdoor running and cycling, Journal of Applied Physiology 2024"}, Second},
		{"women.rate", memory, Memory},
		{"women.cycle", memory, Memory},
		{"women.temperature", memory, Memory},
		{"older.thirst", memory, Memory},
		{"sites.other", Citation{"Baker et al. 2018", "Baker et al. 2018, Journal of Applied Physiology 124, regional equations; not at hand here"}, Second},
	}
}
