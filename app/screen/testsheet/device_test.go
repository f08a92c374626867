package testsheet

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // the zones are there on every machine

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/device"
	"ebbwell/internal/record"
)

// gpxFile writes an invented run at 3 m/s, a point every 10 s, that begins at a time of
// 18 May 2026 with seconds and lasts so many minutes; the device is at 29 °C.
func gpxFile(t *testing.T, start time.Time, minutes int, kind string) string {
	t.Helper()
	var b strings.Builder
	fmt.Fprintf(&b, "<gpx><trk><type>%s</type><trkseg>\n", kind)
	for i := range minutes*6 + 1 {
		fmt.Fprintf(&b, `<trkpt lat="%.7f" lon="8"><time>%s</time><extensions><hr>151</hr><power>204</power><atemp>29</atemp></extensions></trkpt>`+"\n",
			float64(i)*30/111195, start.Add(time.Duration(i)*10*time.Second).UTC().Format(time.RFC3339))
	}
	b.WriteString("</trkseg></trk></gpx>")
	path := filepath.Join(t.TempDir(), "run.gpx")
	if err := os.WriteFile(path, []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// readFile has a file read in the dialog.
func (b *bench) readFile(path string) {
	b.t.Helper()
	b.v.askDevice()
	apptest.Type(b.t, b.w, "testsheet.device.path", path)
	apptest.Click(b.t, b.w, "testsheet.device.yes")
}

// may is an instant on 18 May 2026, the day of the tests.
func may(hour, minute, second int) time.Time {
	return time.Date(2026, 5, 18, hour, minute, second, 0, time.UTC)
}

// What is empty is filled, what is there stays, and a temperature is never taken
// unasked; all in one step, which one step back takes away.
func TestDeviceFileFillsWhatIsEmpty(t *testing.T) {
	b := newSheet(t)
	b.enter("testsheet.sport", "Road running")
	b.enter("testsheet.start", "09:00")
	before := b.kept()
	b.readFile(gpxFile(t, may(8, 57, 40), 62, "running"))
	for key, want := range map[string]bool{"start": false, "end": true, "power": true, "speed": true, "heart": true, "temperature": false} {
		if tick := b.tick(key); tick != want {
			t.Errorf("%s ticked: %v", key, tick)
		}
	}
	text := b.dialogText()
	for _, part := range []string{"GPX file of 18 May 2026, 08:58 to 10:00.", "Distance 11.2 km", "08:58", "09:00", "10:00", "body and sun warm it", "From 372 readings.", "Over 62 min of moving time"} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not said in\n%s", part, text)
		}
	}
	apptest.Click(t, b.w, "testsheet.device.offer.yes")
	kept := b.kept()
	s := kept.Session
	if s.Start != "09:00" || s.End != "10:00" || s.EndsNextDay || s.Power.Or(0) != 204 || s.Speed.Or(0) != 10.8 || kept.Air.Temperature.Known() {
		t.Errorf("kept %+v, air %v", s, kept.Air.Temperature)
	}
	if kept.Note != "Mean heart rate 151\u00a0beats a minute (device file of 18 May 2026)." {
		t.Errorf("note %q", kept.Note)
	}
	if !b.v.Undo() {
		t.Fatal("there is no step back")
	}
	if back := b.kept(); back.Session != before.Session || back.Note != "" {
		t.Errorf("a step back leaves %+v", back.Session)
	}
}

// tick reports whether a value is ticked in the dialog.
func (b *bench) tick(key string) bool {
	b.t.Helper()
	c, ok := field.Find(b.w.Canvas().Overlays().Top(), "testsheet.device.take."+key).(*field.Check)
	if !ok {
		b.t.Fatalf("%s is not offered", key)
	}
	return c.On()
}

// dialogText is what the dialog says.
func (b *bench) dialogText() string {
	top := b.w.Canvas().Overlays().Top()
	top.Refresh() // a frame of the window does it
	return strings.ReplaceAll(strings.Join(apptest.Texts(top), "\n"), "\u00a0", " ")
}

// A value that is taken in the place of another is a correction like one typed.
func TestDeviceFileChangesWhatIsTicked(t *testing.T) {
	b := newSheet(t)
	b.enter("testsheet.start", "09:00")
	b.readFile(gpxFile(t, may(8, 57, 40), 62, "running"))
	apptest.Click(t, b.w, "testsheet.device.take.start")
	apptest.Click(t, b.w, "testsheet.device.take.temperature")
	apptest.Click(t, b.w, "testsheet.device.take.end")
	apptest.Click(t, b.w, "testsheet.device.offer.yes")
	kept := b.kept()
	if kept.Session.Start != "08:58" || kept.Session.End != "" || kept.Air.Temperature.Or(0) != 29 {
		t.Errorf("kept %+v, air %v", kept.Session, kept.Air.Temperature)
	}
	changes, err := b.desk.Store.History(context.Background(), refOf(kept))
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(changes, func(c record.Change) bool {
		return c.Field == "session.start" && strings.Contains(c.Before, "09:00") && strings.Contains(c.After, "08:58")
	}) {
		t.Errorf("no correction of the start in %+v", changes)
	}
}

// A file of another day is said to be one, and nothing of it is ticked.
func TestDeviceFileOfAnotherDay(t *testing.T) {
	b := newSheet(t)
	b.enter("testsheet.place", "Millrace Park")
	b.readFile(gpxFile(t, may(8, 0, 0).AddDate(0, 0, -3), 30, "running"))
	if text := b.dialogText(); !strings.Contains(text, "The file is from 15 May 2026, this sheet from 18 May 2026.") {
		t.Errorf("not said in\n%s", text)
	}
	for _, key := range []string{"date", "start", "end", "power", "speed", "heart", "temperature"} {
		if b.tick(key) {
			t.Errorf("%s is ticked", key)
		}
	}
	before := b.kept()
	apptest.Click(t, b.w, "testsheet.device.offer.yes")
	if after := b.kept(); after.Session != before.Session {
		t.Errorf("something was taken: %+v", after.Session)
	}
}

// What is wrong is said beside the path, the sheet is as it was, and the next file can
// be read.
func TestDeviceFileThatIsWrong(t *testing.T) {
	b := newSheet(t)
	folder := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	b.v.askDevice()
	for path, want := range map[string]string{
		filepath.Join(folder, "none.fit"): "That file does not exist.",
		folder:                            "That is not a file.",
		write("table.gpx", "a;b"):         "not a FIT, GPX or TCX file",
		write("bomb.gpx", "<!DOCTYPE gpx [<!ENTITY a \"\">]>"):                             "text definitions that no device writes",
		write("cut.gpx", "<gpx><trk>\n<trkseg>"):                                           "Line 2. The sheet is unchanged",
		write("odd.gpx", "<gpx><trk><trkseg><trkpt lat=\"1\" lon=\"1\"><time>noon</time>"): "Line 1, time: “noon”.",
		write("cut.fit", "\x0c\x10\x00\x00\xff\x00\x00\x00.FIT"):                           "Byte 13.",
	} {
		apptest.Type(t, b.w, "testsheet.device.path", path)
		apptest.Press(b.w, fyne.KeyReturn)
		if text := b.dialogText(); !strings.Contains(text, want) {
			t.Errorf("%s: %q is not said in\n%s", filepath.Base(path), want, text)
		}
	}
	apptest.Type(t, b.w, "testsheet.device.path", gpxFile(t, may(8, 0, 0), 30, ""))
	apptest.Press(b.w, fyne.KeyReturn)
	if !apptest.Has(b.w, "testsheet.device.take.end") {
		t.Error("a good file after bad ones is not read")
	}
}

// The newest file of the folder used last is offered by itself.
func TestDeviceFileIsFound(t *testing.T) {
	b := newSheet(t)
	path := gpxFile(t, may(8, 0, 0), 30, "running")
	b.readFile(path)
	apptest.Press(b.w, fyne.KeyEscape)
	b.v.askDevice()
	if got := apptest.Text(t, b.w, "testsheet.device.path"); got != path {
		t.Errorf("%q is offered", got)
	}
}

// A closed sheet takes nothing from a file.
func TestClosedSheetTakesNoFile(t *testing.T) {
	d, went := apptest.Desk(t)
	test := closedTest(t, d, consenting(t, d), "2026-05-10", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: test.AthleteID, Record: test.ID, Part: PartBefore})
	if !b.v.ui.before.device.Disabled() || !b.v.ui.after.device.Disabled() {
		t.Error("a closed sheet offers a file")
	}
}

// Times are those of the clocks where the practice is, over midnight and over a night
// in which they are set.
func TestDeviceOffersByTheClocks(t *testing.T) {
	zone, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	at := func(text string) time.Time {
		when, err := time.Parse(time.RFC3339, text)
		if err != nil {
			t.Fatal(err)
		}
		return when
	}
	for _, c := range []struct {
		from, to   string
		day        record.Date
		start, end record.Clock
		next, none bool
	}{
		{"2026-05-10T15:02:40Z", "2026-05-10T16:22:20Z", "2026-05-10", "17:03", "18:22", false, false},
		{"2026-05-10T21:30:00Z", "2026-05-10T22:30:00Z", "2026-05-10", "23:30", "00:30", true, false},
		{"2026-10-24T23:30:00Z", "2026-10-25T01:30:00Z", "2026-10-25", "01:30", "02:30", false, false}, // two hours
		{"2026-05-10T21:59:40Z", "2026-05-10T23:00:00Z", "2026-05-11", "00:00", "01:00", false, false},
		{"2026-05-10T08:00:00Z", "2026-05-12T08:00:00Z", "2026-05-10", "10:00", "", false, true},
	} {
		list := deviceOffers(sheet{}, device.Session{Start: at(c.from), End: at(c.to), Parts: 1}, zone)
		got := map[string]offer{}
		for _, o := range list {
			got[o.key] = o
		}
		_, ends := got[deviceEnd]
		if got[deviceDate].day != c.day || got[deviceStart].clock != c.start || got[deviceEnd].clock != c.end || got[deviceEnd].nextDay != c.next || ends == c.none {
			t.Errorf("%s to %s: %+v", c.from, c.to, got)
		}
	}
}

// Times are those of the wall where the session was, as the device's own clock showed
// them; that this computer's clock says another time is told. A file that does not tell
// its zone is read by this computer's clock, and says so.
func TestDeviceClockOfAnotherZone(t *testing.T) {
	zone, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	b := newSheet(t)
	b.desk.Now = func() time.Time { return time.Date(2026, 5, 18, 20, 0, 0, 0, zone) }
	away := device.Session{Format: device.FIT, Parts: 1, Start: may(17, 0, 0), End: may(18, 0, 0), Zone: time.FixedZone("", -6*3600)}
	for _, c := range []struct {
		zone  *time.Location
		start string
		said  string
	}{
		{away.Zone, "11:00", "this computer’s clock showed 19:00 at the start."}, {nil, "19:00", "The file has no local time"},
		{time.FixedZone("", 2*3600), "19:00", ""},
	} {
		f := away
		f.Zone = c.zone
		b.v.offerDevice(f)
		text := strings.ReplaceAll(b.dialogText(), "\n", " ")
		if !strings.Contains(text, "18 May 2026, "+c.start+" to ") || !strings.Contains(text, c.said) || c.said == "" && strings.Contains(text, "clock") {
			t.Errorf("%v: %s", c.zone, text)
		}
		apptest.Click(t, b.w, "testsheet.device.offer.yes")
		if got := string(b.kept().Session.Start); got != c.start {
			t.Errorf("%v: the start is %s, want %s", c.zone, got, c.start)
		}
		b.v.Undo()
	}
	// A file over the night in which the clocks change, ended by a clock as here.
	f := device.Session{Start: time.Date(2026, 10, 24, 23, 30, 0, 0, time.UTC), End: time.Date(2026, 10, 25, 1, 30, 0, 0, time.UTC), Zone: time.FixedZone("", 3600)}
	if b.v.deviceZone(f) != zone {
		t.Error("the computer's own zone knows when clocks change")
	}
}

// A mean speed is taken by itself only where the calculation's steady running is meant.
func TestSpeedIsTickedForSteadyRunning(t *testing.T) {
	for _, c := range []struct {
		code  string
		sport device.Sport
		parts int
		want  bool
	}{
		{"road-running", "", 1, true}, {"road-running", device.Running, 1, true}, {"", device.Running, 1, true},
		{"football", "", 1, false}, {"football", device.Running, 1, false}, {"road-cycling", device.Cycling, 1, false},
		{"", "", 1, false}, {"triathlon", "", 3, false},
	} {
		s := sheet{}
		s.Record.Session.Sport = c.code
		f := device.Session{Sport: c.sport, Parts: c.parts, Start: may(8, 0, 0), End: may(9, 0, 0), Speed: device.Mean{Value: 11, Known: true}}
		for _, o := range deviceOffers(s, f, time.UTC) {
			if o.key == deviceSpeed && o.ticked != c.want {
				t.Errorf("%q, file of %q, %d parts: ticked %v", c.code, c.sport, c.parts, o.ticked)
			}
		}
	}
}

// The clocks that change during a session are said where its end stands.
func TestClocksThatChangeAreSaid(t *testing.T) {
	zone, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	b := newSheet(t)
	b.desk.Now = func() time.Time { return time.Date(2026, 5, 18, 9, 0, 0, 0, zone) }
	b.enter("testsheet.date", "2026-03-29")
	b.enter("testsheet.start", "01:30")
	b.part(PartAfter)
	b.enter("testsheet.end", "03:30")
	if !b.v.ui.after.clocks.Visible() || !strings.Contains(allText(b.w), "The clocks changed during this session.") {
		t.Error("it is not said")
	}
	b.part(PartBefore)
	b.enter("testsheet.date", "2026-03-28")
	b.part(PartAfter)
	if b.v.ui.after.clocks.Visible() {
		t.Error("it is said of a night in which they did not")
	}
}
