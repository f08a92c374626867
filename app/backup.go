package app

import (
	"context"
	"path/filepath"
	"time"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/saveto"
	"ebbwell/app/screen/practice"
	"ebbwell/internal/lock"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// backUp makes the backup that is due by itself, or reminds of one where the
// last is old. The invented practice needs none.
func (s *Shell) backUp() {
	d := s.program.desk
	p := d.Practice()
	b := p.Settings.Backup
	switch {
	case p.Settings.Invented:
	case b.Folder != "" && b.Days > 0 && olderThan(b.At, d.Now(), b.Days):
		s.backUpNow(b)
	case olderThan(b.At, d.Now(), store.BackupReminderDays):
		s.remindOfBackup(b)
	}
}

// olderThan reports whether a moment lies days back, or never was.
func olderThan(at *time.Time, now time.Time, days int) bool {
	return at == nil || now.Sub(*at) >= time.Duration(days)*24*time.Hour
}

// backUpNow makes a backup beside the window, in the folder chosen for it.
func (s *Shell) backUpNow(b record.Backup) {
	d := s.program.desk
	say := d.Words.Say
	path := saveto.Free(b.Folder, saveto.FileName(say("practice.backup.file", string(d.Today())), ".db"))
	d.Beside.Run(func(ctx context.Context) error {
		return d.Store.BackupWith(ctx, path, lock.Key{Locked: b.Key, To: b.To})
	}, func(err error) {
		if err == nil {
			err = s.noteBackup()
		}
		if err != nil {
			d.Say(say("practice.backup.failed", saveto.Reason(d.Words, err)), say("practice.backup.go"), s.toBackups)
			return
		}
		d.Say(say("practice.backedup", filepath.Clean(path)), "", nil)
	})
}

// noteBackup writes down that a backup was made just now. What is typed is saved
// before, and a practice that is on the screen is opened again: otherwise its next
// change would be refused as one of an older record.
func (s *Shell) noteBackup() error {
	ctx, program := context.Background(), s.program
	if program == nil {
		return nil // closed meanwhile
	}
	d := program.desk
	if err := program.keeper.Flush(ctx); err != nil {
		return err
	}
	p, err := d.Store.Practice(ctx)
	if err != nil {
		return err
	}
	now := d.Now().UTC()
	p.Settings.Backup.At = &now
	if _, err := d.Store.SavePractice(ctx, p, store.Edit{}); err != nil {
		return err
	}
	d.PracticeChanged()
	if program.place.Screen == desk.Practice {
		program.Reload()
	}
	return nil
}

// remindOfBackup says how old the last backup is. A practice without a record
// has nothing to lose yet.
func (s *Shell) remindOfBackup(b record.Backup) {
	d := s.program.desk
	here, err := d.Store.Contents(context.Background())
	if err != nil {
		d.Trouble(err)
		return
	}
	if here.Tests == 0 {
		return
	}
	sentence := d.Words.Say("practice.backup.never")
	if b.At != nil {
		sentence = d.Words.Say("practice.backup.old", d.Words.Say("practice.days", int(d.Now().Sub(*b.At).Hours()/24)))
	}
	d.Say(sentence, d.Words.Say("practice.backup.go"), s.toBackups)
}

// toBackups opens the part of the practice where backups are made.
func (s *Shell) toBackups() {
	s.program.Open(desk.Place{Screen: desk.Practice, Part: practice.PartRecords})
}
