package practice

import (
	"context"

	"ebbwell/app/kit/saveto"
)

// askBackup asks where a copy of all records is to be kept.
func (r *records) askBackup() {
	d := r.v.desk
	say := d.Words.Say
	if !r.v.b.FlushNow() {
		return
	}
	saveto.Ask(d, r.v.canvas(), saveto.Request{
		Name: "practice.backup.ask", Title: say("practice.backup.title"), Sentence: say("practice.backup.sentence"), Yes: say("practice.backup.yes"),
		File:  saveto.FileName(say("practice.backup.file", string(d.Today())), ".db"),
		Write: func(ctx context.Context, path string) error { return d.Store.Backup(ctx, path) },
		Done:  func(path string) { d.Say(say("practice.backedup", path), "", nil) },
	})
}
