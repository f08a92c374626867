package practice

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/evidence"
	"fyne.io/fyne/v2"
)

func TestPicturesOfSpecialCases(t *testing.T) {
	d, _ := apptest.Desk(t)
	light, small := golden.Mode{Percent: 100}, sizes()["small"]
	long := strings.Repeat("Interdisciplinary practice for nutrition and performance ", 3)
	shoot(t, "house-long-names", light, small, d, PartHouse, func(_ *View, w fyne.Window) {
		apptest.Type(t, w, "practice.name", long)
		apptest.Type(t, w, "practice.practitioner", long)
		apptest.Type(t, w, "practice.emergency", "")
		apptest.Leave(w)
	})
	shoot(t, "standards-errors", light, small, d, PartStandards, func(v *View, w fyne.Window) {
		v.b.Field("practice.bands").Field.(*field.Toggle).OnChosen(evidence.SetOwn)
		v.b.Show()
		apptest.Type(t, w, "practice.edge.well", "1.025")
		apptest.Type(t, w, "practice.edge.minimal", "1.02")
		apptest.Type(t, w, "practice.edge.great", "high")
		apptest.Type(t, w, "practice.deficit", "60")
		apptest.Leave(w)
	})
	shoot(t, "records-empty", light, small, d, PartRecords, nil)
	shoot(t, "thresholds-none", light, small, d, PartThresholds, func(_ *View, w fyne.Window) {
		apptest.Type(t, w, "practice.thresholds.search", "qqq")
	})
}
