package trip

import (
	"context"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// packJob is all that a traveller's packing list is worked out from, beside the
// window's thread.
type packJob struct {
	member    *member
	trip      record.Trip
	traveller *consult.Traveller
	places    climate.Places
	desk      consult.Setup
}

// packed is a traveller's packing list; unplanned, uncertain and undated are the places
// of the stops that are not, with water only, or not whole in it.
type packed struct {
	member                        *member
	list                          climate.PackingList
	unplanned, uncertain, undated []int
	err                           error
}

// packJobs readies the lists of one traveller, or of everybody. Each job has tests of
// its own to work out, once for all stops, since it does not run on the window's
// thread.
func (v *View) packJobs(whose string) []packJob {
	d := v.desk.Calculate()
	d.Start = nil // it reads the data file; without a test there is no plan to pack for
	var jobs []packJob
	for _, m := range v.crew() {
		if whose == everybody || whose == string(m.athlete.ID) {
			jobs = append(jobs, packJob{member: m, trip: v.now(), traveller: v.traveller(m, d), places: v.places, desk: d})
		}
	}
	return jobs
}

// packAll works lists out, until it is stopped.
func packAll(ctx context.Context, jobs []packJob) []packed {
	var made []packed
	for _, j := range jobs {
		if ctx.Err() != nil {
			return made
		}
		made = append(made, j.pack())
	}
	return made
}

// pack works one list out.
func (j packJob) pack() packed {
	out := packed{member: j.member}
	var stops []consult.StopPlan
	for i, s := range j.trip.Stops {
		there, err := j.traveller.Plan(consult.WithHeatDay(j.trip, s, j.places))
		if err != nil || !there.Planned {
			out.unplanned = append(out.unplanned, i)
			continue
		}
		if there.Length == 0 {
			out.undated = append(out.undated, i)
		}
		if there.TooUncertain() {
			out.uncertain = append(out.uncertain, i)
		}
		stops = append(stops, there)
	}
	out.list, out.err = consult.PackTrip(stops, j.trip.Supplies, marginOf(j.trip), j.desk)
	return out
}

// packFor is the packing list of a traveller, at once: for a page.
func (v *View) packFor(m *member) packed {
	made := packAll(context.Background(), v.packJobs(string(m.athlete.ID)))
	if len(made) == 0 {
		return packed{member: m}
	}
	return made[0]
}

// sumOf adds lists up.
func sumOf(made []packed) climate.PackingList {
	var lists []climate.PackingList
	for _, one := range made {
		lists = append(lists, one.list)
	}
	return climate.SumPacking(lists...)
}

// lackingOf says what keeps a stop from being packed for.
func (v *View) lackingOf(p packed) (list []string) {
	sp, t := v.speaker(p.member), v.now()
	names := func(places []int) string {
		var list []string
		for _, i := range places {
			list = append(list, shortPlace(sp, t.Stops[i], i))
		}
		return sp.Words.List(list)
	}
	if len(p.unplanned) > 0 {
		list = append(list, sp.Words.Say("trip.packing.unplanned", p.member.athlete.Name, names(p.unplanned)))
	}
	if len(p.uncertain) > 0 {
		list = append(list, sp.Words.Say("trip.packing.uncertain", p.member.athlete.Name, names(p.uncertain)))
	}
	if len(p.undated) > 0 {
		list = append(list, sp.Words.Say("trip.packing.open", p.member.athlete.Name, names(p.undated)))
	}
	if p.err != nil {
		list = append(list, sentences(sp, p.err))
	}
	return list
}
