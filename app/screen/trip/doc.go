// Package trip is the screens of travel: the list of trips, and one trip with
// its stops, its travellers and what to pack.
//
// A trip holds one athlete or a squad. Its stops are shared: place, dates, air,
// how much is done there. What follows from them is each traveller's own: which
// test holds, the sweat rate with its range, the plan taken along and brought
// under the low end of that range, what the heat calls for. One traveller is
// shown at a time.
//
// [NewList] is the list, [New] one trip. The record is edited through package
// bind; what it comes to is calculated by internal/consult each time something
// changes, and worded by package heat below this one. Nothing is calculated here.
package trip
