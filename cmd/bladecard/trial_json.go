package main

import (
	"bladecard/calc/choose"
	"bladecard/calc/trials"
)

// trialJSON is a trial as JSON: the prints in order and the expected range before and after, half of it as a logarithm and
// its ends in percent of the predicted film.
type trialJSON struct {
	Press   string       `json:"press"`
	Ink     string       `json:"ink"`
	Prints  []trialPrint `json:"prints"`
	Minutes []float64    `json:"minutes"`
	Before  float64      `json:"range_log_before"`
	After   float64      `json:"range_log_after"`
	BeforeP trialRange   `json:"range_percent_before"`
	AfterP  trialRange   `json:"range_percent_after"`
	Meshes  []trialMesh  `json:"meshes"`
}

type trialPrint struct {
	Day      string  `json:"day"`
	Mesh     string  `json:"mesh"`
	EOMUM    float64 `json:"eom_um"`
	Blade    string  `json:"blade"`
	AngleDeg float64 `json:"angle_deg"`
	Strokes  int     `json:"strokes"`
}

type trialMesh struct {
	Mesh    string     `json:"mesh"`
	Prints  int        `json:"prints"`
	Before  float64    `json:"range_log_before"`
	After   float64    `json:"range_log_after"`
	BeforeP trialRange `json:"range_percent_before"`
	AfterP  trialRange `json:"range_percent_after"`
}

type trialRange struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

func rangeOf(b trials.Band) trialRange { return trialRange{-b.UnderPercent, b.OverPercent} }

func newTrialJSON(t trials.Trial, p choose.Patches) trialJSON {
	out := trialJSON{Press: p.Press, Ink: p.Ink, Minutes: t.Minutes, Before: t.Before.Half, After: t.After.Half, BeforeP: rangeOf(t.Before), AfterP: rangeOf(t.After)}
	for _, x := range t.Prints {
		out.Prints = append(out.Prints, trialPrint{x.Day, x.Mesh, p.EOMUM[x.Mesh], x.Blade, x.AngleDeg, x.Strokes})
	}
	for _, m := range t.Meshes {
		out.Meshes = append(out.Meshes, trialMesh{m.Name, m.Prints, m.Before.Half, m.After.Half, rangeOf(m.Before), rangeOf(m.After)})
	}
	return out
}
