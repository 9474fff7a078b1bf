// Package trialsheet lays out the sheet that test prints are made by: what to prepare, the prints in their order
// with boxes for what was measured, and what they will tell.
package trialsheet
