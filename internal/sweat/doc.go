// Package sweat works out one field sweat test: what was lost, what was drunk,
// what was left over, how much sodium went with it, and how sure each figure is.
//
// # The balance
//
// [Evaluate] takes one sheet ([Input]), whole or partly filled, and adds up
// kilograms (Baker 2017, Sports Medicine 47(S1):111, table 3):
//
//	sweat loss = mass before - mass after + drinks + food - urine - stool
//	             - respiratory water - gas exchange   (where they are switched on)
//
// One kilogram is one litre of sweat. Drinks are weighed in grams and become
// millilitres by their density; food enters with its whole mass. Kit that was on
// the scale is taken off by its own mass, dry before and wet after, which adds
// the sweat it trapped. Sweat rate divides by the elapsed time. The deficit at
// the end is what the body mass lost less gas exchange: respiratory water is
// fluid lost, carbon dioxide less oxygen is mass but not fluid.
//
// Respiratory water follows Mitchell, Nadel, Stolwijk 1972 and needs oxygen
// uptake and vapour pressure; gas exchange needs the exchange ratio. Where only
// energy is known both together are 0.20 g per kcal (Cheuvront & Montain 2017).
// They are on by rule past two hours, hard, or dry, if the effort is known.
//
// # Sodium
//
// A patch is local. Only the dorsal forearm (Baker et al. 2016), the thigh and
// the five-site mean (Baker et al. 2009) have an equation here that carries it to
// the whole body; patches on one site are averaged first, sites after their
// equations. That second average is a proposal of this program and said so
// beside the figure. Any other site stays raw, with its published bias and limits
// (Baker et al. 2020), and gives a range without a single value. Detached and
// saturated patches are left out and shown.
//
// # Known, provisional, refused
//
// A figure is known as soon as it can be computed, and has a range once all it
// is based on is in; until then it is provisional. Missing things come with what
// they may do to the loss. A value beyond its limit is refused, named as an
// [evidence.Problem], and not used unless somebody kept it with a reason.
//
// # How sure
//
// Every figure carries the 95 % range of the measurement, its budget, and a
// "why" whose formula gives the value again from the inputs it lists. A bottle
// that others drank from is carried as two ends, not as a spread. Below 18 °C an
// uncorrected balance reads high and its range is wider. [PlannedRate] adds the
// spread from one like day to the next, which a plan needs and a measurement
// does not have; [Compare] asks whether two tests really differ.
//
// # Beside the figures
//
// [PlaceIn] puts a value in a published group, approximately. [OverDrinking]
// predicts plasma sodium (Nguyen and Kurtz, body water after Watson et al. 1980)
// as a caution for adults, never a diagnosis. Urine markers are context, with
// the set of bands they were read by. Nothing here writes sentences: results
// carry codes, listed by [Codes].
//
// Units: kg, g, L, mL, min, mmol/L, mg of sodium (22.990 mg a mmol), kPa, °C.
package sweat
