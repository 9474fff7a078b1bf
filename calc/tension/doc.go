// Package tension computes what the stretched cloth does on the frame: how far the blade
// stretches it to the stock, how that moves and lengthens the image, what force it takes from
// the blade, how steeply it peels, what it pulls on the frame, and how much free mesh stands
// beside the blade.
//
// The cloth is a membrane under one tension, which the small deflection does not change; it
// slides under the blade, so both sides have the same strain. The blade is straight, and the
// ends beside it are left out. Lengths are millimeters, tensions and line loads newtons per
// centimetre, forces newtons. The span runs along the stroke from frame to frame; a and b are
// the distances from the blade to its two ends.
//
// Sources: the membrane is derived here; tension classes after Graphics Pro, January 2023,
// p. 45 [27]; off-contact after trade articles, which differ; frame against blade path after SGIA, 2021 [31];
// margins are common practice.
package tension
