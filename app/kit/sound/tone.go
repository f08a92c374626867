// Package sound plays one short tone at a reminder, for hands that are busy while nobody
// looks at the screen. It is off until it is switched on, and what it says stands on the
// screen all the same.
//
// The tone is made here and played by what the system has: on Linux one of its small
// players, on macOS afplay, on Windows the system itself. A library that reaches the sound
// card would need a C compiler or a connection to a sound server on Linux, and the program
// opens no connection.
//
// A [Bell] rings once for a reminder, whatever happens in between: it keeps which were
// given in the settings of the computer, beside where the window stood.
package sound

import (
	"encoding/binary"
	"math"
)

// The tone: two short notes, the second higher, so that it is told from an alarm. The
// figures are ours.
const (
	rate   = 22050  // samples a second
	note   = 0.22   // length of a note, s
	low    = 659.26 // E5, Hz
	high   = 880.00 // A5, Hz
	fade   = 0.015  // in and out of a note, s, against clicks
	volume = 0.5    // of what 16 bits hold
)

// header is the length of what stands before the samples.
const header = 44

// Tone is the tone as a WAV file: 16 bits, one channel.
func Tone() []byte {
	samples := append(notes(low), notes(high)...)
	size := 2 * len(samples)
	wav := make([]byte, 0, header+size)
	u32 := func(x int) { wav = binary.LittleEndian.AppendUint32(wav, uint32(x)) }
	u16 := func(x int) { wav = binary.LittleEndian.AppendUint16(wav, uint16(x)) }
	wav = append(wav, "RIFF"...)
	u32(header - 8 + size)
	wav = append(wav, "WAVEfmt "...)
	u32(16) // what follows of the format
	u16(1)  // plain samples
	u16(1)  // one channel
	u32(rate)
	u32(2 * rate) // bytes a second
	u16(2)        // bytes a sample
	u16(16)       // bits a sample
	wav = append(wav, "data"...)
	u32(size)
	for _, x := range samples {
		u16(int(int16(math.Round(x * math.MaxInt16))))
	}
	return wav
}

// notes are the samples of a note, from -1 to 1.
func notes(hertz float64) []float64 {
	list := make([]float64, int(note*rate))
	for i := range list {
		at := float64(i) / rate
		edge := min(1, at/fade, (note-at)/fade)
		list[i] = volume * edge * math.Sin(2*math.Pi*hertz*at)
	}
	return list
}
