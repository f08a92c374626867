package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
)

// bottled spreads drinks over takes that are filled with as many mL in all.
func bottled(p *Planner, takes []Take, ml [Drinks]float64) (*bottling, []int) {
	whole := 0.0
	for _, v := range ml {
		whole += v
	}
	p.gut().fill(takes, whole, evidence.FillMost)
	var b bottling
	b.put(takes, evidence.FillMost)
	drinks := p.bySweetness(ml, nil)
	b.stand(drinks, ml)
	return &b, drinks
}

// The drink with most carbohydrate comes first, water last; of two alike the later on
// the menu; one of which there is nothing not at all.
func TestSweetestFirst(t *testing.T) {
	p := courtPlanner(t) // 6 %, a home drink, cola
	order := func(ml [Drinks]float64) []int { return p.bySweetness(ml, nil) }
	if got := order([Drinks]float64{100, 100, 100, 100}); len(got) != 4 || got[0] != int(Drink3) || got[3] != int(Water) {
		t.Errorf("%v", got)
	}
	if got := order([Drinks]float64{100, 0, 100}); len(got) != 2 || got[0] != int(Drink2) || got[1] != int(Water) {
		t.Errorf("without the 6 %%: %v", got)
	}
	p.menu[Drink2] = p.menu[Drink1]
	if got := order([Drinks]float64{0, 100, 100}); len(got) != 2 || got[0] != int(Drink2) {
		t.Errorf("two alike: %v", got)
	}
}

// Chances stand in the order in which bottles are given out: certain ones first, of
// them the longest, of those the earlier.
func TestOrderOfChances(t *testing.T) {
	var b bottling
	b.put([]Take{
		{Chance: Chance{Minute: 10, Seconds: 60}, even: 10}, {Chance: Chance{Minute: 20, Seconds: 900, Certainty: Maybe}, even: 20},
		{Chance: Chance{Minute: 30, Seconds: 120}, even: 30}, {Chance: Chance{Minute: 40, Seconds: 60}, even: 40}, {Chance: Chance{Minute: 50, Seconds: 120}, even: 50},
	}, evidence.FillMost)
	for i, want := range []int{2, 4, 0, 3, 1} {
		if b.order[i] != want {
			t.Fatalf("order %v", b.order)
		}
	}
	for i, want := range []float64{0, 30, 80, 90, 130, 150} { // what stands there up to each
		if b.even[i] != want {
			t.Errorf("even %v", b.even)
		}
	}
	for i, want := range []float64{0, 336, 672, 840, 1008, 1508} { // 0.35 x 120 x 8, 0.35 x 60 x 8, 500
		if math.Abs(b.most[i]-want) > 1e-9 {
			t.Errorf("most %v", b.most)
		}
	}
}

// Drinks at chances of one kind lie evenly in time: after each chance every drink has
// had its share of those until then, but for less than one.
func TestAlikeChancesAreMingled(t *testing.T) { //nolint:gocognit // a property of every chance and drink
	mixed := 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := newPlanner(t, courtBasis(), courtSession(), fullMenu(t), Aim{})
		var takes []Take
		n := 3 + d.IntN(12)
		for i := range n {
			takes = append(takes, Take{Chance: Chance{Minute: 5 + 100*float64(i)/float64(n), Seconds: 90}})
		}
		var ml [Drinks]float64
		for s := range 2 + d.IntN(Drinks-1) {
			ml[s] = d.between(50, 600)
		}
		b, drinks := bottled(p, takes, ml)
		var parts, had [Drinks]float64
		for i := range takes {
			if takes[i].bottles() != 1 {
				t.Fatalf("%d bottles at chance %d", takes[i].bottles(), i)
			}
			for s, stands := range takes[i].stands {
				if stands {
					parts[s]++
				}
			}
		}
		if len(b.order) != n {
			t.Fatalf("%d of %d chances", len(b.order), n)
		}
		for j := range takes {
			for _, s := range drinks {
				if takes[j].stands[s] {
					had[s]++
				}
				share := parts[s] * float64(j+1) / float64(n)
				if math.Abs(had[s]-share) >= 1.5 || len(drinks) == 2 && math.Abs(had[s]-share) >= 1 {
					t.Fatalf("drink %d: %g of %g chances after %d of %d", s, had[s], parts[s], j+1, n)
				}
			}
		}
		if parts[drinks[0]] > 1 && parts[drinks[len(drinks)-1]] > 1 {
			mixed++
		}
	})
	if mixed == 0 {
		t.Error("no draw mingled two drinks")
	}
}

// Three of nine breaks alike have the drink: the second, the fifth and the eighth;
// halves take turns, the drink first.
func TestMingledByHand(t *testing.T) {
	for _, c := range []struct {
		ends  [Drinks]int
		first int
		want  string
	}{
		{[Drinks]int{3, 9}, 0, "wdwwdwwdw"}, {[Drinks]int{3, 6}, 0, "dwdwdw"},
		{[Drinks]int{3, 7}, 1, "wdwwdw"}, {[Drinks]int{0, 4}, 0, "wwww"}, {[Drinks]int{4, 4}, 0, "dddd"},
		{[Drinks]int{1, 6}, 0, "wdwwww"}, {[Drinks]int{5, 6}, 0, "ddwddd"}, {[Drinks]int{3, 10}, 0, "wdwwdwwdww"},
	} {
		var b bottling
		end := c.ends[1]
		for i := range end {
			b.takes, b.order = append(b.takes, Take{}), append(b.order, i)
		}
		b.mingle([]int{int(Drink1), int(Water)}, c.ends, c.first, end)
		got := ""
		for i := c.first; i < end; i++ {
			if b.takes[i].stands[Drink1] {
				got += "d"
			}
			if b.takes[i].stands[Water] {
				got += "w"
			}
		}
		if got != c.want {
			t.Errorf("%v from %d: %s, want %s", c.ends, c.first, got, c.want)
		}
	}
}

// Of all ways to part the chances among two drinks the one is taken whose most strained
// drink is strained least; and none that lets a drink stand where it cannot be carried,
// as long as there is another.
func TestChancesArePartedEvenly(t *testing.T) {
	two := 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := newPlanner(t, courtBasis(), courtSession(), fullMenu(t), Aim{})
		var takes []Take
		n := 2 + d.IntN(6)
		for i := range n {
			takes = append(takes, Take{Chance: Chance{
				Minute: 30 + 70*float64(i)/float64(n), Seconds: oneOf(d, 30.0, 60, 120, 600), Certainty: oneOf(d, Certain, Certain, Maybe),
			}})
		}
		ml := [Drinks]float64{Water: d.between(20, 700), Drink1: d.between(20, 700)}
		b, drinks := bottled(p, takes, ml)
		var ends [Drinks]int
		b.cut(drinks, ml, &ends)
		if ends[1] != n {
			t.Fatalf("ends %v of %d", ends, n)
		}
		carried := func(drink, begin, end int) bool { return ml[drink] <= b.most[end]-b.most[begin] }
		strained := func(drink, begin, end int) float64 { return ml[drink] / (b.even[end] - b.even[begin]) }
		at := func(k int) (bool, float64) {
			return carried(drinks[0], 0, k) && carried(drinks[1], k, n), max(strained(drinks[0], 0, k), strained(drinks[1], k, n))
		}
		ok, worst := at(ends[0])
		for k := 1; k < n; k++ {
			other, strain := at(k)
			if other && !ok {
				t.Fatalf("parted at %d, where a drink is not carried; at %d both are: %v", ends[0], k, ml)
			}
			if other && strain < worst*(1-0.05) {
				t.Fatalf("parted at %d with a strain of %g; at %d it is %g", ends[0], worst, k, strain)
			}
			if ok {
				two++
			}
		}
	})
	if two == 0 {
		t.Error("no drink was carried")
	}
}

// Where neither way carries a drink, the one that lacks less is the lesser strain; a
// drink of which there is nothing strains nothing.
func TestStrain(t *testing.T) {
	var b bottling
	b.put([]Take{
		{Chance: Chance{Minute: 1, Seconds: 8}, even: 30}, {Chance: Chance{Minute: 2, Seconds: 8}, even: 30}, {Chance: Chance{Minute: 3, Seconds: 8}, even: 30},
	}, evidence.FillMost)
	if none := b.strain(0, 0, 0); none != 0 {
		t.Errorf("nothing strains by %g", none)
	}
	one, two := b.strain(200, 0, 1), b.strain(200, 0, 2) // 64 and 128 mL are carried
	if last := b.strain(200, 1, 3); !(one > two) || last != two {
		t.Errorf("136 mL lack: %g; 72 mL: %g and %g", one, two, last)
	}
	if carried := b.strain(190, 0, 3); !(carried < two/1000) {
		t.Errorf("carried: %g, not carried: %g", carried, two)
	}
	if exact := b.strain(128, 0, 2); exact >= notCarried {
		t.Errorf("what is just carried: %g", exact)
	}
	b.even[3] = b.even[2] // as where nothing was lost yet
	if nothing := b.strain(50, 2, 3); nothing >= notCarried {
		t.Errorf("a chance that is filled with nothing: %g", nothing)
	}
	b.even[3] = 90
	if half, full := b.strain(60, 1, 3), b.strain(120, 1, 3); math.Abs(full-2*half) > 1e-9 || math.Abs(half-60.0/61) > 1e-9 {
		t.Errorf("60 and 120 mL where 60 stand evenly: %g and %g", half, full)
	}
}
