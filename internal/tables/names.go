package tables

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// worded writes a text as headings and words are compared: small letters without
// accents, one space between words, no signs.
func worded(text string) string { return strings.Join(wordsOf(text), " ") }

// wordsOf cuts a text into such words; digits and letters are apart, and so are words
// written together with a capital, "PreWeight".
func wordsOf(text string) []string {
	var list []string
	word, lowerBefore := []rune{}, false
	flush := func() {
		if len(word) > 0 {
			list, word = append(list, string(word)), word[:0]
		}
	}
	for _, r := range norm.NFKD.String(strings.ReplaceAll(text, "ß", "ss")) {
		switch {
		case unicode.Is(unicode.Mn, r):
		case unicode.IsLetter(r):
			if n := len(word); n > 0 && (unicode.IsDigit(word[n-1]) || unicode.IsUpper(r) && lowerBefore && n > 2) {
				flush()
			}
			lowerBefore = unicode.IsLower(r)
			word = append(word, unicode.ToLower(r))
		case unicode.IsDigit(r):
			if len(word) > 0 && !unicode.IsDigit(word[len(word)-1]) {
				flush()
			}
			word = append(word, r)
		default:
			flush()
		}
	}
	flush()
	return list
}

// known lists the names of columns as practices write them, in four languages and
// in the short forms of the trade, as [worded] writes them; a name is found where all
// its words stand in a heading. Common practice, no source.
func known() map[Target]string {
	return map[Target]string{
		Name:         "name, athlete, athlete name, player, player name, full name, participant, subject, client, athlet, athletin, sportler, sportlerin, spieler, spielerin, proband, nombre, nombre y apellidos, deportista, jugador, jugadora, atleta, nom, nom prenom, athlete nom, name vorname, nachname vorname, athlete last first, name last first, last name first name, apellidos nombre, joueur, joueuse, sportif, sportive",
		FamilyName:   "surname, last name, family name, nachname, familienname, apellido, apellidos, nom de famille",
		GivenName:    "first name, given name, forename, vorname, nombre de pila, prenom",
		Born:         "dob, d o b, date of birth, birth date, birthdate, birthday, born, geburtsdatum, geboren, geb datum, geb, fecha de nacimiento, fecha nacimiento, nacimiento, f nac, date de naissance, naissance, ne le, nee le",
		Sex:          "sex, gender, m f, f m, geschlecht, geschl, sexo, genero, sexe, genre",
		Sport:        "sport, discipline, sportart, disziplin, deporte, disciplina, modalidad",
		Position:     "position, playing position, posicion, poste, spielposition",
		Height:       "height, ht, stature, body height, grosse, korpergrosse, koerpergroesse, groesse, talla, estatura, altura, taille",
		UsualMass:    "usual weight, usual mass, normal weight, ubliches gewicht, peso habitual, poids habituel, body mass, body weight, weight, korpergewicht, gewicht, peso, poids",
		Acclimatised: "acclimatised, acclimatized, heat acclimatised, heat acclimatized, heat acclimated, akklimatisiert, hitzeakklimatisiert, aclimatado, aclimatada, acclimate, acclimatee",
		AthleteNote:  "athlete note, medical note, notiz zur person, nota del deportista, note sur l athlete",

		Date:         "date, test date, session date, practice date, training date, match date, game date, trainingsdatum, date of test, date tested, collected, collection date, sampling date, datum, testdatum, tag, entnahmedatum, fecha, fecha del test, fecha de prueba, fecha test, dia, date du test, date test, jour, date de prelevement",
		Start:        "start, start time, begin, time on, time start, t 0, session start, startzeit, beginn, anfang, hora de inicio, hora inicio, inicio, debut, heure de debut, heure debut, time, time of day, uhrzeit, hora, heure",
		End:          "end, end time, time off, time end, finish, finish time, stop, endzeit, ende, hora de fin, hora fin, fin, final, heure de fin, heure fin",
		Duration:     "duration, practice length, practice duration, training duration, time min, mins, minutes, session length, exercise time, exercise duration, session duration, length, dur, total time, dauer, trainingsdauer, belastungsdauer, zeit min, minuten, duracion, tiempo, tiempo min, minutos, duree, temps, temps min, duree seance, duree exercice",
		Place:        "place, location, venue, site name, ort, trainingsort, lugar, sitio de la prueba, lieu, endroit",
		Activity:     "activity, session type, session, training type, exercise, mode, type, test type, aktivitat, einheit, trainingsart, actividad, tipo de sesion, sesion, activite, seance, type de seance",
		MassBefore:   "mass before, weight before, pre weight, weight pre, pre mass, mass pre, pre bm, bm pre, pre bw, bw pre, body mass before, initial weight, start weight, weight in, pre exercise weight, pre exercise body mass, bm 1, weight 1, pre wt, wt pre, wt before, wt in, pre practice wt, pre practice weight, pre training weight, pre match weight, pre game weight, gewicht vor, gewicht vorher, vorher gewicht, masse vor, masse vorher, korpergewicht vor, korpermasse vor, korpergewicht vorher, korpermasse vorher, gewicht start, anfangsgewicht, peso antes, peso previo, peso inicial, peso pre, masa antes, masa pre, masa inicial, poids avant, masse avant, poids pre, poids initial, masse initiale",
		MassAfter:    "mass after, weight after, post weight, weight post, post mass, mass post, post bm, bm post, post bw, bw post, body mass after, final weight, end weight, weight out, post exercise weight, post exercise body mass, bm 2, weight 2, post wt, wt post, wt after, wt out, post practice wt, post practice weight, post training weight, post match weight, post game weight, gewicht nach, gewicht nachher, nachher gewicht, masse nach, masse nachher, korpergewicht nach, korpermasse nach, korpergewicht nachher, korpermasse nachher, endgewicht, peso despues, peso posterior, peso final, peso post, masa despues, masa post, masa final, poids apres, masse apres, poids post, poids final, masse finale",
		Drunk:        "drunk, fluid intake, fluid in, fluids, fluid, drink, drinks, drink volume, fluid consumed, volume consumed, vol drunk, water, water intake, sports drink, electrolyte drink, fi, fluid consumption, trinkmenge, getrunken, flussigkeit, flussigkeitsaufnahme, trinken, getranke, wasser, ingesta, ingesta de liquido, ingesta liquido, liquido, liquido ingerido, bebida, bebido, agua, boisson, boissons, boissons bues, apport hydrique, apport liquide, liquide bu, volume bu, bu, eau, eau bue",
		BottleBefore: "bottle before, bottle pre, pre bottle, bottle in, bottle start, bottle weight before, flasche vor, flasche vorher, flaschengewicht vor, botella antes, botella pre, bidon antes, bouteille avant, bidon avant, gourde avant",
		BottleAfter:  "bottle after, bottle post, post bottle, bottle out, bottle end, bottle weight after, flasche nach, flasche nachher, flaschengewicht nach, botella despues, botella post, bidon despues, bouteille apres, bidon apres, gourde apres",
		Urine:        "urine, urine volume, urine loss, urine vol, urine output, urine passed, urine mass, void, urin, urinmenge, urinvolumen, urinverlust, orina, volumen de orina, volumen orina, diuresis, urine volume emis, volume d urine, volume urine, diurese",
		Stool:        "stool, faeces, feces, stool mass, stuhl, stuhlmenge, heces, selles",
		Food:         "food, food mass, food intake, food eaten, gel mass, solids, essen, nahrung, verzehr, speisen, comida, alimento, alimentos, comida ingerida, aliment, aliments, nourriture, solides",
		Temperature:  "temperature, temp, air temp, air temperature, ambient temp, ambient temperature, t air, ta, t amb, tdb, dry bulb, lufttemperatur, lufttemp, umgebungstemp, temperatur, umgebungstemperatur, temperatura, temperatura ambiente, temp aire, temperatura del aire, temperature air, temperature ambiante, temperature de l air",
		Humidity:     "humidity, rh, rel humidity, relative humidity, hum, luftfeuchte, luftfeuchtigkeit, feuchte, rel feuchte, rf, humedad, humedad relativa, hr, humidite, humidite relative",
		Wind:         "wind, wind speed, windgeschwindigkeit, viento, velocidad del viento, vent, vitesse du vent",
		Wbgt:         "wbgt, wet bulb globe",
		Altitude:     "altitude, elevation, hohe, hoehe, meereshohe, altitud, elevacion",
		Gravity:      "usg, urine specific gravity, specific gravity, sg, u sg, urine sg, spezifisches gewicht, spez gewicht, spez gewicht urin, urindichte, dichte urin, densidad urinaria, densidad de la orina, gravedad especifica, ged, densite urinaire, densite de l urine, du",
		Osmolality:   "osmolality, uosm, u osm, urine osmolality, osmolalitat, urinosmolalitat, osmolalidad, osmolalidad urinaria, osmolalite, osmolalite urinaire, osmolarity, osmolarite, osmolaridad",
		Colour:       "urine colour, urine color, ucol, u col, colour, color, urinfarbe, harnfarbe, farbe, color de la orina, color orina, couleur de l urine, couleur urine, couleur",
		Sodium:       "sodium, na, na sweat, sweat na, sweat sodium, na concentration, sweat na concentration, patch sodium, natrium, schweissnatrium, natriumkonzentration, na konzentration, sodio, na sudor, sodio en sudor, sodio sudor, concentracion de sodio, na sueur, sodium sueur, sodium sudoral, concentration en sodium",
		Potassium:    "potassium, k, sweat k, k sweat, sweat potassium, kalium, kaliumkonzentration, potasio, potasio sudor, potassium sueur",
		PatchSite:    "site, patch site, patch, patch location, sampling site, location of patch, body site, pflasterstelle, pflaster, stelle, messstelle, korperstelle, entnahmeort, parche, zona, zona del parche, lugar del parche, zone, zone du patch, emplacement, site du patch",
		Effort:       "effort, rpe, srpe, s rpe, perceived exertion, borg, borg cr 10, borg 6 20, rpe 6 20, rpe 6 20 scale, rpe 0 10, cr 10, intensity, anstrengung, belastung, intensitat, esfuerzo, pse, intensidad, intensite, effort percu",
		Thirst:       "thirst, durst, durstgefuhl, sed, soif",
		Stomach:      "stomach, gi, gi comfort, gut, stomach comfort, gi symptoms, magen, magenbeschwerden, estomago, molestias gi, estomac, confort digestif",
		Power:        "power, mean power, avg power, average power, watts, leistung, potencia, potencia media, puissance, puissance moyenne",
		Speed:        "speed, mean speed, avg speed, average speed, geschwindigkeit, tempo, velocidad, velocidad media, vitesse, vitesse moyenne",
		Energy:       "energy, kcal, calories, energy expenditure, energie, energieverbrauch, kalorien, energia, gasto energetico, calorias, depense energetique",
		TestNote:     "note, notes, comment, comments, remark, remarks, observations, notiz, notizen, bemerkung, bemerkungen, kommentar, nota, notas, comentario, comentarios, observaciones, remarque, remarques, commentaire, commentaires",
		Sample:       "sample, sample id, sample label, sample no, label, specimen, sample name, probe, probennummer, proben id, probe nr, muestra, id muestra, etiqueta, echantillon, no echantillon, id echantillon",

		elsewhere: "sodium intake, na intake, carbohydrate, carbohydrate intake, cho, cho intake, caffeine, caffeine intake, energy intake, protein, natriumzufuhr, kohlenhydrate, ingesta de sodio, hidratos, hidratos de carbono, apport sodique, apport en sodium, glucides, heart rate, hr mean, mean hr, distance, herzfrequenz, distanz, frecuencia cardiaca, distancia, frequence cardiaque",
		code:      "id, code, subject id, athlete id, participant id, no, nr, number, kennung, codigo",

		Worked: "sweat rate, sr, sweat loss, fluid loss, total sweat loss, whole body sweat rate, wbsr, lsr, sweating rate, mass change, weight change, bm change, bm loss, weight loss, mass loss, body mass loss, delta bm, dehydration, dehydration percent, deficit, fluid deficit, fluid balance, fluid replacement, replaced, bmi, age, drinking rate, intake rate, sodium loss, na loss, sodium loss rate, na loss rate, schweissrate, schweissverlust, gewichtsverlust, gewichtsanderung, massenverlust, masseverlust, dehydratation, trinkrate, alter, natriumverlust, defizit, tasa de sudoracion, tasa sudoracion, perdida de sudor, perdida de peso, perdida de masa, cambio de peso, deshidratacion, edad, perdida de sodio, deficit hidrico, taux de sudation, debit sudoral, perte sudorale, pertes sudorales, perte de poids, perte de masse, deshydratation, perte de sodium, age ans",
	}
}

// siteNames lists the sites of a patch as people write them.
func siteNames() map[record.Site]string {
	return map[record.Site]string{
		record.SiteForearmDorsal:  "forearm, fa, dorsal forearm, forearm dorsal, posterior forearm, mid forearm, unterarm, unterarm dorsal, unterarm aussen, antebrazo, antebrazo dorsal, avant bras, avant bras dorsal, forearm left, forearm right",
		record.SiteForearmVentral: "ventral forearm, forearm ventral, anterior forearm, inner forearm, unterarm ventral, unterarm innen, antebrazo ventral, avant bras ventral",
		record.SiteUpperArm:       "upper arm, triceps, arm, oberarm, brazo, bras",
		record.SiteChest:          "chest, sternum, brust, pecho, esternon, poitrine, torse",
		record.SiteBack:           "back, upper back, scapula, rucken, oberer rucken, ruecken, schulterblatt, espalda, espalda alta, escapula, dos, haut du dos, omoplate",
		record.SiteForehead:       "forehead, stirn, frente, front",
		record.SiteThigh:          "thigh, quadriceps, oberschenkel, muslo, cuisse",
		record.SiteCalf:           "calf, lower leg, wade, unterschenkel, pantorrilla, gemelo, mollet",
		record.SiteFiveMean:       "five site mean, 5 site mean, regional mean, five site, 5 site, mean of five sites, mittel aus funf stellen, media de cinco zonas, moyenne de cinq sites",
	}
}

// SiteOf finds the site of a patch in a text; the longest name that stands in it
// counts. ok is false where none does.
func SiteOf(text string) (site record.Site, ok bool) {
	words, most := wordsOf(text), 0
	for _, s := range Sites() {
		if string(s) == text {
			return s, true
		}
		for name := range strings.SplitSeq(siteNames()[s], ", ") {
			if n := len(name); n > most && holdsAll(words, strings.Fields(name)) {
				site, most = s, n
			}
		}
	}
	return site, most > 0
}

// sideOf finds left or right in a text.
func sideOf(text string) string {
	for _, w := range wordsOf(text) {
		switch w {
		case "left", "l", "links", "li", "izquierdo", "izquierda", "izq", "gauche", "g":
			return "left"
		case "right", "r", "rechts", "re", "derecho", "derecha", "der", "droit", "droite", "d":
			return "right"
		}
	}
	return ""
}

// holdsAll reports whether every word of a name is among others.
func holdsAll(words, name []string) bool {
	for _, n := range name {
		if !slices.Contains(words, n) {
			return false
		}
	}
	return len(name) > 0
}

// sexOf reads a sex.
func sexOf(text string) (record.Sex, bool) {
	switch worded(text) {
	case "f", "w", "female", "woman", "girl", "women", "weiblich", "frau", "mujer", "femenino", "hembra", "femme", "feminin", "fille", "v":
		return record.Female, true
	case "m", "h", "male", "man", "boy", "men", "mannlich", "maennlich", "mann", "hombre", "masculino", "varon", "homme", "masculin", "garcon":
		return record.Male, true
	}
	return "", false
}

// yesOf reads a yes or a no.
func yesOf(text string) (yes, ok bool) {
	switch worded(text) {
	case "yes", "y", "1", "true", "x", "ja", "j", "si", "s", "oui", "o", "vrai", "wahr", "verdadero":
		return true, true
	case "no", "n", "0", "false", "nein", "non", "faux", "falsch", "falso":
		return false, true
	}
	return false, false
}

// unitNames are the units as people write them, as [unitOf] compares them.
func unitNames() map[string]quantity.Unit {
	return map[string]quantity.Unit{
		"kg": quantity.Kilogram, "kgs": quantity.Kilogram, "kilo": quantity.Kilogram, "kilos": quantity.Kilogram,
		"lb": quantity.Pound, "lbs": quantity.Pound, "pounds": quantity.Pound, "g": quantity.Gram, "gr": quantity.Gram, "grams": quantity.Gram, "gramm": quantity.Gram,
		"oz": quantity.Ounce, "floz": quantity.FluidOunce, "fl.oz": quantity.FluidOunce, "fl.oz.": quantity.FluidOunce,
		"ml": quantity.Millilitre, "cc": quantity.Millilitre, "l": quantity.Litre, "liter": quantity.Litre, "litre": quantity.Litre, "litres": quantity.Litre, "liters": quantity.Litre, "litros": quantity.Litre,
		"°c": quantity.DegreeCelsius, "ºc": quantity.DegreeCelsius, "c": quantity.DegreeCelsius, "degc": quantity.DegreeCelsius, "celsius": quantity.DegreeCelsius,
		"°f": quantity.DegreeFahrenheit, "ºf": quantity.DegreeFahrenheit, "f": quantity.DegreeFahrenheit, "degf": quantity.DegreeFahrenheit, "fahrenheit": quantity.DegreeFahrenheit,
		"mmol/l": quantity.MillimolePerLitre, "mmol": quantity.MillimolePerLitre, "mmol.l-1": quantity.MillimolePerLitre, "mmoll-1": quantity.MillimolePerLitre,
		"meq/l": quantity.MillimolePerLitre, "mm": quantity.MillimolePerLitre, "mval/l": quantity.MillimolePerLitre,
		"mg/l": quantity.MilligramPerLitre, "ppm": quantity.MilligramPerLitre,
		"min": quantity.Minute, "mins": quantity.Minute, "minutes": quantity.Minute, "minuten": quantity.Minute, "minutos": quantity.Minute, "mn": quantity.Minute,
		"h": quantity.Hour, "hr": quantity.Hour, "hrs": quantity.Hour, "hours": quantity.Hour, "std": quantity.Hour, "horas": quantity.Hour, "heures": quantity.Hour, "stunden": quantity.Hour,
		"m": quantity.Metre, "cm": quantity.Centimetre, "in": quantity.Inch, "inches": quantity.Inch, "ft": quantity.Foot, "feet": quantity.Foot,
		"m/s": quantity.MetrePerSecond, "m.s-1": quantity.MetrePerSecond, "km/h": quantity.KilometrePerHour, "kph": quantity.KilometrePerHour, "mph": quantity.MilePerHour,
		"w": quantity.Watt, "watt": quantity.Watt, "watts": quantity.Watt, "%": quantity.PerCent, "kcal": quantity.Kilocalorie, "mosm/kg": quantity.MilliosmolePerKilogram,
		"mosmol/kg": quantity.MilliosmolePerKilogram, "mosm/kgh2o": quantity.MilliosmolePerKilogram,
	}
}

// unitOf reads a unit as a heading gives it.
func unitOf(text string) (quantity.Unit, bool) {
	text = strings.ToLower(strings.NewReplacer(" ", "", "\u00a0", "", "·", ".", "⁻", "-", "¹", "1", "*", ".").Replace(text))
	u, ok := unitNames()[strings.Trim(text, "[](){}")]
	return u, ok
}
