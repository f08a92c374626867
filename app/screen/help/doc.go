// Package help is the page of help of a screen: what the screen is for, what to enter,
// what its figures mean, its keys, and last the keys that hold everywhere. The page
// stands at the right, beside the screen where the window is wide enough, and over a
// dialog where one is open.
package help
