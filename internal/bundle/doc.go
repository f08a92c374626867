// Package bundle is what one practice gives another of its athletes, and how what
// comes back is put together with what is there. It works on plain records: it opens
// no file and no database.
//
// # What is in it
//
// A bundle holds athletes with their conditions and consents, their tests and plans
// with reviews, the products these name, and of all of them the history, the frozen
// copies and what was typed and could not be read, and the pages kept of the athletes.
// Trips, sessions of a group and groups speak of other athletes too, and stay where
// they are.
//
// # How two versions become one
//
// Records and rows have ids for good. A field that only one side changed since they
// parted is as that side has it. One that both changed is as it was changed last; the
// other value stays in the history, and the conflict is told. Which side changed what
// is told by the histories: a change that the other side's history does not hold is
// that side's own. Where there is none of a field the time of its row decides.
//
// A closed sheet and a plan that was agreed are taken whole, from one side: nobody
// closed or agreed a mixture. Reviews, the states of steps, and what was asked and done
// about a red flag are put together all the same.
//
// What keeps an athlete safe never falls: conditions and medicines, hidden mass,
// consents and limits are as the more cautious side has them, and whatever else the
// other side says of them is a [Decision] that a person takes.
package bundle
