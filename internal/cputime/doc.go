// Package cputime tells the processor time of this program, for benchmarks: on a machine
// that does other things too it says more than the time of day. Only tests import it.
package cputime
