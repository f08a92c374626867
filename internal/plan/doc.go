// Package plan turns a loss that was measured or estimated into what to drink
// and eat in a session, and says at every move what that comes to.
//
// A plan is based on a [Basis] (sweat rate with its planned 95 % range, sweat
// sodium, body), is for a [Session], and chooses from a [Menu] of water, up to
// three drinks, up to four foods and added salt; how much of each is a [Mix].
// [New] puts them together with an [Aim] into a [Planner], which never changes
// and answers:
//
//	[Planner.Evaluate]  what a mix comes to: deficit at the end with its
//	                    range, carbohydrate by source, sodium in against out,
//	                    drinking rate, and the guards that speak
//	[Planner.Move]      a slider's move, stopped at the ceiling with a reason
//	[Planner.Bands]     for each slider the values that meet all aims
//	[Planner.Propose]   what to propose for the habit: drinks alone and with
//	                    food, never worse than the habit; see package proposal
//	[Planner.Steps]     dated rungs from habit to aim
//	[Planner.Schedule]  what to take at each chance the sport gives, in whole
//	                    mouthfuls of one bottle each
//	[Schedule.Carried]  the mix that comes to: what is shown, agreed, printed
//	[Schedule.Levels]   how far the bottles are down after each chance
//	[Planner.CarriesML] what chances can carry at the low end of the loss
//	[Planner.At]        the same planner for known breaks
//	[Planner.From]      the same planner for a known habit
//	[Planner.Course]    the deficit over time
//	[Planner.Explain]   the figures with their why
//
// [Review] reads the sessions done on a step; [PlanDay] lays a day on the
// clock; [Sports] and [TennisChances] know when one may drink.
//
// The arithmetic is a mass balance, 1 kg of sweat being 1 L:
//
//	deficit = sweat rate * hours + respiratory water - volume drunk - food water
//
// Above zero is a deficit. The range of a plan is the range of the planned
// loss, day-to-day spread included; what is drunk is decided and has none.
//
// More is never planned than is lost. The ceiling of fluid is the low end of
// the planned loss's 95 % range, and past three hours also what leaves a
// deficit of 1 % of body mass; no move, proposal, rung or schedule passes
// it. A habit that was measured above it and ended low enough is the ceiling
// itself. Where the loss outruns the stomach the guard
// says so, and the words are shorter, cooler, more breaks.
//
// Evaluate, Move, Bands, Schedule and Course allocate nothing once their
// buffers are there. All codes that a screen or page puts into words are
// listed by [Codes]; nothing here words a sentence.
package plan
