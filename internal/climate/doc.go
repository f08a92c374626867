// Package climate says how hot a session is, which of an athlete's tests still
// holds for it, and what to expect where none does.
//
// Air is [Weather]: temperature, humidity, wind at the body, a word for the
// sun, altitude. From it come vapour pressure and dew point ([Air]) and the wet
// bulb globe temperature ([WeatherWBGT], Liljegren et al. 2008), with its bands
// ([BandOf], ACSM 2007).
//
// Effort is metabolic rate, external work and air past the body, best from
// power ([CyclingEffort], [RowingEffort]), then running speed
// ([RunningEffort]), then the table of [Activities], last a rating
// ([RatedEffort]).
//
// [StrainInput] goes through ISO 7933:2004, minute by minute. Most sport lies
// outside the work it was made for, so it serves as an extrapolated caution
// ([HeatCaution]) and never as a sweat rate.
//
// The estimate is a steady heat balance with the coefficients of ISO 7933:
//
//	Ereq = M - W - Cres - Eres - C - R      evaporation needed, W/m²
//	Emax = (psk - pa) / Rt                  evaporation possible, W/m²
//	w    = Ereq / Emax                      skin wettedness needed
//	SW0  = Ereq A / (0.674 (1 - w²/2))      g/h, at least 100 A
//	f    = 1 - (10/T) (1 - exp(-T/10))      onset over T minutes
//	rate = SW0 f
//
// [Calculate] does it for one session. [TestSet] holds an athlete's tests against
// it: [TestSet.Estimate] gives a rate with its 95 % range, what it is based on, how
// far each test covers the planned session ([Coverage]), and when to test there.
//
// [Places] is the climate by city and month, [Acclimatise] the days of a stop
// in the heat, [Pack] the arithmetic of what to take.
//
// Everything is a pure function of plain values. A code ("near", "in-water")
// stands where a person reads a sentence; the sentences live elsewhere. An
// impossible value comes back as an [evidence.Problem].
package climate
