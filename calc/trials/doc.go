// Package trials plans test prints: the few that tell most of how a shop prints, within its time, blades and
// screens. What they would tell is computed before they are made, since the error that a fit leaves
// hangs on where is measured and not on what is measured.
package trials
