package store

import (
	"context"

	"ebbwell/internal/record"
)

// GroupSessions lists the sessions that groups shared, whole, the newest first.
func (s *Store) GroupSessions(ctx context.Context) ([]record.GroupSession, error) {
	return loadAll[record.GroupSession](ctx, s, record.KindSession, newestSession)
}

// LoadGroupSession loads a session with its bottle kinds and members.
func (s *Store) LoadGroupSession(ctx context.Context, id record.ID) (record.GroupSession, error) {
	return loadOne[record.GroupSession](ctx, s, record.KindSession, id)
}

// SaveGroupSession saves a session alone and returns it as it is kept; what it
// shares is written into the sheets by [Store.SaveSquad].
func (s *Store) SaveGroupSession(ctx context.Context, g record.GroupSession, e Edit) (record.GroupSession, error) {
	return save(ctx, s, record.KindSession, g, e)
}

// SquadText is what was typed into a field of a sheet and could not be read, or
// the reason a value was kept with; empty clears it.
type SquadText struct {
	Test   record.ID
	Field  string
	Text   string
	Reason bool
}

// Squad is what of a session and its sheets is to be saved together.
type Squad struct {
	Session record.GroupSession
	Tests   []record.Test
	Texts   []SquadText
}

// SaveSquad saves a session and the sheets of its members in one transaction: a
// value that all share stands in every sheet or in none. It returns them as they
// are kept, the sheets in the order they came in. A sheet that is closed refuses
// the whole with CodeClosed where anything in it would change.
func (s *Store) SaveSquad(ctx context.Context, q Squad, e Edit) (Squad, error) {
	out := Squad{Session: copyOf(q.Session), Texts: q.Texts}
	for _, t := range q.Tests {
		out.Tests = append(out.Tests, copyOf(t))
	}
	err := s.write(ctx, "save session", func(w *work) error {
		for i := range out.Tests { // before the members that point at them
			if err := w.save(record.KindTest, &out.Tests[i], e, withRespect); err != nil {
				return err
			}
		}
		for _, t := range out.Texts {
			raw := record.RawText{Kind: record.KindTest, Record: t.Test, Field: t.Field, Text: t.Text, Reason: t.Reason}
			if err := w.setText(raw, e); err != nil {
				return about(err, record.Ref{Kind: record.KindTest, ID: t.Test})
			}
		}
		return w.save(record.KindSession, &out.Session, e, withRespect)
	})
	if err != nil {
		return q, err
	}
	return out, nil
}
