package sweat

import (
	"math"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// Why a patch gives no single figure.
const (
	LeftDetached    = "patch.detached"
	LeftSaturated   = "patch.saturated"
	LeftRefused     = "patch.refused"     // its value is beyond the limits
	LeftWaiting     = "patch.waiting"     // for the laboratory
	LeftTimes       = "patch.times"       // off before on
	LeftNoEquation  = "patch.no-equation" // raw, with bias and limits: a range only
	LeftNoAgreement = "patch.no-agreement"
	LeftFiveSite    = "patch.five-site" // the five-site mean holds it already
)

// PatchResult is what one patch gave.
type PatchResult struct {
	Item int
	Site evidence.Site
	Side string
	// Used is true when the patch is in the whole-body concentration.
	Used bool
	// Reason it is left out, a code; empty when used.
	Reason string
	// Raw is the value of the laboratory, mmol/L; zero while waiting.
	Raw float64
	// Predicted is the whole-body concentration from this patch alone, mmol/L;
	// only a range where the site has no equation.
	Predicted figure.Figure
	// Agreement are the published bias and limits of the site; zero when there
	// are none.
	Agreement evidence.SiteAgreement
	// Band of a raw dorsal-forearm value, a code; empty for other sites.
	Band string
}

// patch is a patch that can be calculated with.
type patch struct {
	index int // in the input
	raw   term
	row   evidence.SiteAgreement
	// site tells the sites apart as sources of error.
	site int
}

// concentration is sodium in the sweat of the whole body.
type concentration struct {
	results []PatchResult
	// known: there is at least one equation site; t is the concentration.
	known bool
	t     term
	// spans are the ranges of sites without an equation, when known is false.
	spans     []span
	in        bool // nothing is still at the laboratory
	sites     []evidence.Site
	methods   []evidence.Method
	notes     []figure.Note
	sources   []string
	perSite   int // fewest patches on one site used
	potassium term
}

// span is a site without an equation: its raw value less the published bias.
type span struct {
	t     term
	notes []figure.Note
}

// concentration reads the patches and combines what may be combined.
func (s *sheet) concentration() concentration {
	rows := evidence.SiteAgreements()
	c := concentration{in: true, potassium: constant("potassium", evidence.SweatPotassium, quantity.MillimolePerLitre)}
	var used []patch
	for i := range s.in.Patches {
		r, p, ok := s.readPatch(i, rows, &c)
		c.results = append(c.results, r)
		if ok {
			used = append(used, p)
			c.single(s, p)
		}
	}
	used = fiveSiteAlone(used, c.results)
	c.combine(s, rows, used)
	c.takePotassium(s)
	return c
}

// readPatch checks one patch; ok when its raw value can be used somehow.
func (s *sheet) readPatch(i int, rows []evidence.SiteAgreement, c *concentration) (r PatchResult, p patch, ok bool) {
	in := s.in.Patches[i]
	r = PatchResult{Item: i + 1, Site: in.Site, Side: in.Side}
	if in.Sodium != nil {
		if x := float64(*in.Sodium); finite(x) {
			r.Raw = x
		}
	}
	raw, okRaw := read(&s.check, evidence.PatchSodium, i+1, in.Sodium)
	times := s.patchTimes(i+1, in)
	site := slices.IndexFunc(rows, func(row evidence.SiteAgreement) bool { return row.Site == in.Site })
	if site >= 0 {
		r.Agreement = rows[site]
	}
	switch {
	case in.Condition == Detached:
		r.Reason = LeftDetached
	case in.Condition == Saturated:
		r.Reason = LeftSaturated
	case !times:
		r.Reason = LeftTimes
	case in.Sodium == nil:
		r.Reason = LeftWaiting
		c.in = false
		s.miss(Missing{ID: MissingSodium, Item: i + 1})
	case !okRaw:
		r.Reason = LeftRefused
	case site < 0:
		r.Reason = LeftNoAgreement
	default:
		if !rows[site].Equation {
			r.Reason = LeftNoEquation
		}
		p = patch{index: i, row: rows[site], site: site, raw: s.rawTerm(i, raw)}
		ok = true
	}
	if in.Site == evidence.ForearmDorsal && okRaw {
		r.Band = evidence.ForearmBand(raw)
	}
	return r, p, ok
}

// patchTimes checks the times of a patch; false when it came off before it
// went on.
func (s *sheet) patchTimes(item int, in Patch) bool {
	on, ok1 := read(&s.check, evidence.PatchOn, item, in.On)
	off, ok2 := read(&s.check, evidence.PatchOff, item, in.Off)
	if ok1 && ok2 && off <= on {
		s.check.refuse(evidence.PatchOff, item, off)
		return false
	}
	return true
}

// rawTerm is the value of the laboratory with its error. The error of a method
// is taken as common to all patches measured by it, so it does not average
// out; one that the laboratory states is taken as the patch's own.
func (s *sheet) rawTerm(i int, raw float64) term {
	in := s.in.Patches[i]
	cv, _ := evidence.MethodCV(in.Method)
	// Patches by one method share its error: they carry the item of the first.
	first := slices.IndexFunc(s.in.Patches, func(p Patch) bool { return p.U == nil && p.Method == in.Method })
	u, from := cv*raw, uncertainty.Source{Name: SourceLaboratory, Item: first}
	if given, ok := read(&s.check, evidence.LaboratoryU, i+1, in.U); ok {
		u, from.Item = given, i
	}
	name := numbered("patch", i, len(s.in.Patches))
	return symbol(name, uncertainty.Measured(raw, u, from), quantity.MillimolePerLitre)
}

// fiveSiteAlone keeps only a five-site mean where there is one: it holds the
// forearm and the thigh already.
func fiveSiteAlone(list []patch, results []PatchResult) []patch {
	is := func(p patch) bool { return p.row.Site == evidence.FiveSiteMean }
	if !slices.ContainsFunc(list, is) {
		return list
	}
	var kept []patch
	for _, p := range list {
		if is(p) {
			kept = append(kept, p)
		} else if results[p.index].Reason == "" {
			results[p.index].Reason = LeftFiveSite
		}
	}
	return kept
}

// combine averages the predictions of the equation sites, which is our own
// proposal and said so: what is published is the five-site mean. Without an
// equation site it keeps the ranges of the others.
func (c *concentration) combine(s *sheet, rows []evidence.SiteAgreement, used []patch) {
	var sites []term
	for _, row := range rows {
		group := at(row.Site, used)
		if len(group) == 0 {
			continue
		}
		if !row.Equation {
			for _, p := range group {
				c.spans = append(c.spans, span{p.uncorrected(), p.notes(s)})
			}
			continue
		}
		sites = append(sites, c.site(s, row, group))
	}
	if len(sites) == 0 {
		return
	}
	c.known, c.spans = true, nil
	c.t = mean(sites)
	if len(sites) > 1 {
		c.notes = append(c.notes, figure.Note{ID: NoteSitesAveraged})
	}
	if len(c.methods) > 1 {
		c.notes = append(c.notes, figure.Note{ID: NoteMethodsMixed})
	}
}

// at lists the patches of a site.
func at(site evidence.Site, list []patch) []patch {
	var group []patch
	for _, p := range list {
		if p.row.Site == site {
			group = append(group, p)
		}
	}
	return group
}

// site is the whole-body prediction of one equation site from its patches.
func (c *concentration) site(s *sheet, row evidence.SiteAgreement, group []patch) term {
	raws := make([]term, len(group))
	for i, p := range group {
		raws[i] = p.raw
		c.results[p.index].Used = true
		c.notes = append(c.notes, p.notes(s)...)
		if m := s.in.Patches[p.index].Method; !slices.Contains(c.methods, m) {
			c.methods = append(c.methods, m)
		}
	}
	c.notes = append(c.notes, spreadNote(group)...)
	c.sites = append(c.sites, row.Site)
	c.sources = append(c.sources, row.EquationID)
	if c.perSite == 0 || len(group) < c.perSite {
		c.perSite = len(group)
	}
	return withEquationError(predict(row, mean(raws)), row, group)
}

// predict is slope times raw plus intercept, under symbols of the site's own.
func predict(row evidence.SiteAgreement, raw term) term {
	name := siteSymbol(row.Site)
	return constant("slope"+name, row.Slope, quantity.None).times(raw).
		plus(constant("intercept"+name, row.Intercept, quantity.MillimolePerLitre))
}

// siteSymbol is the name of a site inside a formula.
func siteSymbol(s evidence.Site) string {
	switch s {
	case evidence.Thigh:
		return "thigh"
	case evidence.FiveSiteMean:
		return "five"
	}
	return "forearm"
}

// withEquationError adds what the equation leaves open. The value stays as its
// equation was published; the bias that was found later moves the range (our
// proposal). The published limits are those of a single patch and hold its local
// spread; several patches on one site average that part away and share the rest.
func withEquationError(t term, row evidence.SiteAgreement, group []patch) term {
	t.q = t.q.Shifted(-row.Bias)
	whole := row.Limits / evidence.CoverageFactor
	equation := uncertainty.Source{Name: SourceEquation, Item: group[0].site}
	if len(group) == 1 {
		return t.with(whole, equation)
	}
	n := float64(len(group))
	local := 0.0
	for _, p := range group {
		u := min(whole, localU(row, p.raw.q.Value()))
		local += u * u / n
		t = t.with(u/n, uncertainty.Source{Name: SourceSite, Item: p.index})
	}
	return t.with(math.Sqrt(max(0, whole*whole-local)), equation)
}

// localU is the spread of patches on one site after the equation, mmol/L.
func localU(row evidence.SiteAgreement, raw float64) float64 {
	return row.Slope * evidence.LocalSodiumCV * raw
}

// single makes the figure of one patch alone.
func (c *concentration) single(s *sheet, p patch) {
	r := &c.results[p.index]
	k := kind{quantity.MillimolePerLitre, 0, true}
	if p.row.Equation {
		r.Predicted = withEquationError(predict(p.row, p.raw), p.row, []patch{p}).figure(k, p.row.EquationID)
	} else {
		r.Predicted = rangeOnly([]term{p.uncorrected()}, k, "sodium.site."+string(p.row.Site)+".raw-bias")
	}
	r.Predicted.Why.Notes = p.notes(s)
}

// uncorrected is the raw value less the published bias of its site, with the
// published limits; the limits hold the error of the laboratory.
func (p patch) uncorrected() term {
	t := constant("raw", p.raw.q.Value(), quantity.MillimolePerLitre).
		minus(constant("bias", p.row.RawBias, quantity.MillimolePerLitre))
	return t.with(p.row.RawLimits/evidence.CoverageFactor, uncertainty.Source{Name: SourceEquation, Item: p.site})
}

// rangeOnly is a figure without a single value: the range over all terms.
func rangeOnly(list []term, k kind, sources ...string) figure.Figure {
	f := figure.Figure{Unit: k.unit, Why: figure.Why{Sources: sources, Notes: []figure.Note{{ID: NoteRangeOnly}}}}
	if !k.in || len(list) == 0 {
		return f
	}
	f.Range = list[0].q.Interval()
	for _, t := range list {
		r := t.q.Interval()
		f.Range = quantity.Range{Low: min(f.Range.Low, r.Low), High: max(f.Range.High, r.High)}
	}
	f.Range.Low, f.Range.High = max(k.from, f.Range.Low), max(k.from, f.Range.High)
	f.Ranged = finite(f.Range.Low, f.Range.High)
	if !f.Ranged {
		f.Range = quantity.Range{}
		return f
	}
	f.Why.Inputs, f.Why.Budget = list[0].in, shares(list[0].q)
	return f
}

// takePotassium is the mean of the potassium measured, where there is any; it
// is used as it is, no equation for it being known here.
func (c *concentration) takePotassium(s *sheet) {
	var list []term
	for i, p := range s.in.Patches {
		x, ok := read(&s.check, evidence.PatchPotassium, i+1, p.Potassium)
		if ok && p.Condition != Detached && p.Condition != Saturated {
			list = append(list, constant(numbered("potassium", i, len(s.in.Patches)), x, quantity.MillimolePerLitre))
		}
	}
	if len(list) > 0 {
		c.potassium = mean(list)
	}
	c.potassium = c.potassium.with(evidence.SweatPotassiumSD, uncertainty.Source{Name: SourcePotassium})
}
