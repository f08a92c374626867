package evidence

import "ebbwell/internal/quantity"

// How the file of a session is read that a watch or a bike computer wrote.
const (
	// DeviceMovingSpeed is from where on somebody counts as moving, m/s.
	DeviceMovingSpeed = 0.5
	// DeviceMovingSpan is the least time over which that is judged, s.
	DeviceMovingSpan = 10.0
	// DevicePauseGap is how long a file may lack a reading before it is a pause, s.
	DevicePauseGap = 30.0
	// EarthRadius is the globe's mean radius, km, for the way between two positions.
	EarthRadius = 6371.0
)

// deviceEntries lists how a device's file is read.
func deviceEntries() []Entry {
	practice := commonPractice()
	globe := Citation{Code: "earth"}
	return []Entry{
		{ID: "device.moving", Value: DeviceMovingSpeed, Unit: quantity.MetrePerSecond, Source: practice, Sure: Practice},
		{ID: "device.moving.span", Value: DeviceMovingSpan, Unit: quantity.Second, Source: practice, Sure: Practice},
		{ID: "device.pause", Value: DevicePauseGap, Unit: quantity.Second, Source: practice, Sure: Practice},
		{ID: "device.earth-radius", Value: EarthRadius, Unit: "km", Source: globe, Sure: Memory},
	}
}
