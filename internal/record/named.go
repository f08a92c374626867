package record

// ProductsNamed are the ids of the products that records name: what is usual for an
// athlete, what stands on a sheet, in the options of a plan and in the bag of a trip.
func ProductsNamed(athletes []Athlete, tests []Test, plans []Plan, trips []Trip) map[ID]bool {
	named := map[ID]bool{}
	for _, a := range athletes {
		named[a.Habit.DrinkID], named[a.Habit.FoodID] = true, true
	}
	for _, t := range tests {
		for _, x := range t.Bottles {
			named[x.ProductID] = true
		}
		for _, x := range t.Foods {
			named[x.ProductID] = true
		}
	}
	for _, p := range plans {
		for _, o := range p.Options {
			for _, x := range o.Items {
				named[x.ProductID] = true
			}
		}
	}
	for _, t := range trips {
		for _, x := range t.Supplies {
			named[x.ProductID] = true
		}
	}
	delete(named, "")
	return named
}
