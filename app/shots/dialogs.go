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

// press is one thing done in a screen before it is drawn: a button or a link pressed, or a line
// filled in where there is a text.
type press struct{ control, text string }

// presses are what opens the dialog of a shot over its screen; nil for a screen by
// itself. file is a device's file that is there.
func presses(name, file string) []press {
	return map[string][]press{
		"sheet-device":    {{"testsheet.device", ""}, {"testsheet.device.path", file}, {"testsheet.device.yes", ""}},
		"findings-letter": {{"findings.letter", ""}}, "findings-letter-hidden": {{"findings.letter", ""}},
		"state-long-agree": {{"planner.agree", ""}},
		"state-suggest":    {{"planner.suggest", ""}},
		"state-agree":      {{"planner.agree", ""}},
		"state-climate":    {{"planner.climate", ""}},
		"state-review":     {{"planner.review", ""}},
	}[name]
}

// openDialog opens the dialog of a shot. The function returned closes it.
func openDialog(w fyne.Window, name string) (closed func(), err error) {
	list := presses(name, "")
	if len(list) == 0 {
		return func() {}, nil
	}
	file, remove, err := deviceFile()
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, remove()) }()
	for _, p := range presses(name, file) {
		root := w.Content()
		if top := w.Canvas().Overlays().Top(); top != nil {
			root = top
		}
		switch o := field.Find(root, p.control).(type) {
		case *field.Line:
			o.SetText(p.text)
		case *field.Button:
			o.Press()
		case *field.Link:
			o.Press()
		default:
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
