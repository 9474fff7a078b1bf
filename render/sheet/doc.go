// Package sheet lays out the setup sheet of a job: a paper that stands alone in another shop.
// Its first pages hold what a printer needs at the press: head, warnings, placement, what all screens share, press
// order, a row a screen, what to take instead of a blade or a mesh, and a table to send back with the first print.
// Details, dryer, ink and charts follow. It is made from a plan.Plan and computes no process value. Nothing is cut
// but the head line of later pages and the color names in the drawn stations, which stand whole elsewhere.
package sheet
