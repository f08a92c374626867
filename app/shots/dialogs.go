package shots

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
)

// press is one thing done in a screen before it is drawn: a button or a link pressed, a field
// filled in, or a word of a toggle chosen.
type press struct{ control, text string }

// files are what a screen may be asked to read: the file of a device, and one of a colleague.
type files struct{ device, colleague string }

// presses are what opens the dialog of a shot over its screen, or fills the screen; nil for
// a screen by itself.
func presses(name string, at files) []press {
	climate := func(more ...press) []press { return append([]press{{"planner.climate", ""}}, more...) }
	return map[string][]press{
		"sheet-device":    {{"testsheet.device", ""}, {"testsheet.device.path", at.device}, {"testsheet.device.yes", ""}},
		"findings-letter": {{"findings.letter", ""}}, "findings-letter-hidden": {{"findings.letter", ""}},
		"findings-paper": {{"testsheet.report", ""}}, "trip-paper": {{"trip.print", ""}}, "squad-paper": {{"squad.coach", ""}},
		"state-long-agree":    {{"planner.agree", ""}},
		"state-suggest":       {{"planner.suggest", ""}},
		"state-agree":         {{"planner.agree", ""}},
		"state-climate":       climate(),
		"state-climate-city":  climate(press{"climate.city", "Miami"}),
		"state-climate-far":   climate(press{"climate.way", "air"}, press{"climate.temperature", "41"}, press{"climate.humidity", "60"}),
		"state-climate-wrong": climate(press{"climate.way", "air"}, press{"climate.temperature", "hot"}, press{"climate.humidity", "140"}),
		"state-climate-test":  climate(press{"climate.way", "test"}),
		"state-trip-agree":    {{"trip.agree", ""}}, "state-trip-reasons": {{"trip.stop.reasons", ""}}, "state-trip-change": {{"trip.stop.change", ""}},
		"colleague-comes": {{"take.path", at.colleague}, {"take.pass", sentPhrase}, {"take.open", ""}},
		"state-review":    {{"planner.review", ""}},
	}[name]
}

// openDialog opens the dialog of a shot. The function returned closes it.
func openDialog(w fyne.Window, name, folder string) (closed func(), err error) {
	if len(presses(name, files{})) == 0 {
		return func() {}, nil
	}
	file, remove, err := deviceFile()
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, remove()) }()
	for _, p := range presses(name, files{file, filepath.Join(folder, sentFile)}) {
		root := w.Content()
		if top := w.Canvas().Overlays().Top(); top != nil {
			root = top
		}
		if !p.do(field.Find(root, p.control)) {
			return nil, fmt.Errorf("open %s: no control %q to press", name, p.control)
		}
	}
	return func() {
		for {
			d, ok := w.Canvas().Overlays().Top().(*field.Dialog)
			if !ok {
				return
			}
			d.Close()
		}
	}, nil
}

// do presses a control, or fills it in; false for one it knows no way with.
func (p press) do(o fyne.CanvasObject) bool {
	switch o := o.(type) {
	case *field.Line:
		o.SetText(p.text)
	case *field.Suggest:
		o.SetText(p.text)
		o.OnChanged(p.text)
	case *field.Number:
		o.SetRaw(p.text)
		o.OnChanged(o.Reading())
	case *field.Toggle:
		o.Choose(p.text)
		o.OnChosen(p.text)
	case *field.Button:
		o.Press()
	case *field.Link:
		o.Press()
	default:
		return false
	}
	return true
}

// deviceFile writes the file of an invented session, a run of 75 minutes with a pause.
func deviceFile() (path string, remove func() error, err error) {
	folder, err := os.MkdirTemp("", "ebbwell-shots-")
	if err != nil {
		return "", nil, fmt.Errorf("write a device's file: %w", err)
	}
	var b strings.Builder
	b.WriteString("<gpx><trk><type>running</type><trkseg>\n")
	at := Now().Add(-3 * time.Hour)
	for i := range 420 {
		if i == 240 {
			at = at.Add(5 * time.Minute)
		}
		fmt.Fprintf(&b, "<trkpt lat=\"%.6f\" lon=\"8\"><time>%s</time><extensions><hr>%d</hr><atemp>29</atemp></extensions></trkpt>\n",
			float64(i)*0.00027, at.Format(time.RFC3339), 140+i%20)
		at = at.Add(10 * time.Second)
	}
	b.WriteString("</trkseg></trk></gpx>\n")
	path = filepath.Join(folder, "run.gpx")
	if err := os.WriteFile(path, []byte(b.String()), 0o600); err != nil {
		return "", nil, fmt.Errorf("write a device's file: %w", err)
	}
	return path, func() error { return os.RemoveAll(folder) }, nil
}
