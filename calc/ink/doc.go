// Package ink computes what film a screen needs so that its print hides the cloth or rises as
// asked, and how much ink a print and a run take.
//
// Reflectances and shares run from 0 to 1, films are micrometers, scattering is per millimeter,
// masses grams, volumes millilitres, densities kg/L. Hiding uses the two-flux theory: a film is
// described by its scattering power SX (scattering S times thickness X, no unit) and by rInf,
// the reflectance of the same ink too thick to see through.
//
// Sources: Kubelka and Munk, Z. tech. Phys. 12 (1931), 593 [32]; contrast ratio after the principle
// of ISO 6504-1 [33]; ink per run after "Calculating Ink Costs", 22 November 2011 [35]; expansion and
// amounts are derived here. Scattering of screen inks is not published: the figures are from
// memory until a shop's own ink class says more.
package ink
