package consult

import (
	"testing"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestADraftOpensOnWhatIsProposedFirst: on the option without food where the aim comes to as
// much and with food it does not, else on the one with food.
func TestADraftOpensOnWhatIsProposedFirst(t *testing.T) {
	option := func(kind record.OptionKind, water, gels, salt float64) record.Option {
		return record.Option{Meta: record.Meta{ID: record.ID(kind)}, Kind: kind, Salt: record.Num(salt, quantity.Gram), Items: []record.Item{
			{ProductID: "water", Volume: record.Num(water, quantity.Millilitre)}, {ProductID: "gel", Portions: record.Num(gels, quantity.Portion)},
		}}
	}
	food, fluid := option(record.OptionFood, 600, 1, 0), option(record.OptionFluid, 900, 0, 0)
	for name, c := range map[string]struct {
		options []record.Option
		want    record.OptionKind
	}{
		"without food":                   {[]record.Option{food, fluid, option(record.OptionAim, 900, 0, 0)}, record.OptionFluid},
		"so, and nothing eaten is none":  {[]record.Option{food, fluid, {Meta: record.Meta{ID: "aim"}, Kind: record.OptionAim, Items: fluid.Items[:1]}}, record.OptionFluid},
		"with food":                      {[]record.Option{food, fluid, option(record.OptionAim, 600, 1, 0)}, record.OptionFood},
		"with salt beside":               {[]record.Option{food, fluid, option(record.OptionAim, 900, 0, 0.5)}, record.OptionFood},
		"another amount":                 {[]record.Option{food, fluid, option(record.OptionAim, 850, 0, 0)}, record.OptionFood},
		"one more than it":               {[]record.Option{food, fluid, option(record.OptionAim, 900, 0.5, 0)}, record.OptionFood},
		"both alike":                     {[]record.Option{option(record.OptionFood, 900, 0, 0), fluid, option(record.OptionAim, 900, 0, 0)}, record.OptionFood},
		"no aim":                         {[]record.Option{food, fluid}, record.OptionFood},
		"nothing without food":           {[]record.Option{food, option(record.OptionAim, 900, 0, 0)}, record.OptionFood},
		"nothing with food, and the aim": {[]record.Option{fluid, option(record.OptionAim, 900, 0, 0)}, record.OptionFluid},
	} {
		if got, ok := InForce(record.Plan{Options: c.options}); !ok || got.Kind != c.want {
			t.Errorf("%s: %q", name, got.Kind)
		}
	}
}
