package look

// The room around what stands on a screen, in px.
const (
	SheetGap float32 = 14 // between sheets
	TopPad   float32 = 16
	FootPad  float32 = 20
	BarRoom  float32 = 10 // keeps content off the bar of a scroll
)
