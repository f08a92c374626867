package handoutview

import "ebbwell/app/kit/field"

// plans are the athlete's, to choose from.
func (v *View) plans() []field.Option {
	var list []field.Option
	for _, p := range v.file.plans {
		list = append(list, field.Option{Key: string(p.ID), Text: v.planName(p)})
	}
	return list
}

// pageOptions are the pages there are.
func (v *View) pageOptions() []field.Option {
	var list []field.Option
	for _, p := range pages(v.file.subject.planned) {
		list = append(list, field.Option{Key: string(p), Text: v.desk.Words.Say("handoutview.page." + string(p))})
	}
	return list
}

// options are those of the plan.
func (v *View) options() []field.Option {
	var list []field.Option
	if !v.file.subject.planned {
		return nil
	}
	for _, o := range v.file.subject.planCase.Plan.Options {
		list = append(list, field.Option{Key: string(o.ID), Text: v.desk.Words.Option(o.Name), Note: v.optionNote(o)})
	}
	return list
}
