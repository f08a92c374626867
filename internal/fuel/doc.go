// Package fuel knows what drinks and foods hold, and what the literature
// advises to take before, during and after a session.
//
// Begin with [Generic], the catalogue that comes with the program, or with a
// [Product] of the practice. An [Amount] is a product by mass, by volume or
// by portion; a powder becomes a drink with [Product.MadeUp], several
// ingredients with [Recipe.Drink]. [Mix] adds amounts up to a [Mixture]:
//
//	fluid         the volume of what is drunk, L; its water and the water in
//	              foods beside it, since a litre of a 6 % drink is 0.95 L of
//	              water
//	carbohydrate  available carbohydrate, g: total less fibre
//	split         glucose family, fructose family, and what no analysis
//	              assigns; sucrose is half and half by mass
//	sodium        mg, 22.990 mg to the mmol; added salt is sodium chloride
//	strength      carbohydrate of the drinks, g per 100 mL of what is drunk
//	osmolality    an ideal sum of what is dissolved: an estimate; a stated
//	              value goes before it
//
// What a table leaves empty stays unknown: a [Total] counts the items that
// are missing from it, and no cell is read as zero.
//
// The advice ([CarbohydrateDuring], [BeforeFourHours], [After], …) comes back
// as an [Advice]: a code, a range, a unit and the ids of the evidence entries
// it is based on (ACSM/AND/DC 2016; ACSM 2007; Jeukendrup 2014; McCartney et al.
// 2017). Carbohydrate during a session is per hour, never per kilogram.
// Nothing here words a sentence.
package fuel
