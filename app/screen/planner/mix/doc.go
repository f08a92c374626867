// Package mix is the panel of sliders: what is drunk and eaten, what can be
// added, where the guards speak, and the suggestion.
package mix
