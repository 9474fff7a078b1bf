// Package lesson computes what a class paper on the choice of a blade shows, from the racks of
// one shop: stiffness and bent edge of each blade, films over angle, load, strokes, wear and
// stencil, what each mesh holds, the setups that the planner chooses for a grid of work, and
// exercises with their answers.
//
// It holds no formula of its own but three one-liners of mechanics (see StiffnessNPerCMPerMM);
// all else comes from calc/blade, calc/mesh, calc/film, calc/halftone, calc/ink and calc/plan,
// where the sources stand. Every film is the planner's, so that the paper says what the cards
// say. Lengths of film are micrometres, angles degrees from vertical, loads N per cm of blade.
package lesson
