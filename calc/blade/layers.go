package blade

import (
	"errors"
	"fmt"
)

// Layer is one layer of a blade across its thickness.
type Layer struct {
	ThicknessMM float64
	ModulusMPa  float64 // Young's modulus
}

func (l Layer) check(at string) error {
	return first(within(at+"thickness", l.ThicknessMM, 0.05, 50, "mm"), within(at+"modulus", l.ModulusMPa, 0.1, 1000, "MPa"))
}

// maxLayers is more than any layup has.
const maxLayers = 16

// RigidityNM is the bending rigidity of a layered blade per width, in N m, in plane strain:
// with the neutral axis y0 = sum(E t y)/sum(E t),
// D = sum E ((top-y0)^3 - (bottom-y0)^3) / 3 / (1 - nu^2), nu = 0.5.
//
// The core of equal thirds counts for only 1/27 of the section: a stiff core helps by about a
// tenth, no more. Layers are given front to back; the order matters only for an unsymmetric
// layup, and turning the blade round changes nothing.
//
// Range: 1 to 16 layers, each 0.05 to 50 mm and 0.1 to 1000 MPa; an error outside. Kind:
// derived, the transformed section of the strength-of-materials textbooks [4].
func RigidityNM(layers []Layer) (float64, error) {
	if len(layers) == 0 {
		return 0, errors.New("blade: no layers; at least one is needed")
	}
	if len(layers) > maxLayers {
		return 0, fmt.Errorf("blade: %d layers; 1 to %d are accepted", len(layers), maxLayers)
	}
	var et, ety, y float64
	for i, l := range layers {
		if l.check("") != nil { // the words only where they are needed: they cost more than the sum
			return 0, l.check(fmt.Sprintf("layer %d: ", i+1))
		}
		t := l.ThicknessMM / 1e3
		et += l.ModulusMPa * 1e6 * t
		ety += l.ModulusMPa * 1e6 * t * (y + t/2)
		y += t
	}
	y0 := ety / et
	var d float64
	y = 0
	for _, l := range layers {
		bottom := y - y0
		y += l.ThicknessMM / 1e3
		top := y - y0
		d += l.ModulusMPa * 1e6 * (top*top*top - bottom*bottom*bottom) / 3
	}
	return d / (1 - Poisson*Poisson), nil
}
