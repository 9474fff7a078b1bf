// Package lesson computes what a lesson on the choice of a blade shows, from the racks of one shop: the bent
// edge of each blade, how far each may lean, what a film follows, the setups that the planner chooses for
// typical prints, one worked job with its faults, and exercises with their answers.
//
// It holds no formula of its own: all comes from calc/blade, calc/mesh, calc/film, calc/halftone, calc/seen
// and the planner, where the sources stand, so that the paper says what the cards say. Lengths of film are
// micrometres, angles degrees from vertical, loads N per cm of blade.
package lesson
