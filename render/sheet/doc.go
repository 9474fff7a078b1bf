// Package sheet lays out the setup sheet of a job: a paper that stands alone in another shop.
// Its pages are made from a plan.Plan and nothing else: head, press order, tables of all
// screens, what must be held and what may vary, other blades and meshes, ink, dryer, warnings
// and cautions. It computes no process value. Nothing is cut but the title in the head line of
// later pages and the colour names in the drawn stations, which stand whole elsewhere.
package sheet
