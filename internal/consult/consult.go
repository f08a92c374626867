// Package consult puts one athlete's records together into what screens,
// pages and exports show: findings of a test, the basis and the options of a
// plan, what a condition of the profile changes. It computes nothing of its
// own that a science package could: it turns records into their plain inputs,
// calls them, and keeps their answers side by side.
//
// Start with a [Pantry] (what there is to drink and eat), then [Find] for a
// test sheet and [OpenCase] for a plan.
package consult
