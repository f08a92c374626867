package record

import "time"

// TestState says how far a sheet is.
type TestState string

// The states of a test sheet.
const (
	TestOpen TestState = "open"
	// TestWaiting: closed but for the sodium from the laboratory.
	TestWaiting TestState = "waiting"
	TestClosed  TestState = "closed"
)

// Sun is the sun on the athlete, as people without instruments say it.
type Sun string

// The presets of sun.
const (
	SunHigh     Sun = "full-high"
	SunLow      Sun = "full-low"
	SunPart     Sun = "part-cloud"
	SunOvercast Sun = "overcast"
	SunShade    Sun = "shade"
	SunNone     Sun = "indoor-night"
)

// Dress is how the athlete stood on the scale.
type Dress string

// How the athlete stood on the scale.
const (
	DressMinimal Dress = "minimal-towelled"
	DressKit     Dress = "kit-on"
)

// Test is one test sheet.
type Test struct {
	Meta
	AthleteID ID `gorm:"index;size:36"`
	// ImportID is the import it came with; empty for one typed in.
	ImportID  ID        `gorm:"size:36"`
	State     TestState `gorm:"size:12"`
	ClosedAt  *time.Time
	ClosedBy  string
	Session   Session `gorm:"embedded"`
	Air       Air     `gorm:"embedded;embeddedPrefix:air_"`
	Scale     Scale   `gorm:"embedded;embeddedPrefix:scale_"`
	Loss      Loss    `gorm:"embedded"`
	Urine     Urine   `gorm:"embedded;embeddedPrefix:urine_"`
	Feeling   Feeling `gorm:"embedded"`
	Note      string
	Weighings []Weighing  `gorm:"foreignKey:TestID"`
	Bottles   []Bottle    `gorm:"foreignKey:TestID"`
	Foods     []FoodEaten `gorm:"foreignKey:TestID"`
	Patches   []Patch     `gorm:"foreignKey:TestID"`
	// Partway are weighings within the session; Safety is what was asked and done
	// about symptoms and a gain in mass, in the order it happened.
	Partway []PartwayWeighing `gorm:"foreignKey:TestID"`
	Safety  []SafetyNote      `gorm:"foreignKey:TestID"`
}

// Session is what was done, and when: of a test, and of a session that a group shares.
//
// A [Stop] and the [Target] of a plan hold no Session, because they say something
// else: how long and how hard a session is to be, which is not over and has no clock,
// no power and no minutes played; a stop has so many of them a day, a plan one in three
// lengths. Where they are calculated with they become one thing all the same: package
// consult makes an Outing of each, a Session in its air over its minutes.
type Session struct {
	Date     Date `gorm:"size:10"`
	Place    string
	Sport    string
	Activity string // code in the table of activities, or the athlete's word
	Start    Clock  `gorm:"size:5"`
	End      Clock  `gorm:"size:5"`
	// EndsNextDay: the session ran past midnight.
	EndsNextDay bool
	// Played is the minutes really played; rates still divide by elapsed time.
	Played Number `gorm:"embedded;embeddedPrefix:played_" unit:"min"`
	Effort Number `gorm:"embedded;embeddedPrefix:effort_"` // 0-10
	Met    Number `gorm:"embedded;embeddedPrefix:met_" unit:"MET"`
	Power  Number `gorm:"embedded;embeddedPrefix:power_" unit:"W"`    // W
	Speed  Number `gorm:"embedded;embeddedPrefix:speed_" unit:"km/h"` // km/h
	// Energy used in the whole session, as a device or a table gives it.
	Energy Number `gorm:"embedded;embeddedPrefix:energy_" unit:"kcal"` // kcal
	// UsedToHeat is whether the athlete was used to heat on that day.
	UsedToHeat Acclimatised `gorm:"size:8"`
}

// Minutes returns the elapsed time; ok is false while start or end is missing
// or the end does not lie after the start.
func (s Session) Minutes() (minutes float64, ok bool) {
	start, ok1 := s.Start.Minutes()
	end, ok2 := s.End.Minutes()
	if s.EndsNextDay {
		end += 24 * 60
	}
	if !ok1 || !ok2 || end <= start {
		return 0, false
	}
	return end - start, true
}

// At is a time of day of the session as an instant in a zone, nil for one whose clocks
// are never set: the session's day, or the next for a time that lies before the start
// of a session over midnight; ok is false while the day is not known.
func (s Session) At(c Clock, zone *time.Location) (at time.Time, ok bool) {
	day, ok1 := s.Date.Time()
	minutes, ok2 := c.Minutes()
	if !ok1 || !ok2 {
		return at, false
	}
	if zone == nil {
		zone = time.UTC
	}
	days := 0
	if start, ok := s.Start.Minutes(); ok && s.EndsNextDay && minutes < start {
		days = 1
	}
	m := int(minutes)
	return time.Date(day.Year(), day.Month(), day.Day()+days, m/60, m%60, 0, 0, zone), true
}

// Since is the minutes from the start of the session to a time of day, as they passed
// in a zone, which differs from the clocks where they were set in between; below zero
// before the start. While the day is not known it is what the clocks say.
func (s Session) Since(c Clock, zone *time.Location) (minutes float64, ok bool) {
	start, ok1 := s.Start.Minutes()
	then, ok2 := c.Minutes()
	if !ok1 || !ok2 {
		return 0, false
	}
	wall := then - start
	if s.EndsNextDay && wall < 0 {
		wall += 24 * 60
	}
	began, ok1 := s.At(s.Start, zone)
	at, ok2 := s.At(c, zone)
	if !ok1 || !ok2 {
		return wall, true
	}
	return at.Sub(began).Minutes(), true
}

// Elapsed is how long the session really was in a zone; see [Session.Since]. ok is
// false while start or end is missing, or the end is not after the start.
func (s Session) Elapsed(zone *time.Location) (minutes float64, ok bool) {
	wall, ok := s.Minutes()
	if !ok {
		return 0, false
	}
	minutes, ok = s.Since(s.End, zone)
	if s.EndsNextDay && s.End == s.Start {
		minutes = wall // a whole day
	}
	return minutes, ok && minutes > 0
}

// Air is the weather of the session.
type Air struct {
	Temperature Number `gorm:"embedded;embeddedPrefix:temperature_" unit:"°C"` // °C
	Humidity    Number `gorm:"embedded;embeddedPrefix:humidity_" unit:"%"`     // %
	Wind        Number `gorm:"embedded;embeddedPrefix:wind_" unit:"m/s"`       // m/s
	Sun         Sun    `gorm:"size:16"`
	Altitude    Number `gorm:"embedded;embeddedPrefix:altitude_" unit:"m"` // m
	Wbgt        Number `gorm:"embedded;embeddedPrefix:wbgt_" unit:"°C"`    // °C, measured
	Clothing    string `gorm:"size:24"`                                    // clothing in play
}

// Scale is how the body was weighed.
type Scale struct {
	Step   Number `gorm:"embedded;embeddedPrefix:step_" unit:"kg"` // kg
	Before Dress  `gorm:"size:20"`
	After  Dress  `gorm:"size:20"`
	// KitDry and KitWet are the clothes weighed apart, kg.
	KitDry Number `gorm:"embedded;embeddedPrefix:kit_dry_" unit:"kg"`
	KitWet Number `gorm:"embedded;embeddedPrefix:kit_wet_" unit:"kg"`
	// Other: weighed on another scale after than before.
	Other bool
}

// Moment is when a weighing was made.
type Moment string

// The moments of a weighing.
const (
	Before Moment = "before"
	After  Moment = "after"
	// Morning is a first-morning mass: today's, or one of the baseline.
	Morning Moment = "morning"
)

// Weighing is one reading of the body scale.
type Weighing struct {
	Meta
	TestID ID     `gorm:"index;size:36"`
	Moment Moment `gorm:"size:8"`
	Order  int    `gorm:"column:position"`
	Date   Date   `gorm:"size:10"`                                 // of a morning mass
	Mass   Number `gorm:"embedded;embeddedPrefix:mass_" unit:"kg"` // kg
	// At is when it was typed in, nil where nobody noted it.
	At *time.Time `gorm:"column:weighed_at"`
	// Aside: read wrongly, as a second weighing showed; on record and not used.
	Aside bool
}

// Use is what became of a bottle's contents.
type Use string

// What becomes of a bottle.
const (
	UseDrunk  Use = "drunk"
	UsePoured Use = "poured-over"
	UseShared Use = "shared"
)

// Bottle is a bottle, carton or cup: weighed before and after, or a volume.
type Bottle struct {
	Meta
	TestID    ID  `gorm:"index;size:36"`
	Order     int `gorm:"column:position"`
	ProductID ID  `gorm:"size:64"` // what is in it
	Name      string
	Use       Use    `gorm:"size:12"`
	Before    Number `gorm:"embedded;embeddedPrefix:before_" unit:"g"` // g
	After     Number `gorm:"embedded;embeddedPrefix:after_" unit:"g"`  // g
	Poured    Number `gorm:"embedded;embeddedPrefix:poured_" unit:"g"` // g poured away
	// Volume is what was taken from a carton or cup, mL, where nothing was weighed.
	Volume Number `gorm:"embedded;embeddedPrefix:volume_" unit:"mL"`
	// ShareLow and ShareHigh bound the athlete's part of a shared bottle, %.
	ShareLow  Number   `gorm:"embedded;embeddedPrefix:share_low_" unit:"%"`
	ShareHigh Number   `gorm:"embedded;embeddedPrefix:share_high_" unit:"%"`
	Refills   []Refill `gorm:"foreignKey:BottleID"`
}

// Refill is what was added to a bottle in the session.
type Refill struct {
	Meta
	BottleID ID     `gorm:"index;size:36"`
	Order    int    `gorm:"column:position"`
	Added    Number `gorm:"embedded;embeddedPrefix:added_" unit:"g"` // g
}

// FoodEaten is food or gel eaten in the session, by portion or by mass.
type FoodEaten struct {
	Meta
	TestID    ID  `gorm:"index;size:36"`
	Order     int `gorm:"column:position"`
	ProductID ID  `gorm:"size:64"`
	Name      string
	Portions  Number `gorm:"embedded;embeddedPrefix:portions_" unit:"portion"`
	Mass      Number `gorm:"embedded;embeddedPrefix:mass_" unit:"g"` // g
}

// TableName keeps the plural the trade would use.
func (FoodEaten) TableName() string { return "foods_eaten" }

// Loss is what left the body besides sweat, and how the loss is calculated.
type Loss struct {
	Urine   Number `gorm:"embedded;embeddedPrefix:passed_urine_" unit:"g"` // g in the session
	NoUrine bool   // "none passed" is an answer
	// NothingDrunk: "nothing" is an answer too.
	NothingDrunk bool
	Stool        Number `gorm:"embedded;embeddedPrefix:passed_stool_" unit:"g"` // g in the session
	NoStool      bool
	// Breath and Exchange are what version 1 was told of taking breath and gas
	// exchange off on this sheet. The practice's method decides now; they are kept
	// as they were.
	Breath   string `gorm:"size:8"`
	Exchange string `gorm:"size:8"`
	// Guess is what the athlete thought they lost, L, before they were shown.
	Guess Number `gorm:"embedded;embeddedPrefix:guess_" unit:"L"`
}

// Urine is the urine marker.
type Urine struct {
	Gravity    Number `gorm:"embedded;embeddedPrefix:gravity_"`
	Osmolality Number `gorm:"embedded;embeddedPrefix:osmolality_" unit:"mOsm/kg"` // mOsm/kg
	Colour     Number `gorm:"embedded;embeddedPrefix:colour_"`                    // 1-8
	When       Moment `gorm:"size:8"`
	NotTaken   bool
}

// Feeling is what the athlete says, 0 to 10.
type Feeling struct {
	Thirst  Number `gorm:"embedded;embeddedPrefix:thirst_"`
	Stomach Number `gorm:"embedded;embeddedPrefix:stomach_"` // 0 fine, 10 worst
	// Ill: ill or feverish on the day; StomachUpset: an upset stomach that day,
	// from before the session.
	Ill          bool
	StomachUpset bool
}

// Site is where a patch sat.
type Site string

// The sites of a patch.
const (
	SiteForearmDorsal  Site = "forearm-dorsal"
	SiteForearmVentral Site = "forearm-ventral"
	SiteUpperArm       Site = "upper-arm"
	SiteChest          Site = "chest"
	SiteBack           Site = "upper-back"
	SiteForehead       Site = "forehead"
	SiteThigh          Site = "thigh"
	SiteCalf           Site = "calf"
	// SiteFiveMean is a mean of five sites weighted by local rate and area.
	SiteFiveMean Site = "five-site-mean"
)

// Method is how the sodium was measured.
type Method string

// The methods; each has its own error.
const (
	MethodDirectElectrode   Method = "direct-electrode"
	MethodIndirectElectrode Method = "indirect-electrode"
	MethodFlame             Method = "flame-photometry"
	MethodConductivity      Method = "conductivity"
	MethodIonChromatography Method = "ion-chromatography"
)

// Condition of a patch when it came off.
type Condition string

// The conditions of a patch.
const (
	PatchGood      Condition = "good"
	PatchDetached  Condition = "detached"
	PatchSaturated Condition = "saturated"
)

// Patch is one sweat patch.
type Patch struct {
	Meta
	TestID    ID        `gorm:"index;size:36"`
	Order     int       `gorm:"column:position"`
	Site      Site      `gorm:"size:20"`
	Side      string    `gorm:"size:8"` // "left", "right" or empty
	On        Clock     `gorm:"column:time_on;size:5"`
	Off       Clock     `gorm:"column:time_off;size:5"`
	Sodium    Number    `gorm:"embedded;embeddedPrefix:sodium_" unit:"mmol/L"`    // mmol/L
	Potassium Number    `gorm:"embedded;embeddedPrefix:potassium_" unit:"mmol/L"` // mmol/L
	Method    Method    `gorm:"size:24"`
	Condition Condition `gorm:"size:12"`
	// AtLaboratory: sent away, the value comes later.
	AtLaboratory bool
}
