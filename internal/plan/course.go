package plan

// Point is the deficit at a minute of the session.
type Point struct {
	Minute float64
	// DeficitL in L and Deficit in % of body mass.
	DeficitL, Deficit Ranged
}

// Course appends the deficit over time to buf: a line from point to point
// that falls with the loss and rises while something is taken at a chance,
// and its range. It ends at the schedule's deficit, and bends where the rate changes
// within the session.
func (p *Planner) Course(l Length, s *Schedule, buf []Point) []Point {
	end := p.session.Minutes[l]
	taken := 0.0
	buf = append(buf, p.point(0, end, 0))
	last := 0.0
	for i := range s.Takes {
		t := &s.Takes[i]
		from := t.Chance.Minute
		until := min(end, from+t.Chance.Seconds/minutesPerHour)
		if i+1 < len(s.Takes) {
			until = min(until, s.Takes[i+1].Chance.Minute)
		}
		buf = p.to(buf, from, end, last, taken)
		last = taken
		taken += p.takenKg(t)
		buf = p.to(buf, max(from, until), end, last, taken)
		last = taken
	}
	return p.to(buf, end, end, last, taken)
}

// to appends the point at a minute, and before it the one where the rate changes,
// where that lies between the last point and this one: intake rises evenly from what
// was taken at the last point.
func (p *Planner) to(buf []Point, minute, end, was, taken float64) []Point {
	from, bend := buf[len(buf)-1].Minute, p.basis.Split.At*end
	if bend > from && bend < minute {
		buf = append(buf, p.point(bend, end, was+(taken-was)*(bend-from)/(minute-from)))
	}
	return append(buf, p.point(minute, end, taken))
}

// takenKg is the mass of drinks and foods at one chance.
func (p *Planner) takenKg(t *Take) float64 {
	sum := p.drunkKg(t)
	for f, portions := range t.Food {
		if item := &p.menu[int(Food1)+f]; item.InUse {
			sum += portions * item.Unit.massKg()
		}
	}
	return sum
}

// drunkKg is the mass of the drinks at one chance.
func (p *Planner) drunkKg(t *Take) float64 {
	sum := 0.0
	for d, ml := range t.ByDrink {
		sum += float64(ml) * p.menu[d].Unit.massKg()
	}
	return sum
}

// point is the deficit after some minutes of a session that ends at one, and some
// intake in kg.
func (p *Planner) point(minute, end, taken float64) Point {
	sweated := end / minutesPerHour * p.basis.Split.by(minute/end)
	d := p.basis.SweatRate.times(sweated).plus(p.basis.BreathLH()*minute/minutesPerHour - taken)
	return Point{Minute: minute, DeficitL: d, Deficit: d.times(100 / p.basis.Body.MassKg)}
}
