package film

// ClearRatio is the lift ratio up to which a stroke clears the screen: at one half the ink
// carries as much of the line load as the edge does.
//
// Kind: derived. Beyond one half the lift of the ink exceeds what is left to press the edge on
// the mesh, and the film that the lift leaves, Rb/2 (a_c/Rb)^(W/F), starts to grow from under
// a micrometre to tens of them within the next quarter of the load. It fits what the trade
// says without a figure, that a blade at 45 deg with a light load leaves ink in the screen
// (common practice).
const ClearRatio = 0.5

// Clears tells whether the stroke leaves the screen clear of ink, judged by the lift ratio of
// a deposit of Stroke: at most ClearRatio. It is a judgement of the blade alone; whether the
// ink then lets go of the mesh is for tension and off-contact. NaN does not clear.
//
// Range: any deposit. Kind: derived, see ClearRatio.
func Clears(d Deposit) bool { return d.LiftRatio <= ClearRatio }
