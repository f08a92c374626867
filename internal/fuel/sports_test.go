package fuel

import "testing"

// What is made for sport is in the catalogue; what is eaten at any table is not of it.
func TestMadeForSport(t *testing.T) {
	c, err := Generic()
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, p := range c.Products() {
		if MadeForSport(p) {
			n++
		}
	}
	if n != 13 {
		t.Errorf("%d products are made for sport, want 13: an id of the list is not in the catalogue", n)
	}
	for _, id := range []string{"generic.water", "generic.banana", "generic.salt", "generic.cola"} {
		if p, ok := c.Find(id); !ok || MadeForSport(p) {
			t.Errorf("%s: in the catalogue %v, made for sport %v", id, ok, MadeForSport(p))
		}
	}
	if !MadeForSport(Product{ID: "own", Form: Gel}) {
		t.Error("a gel of one's own is not made for sport")
	}
}
