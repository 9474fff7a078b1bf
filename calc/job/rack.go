package job

import (
	"math"

	"bladecard/calc/blade"
	"bladecard/calc/mesh"
)

// Cloth is the geometry of a mesh on the racks, what was measured of it taken as it is.
//
// Range: a mesh that package file has read; an error as in mesh.New. Kind: derived, see mesh.New.
func (m Mesh) Cloth() (mesh.Cloth, error) {
	return mesh.New(mesh.Spec{
		CountPerInch: m.CountPerInch, ThreadUM: m.ThreadUM, OpeningUM: m.OpeningUM, FabricUM: m.FabricUM, Twill: m.Weave == "twill",
	})
}

// Layers are the layers of a blade with their moduli, the hardness of each moved by shiftShoreA but kept where
// Gent's relation holds. A measured modulus moves by the ratio that the relation gives. Layers without
// thicknesses of their own are equally thick.
//
// Range: layers of 40 to 95 Shore A; an error as in blade.ModulusGentMPa. Kind: derived.
func (b Blade) Layers(shiftShoreA float64) ([]blade.Layer, error) {
	out := make([]blade.Layer, len(b.Hardness))
	for i, h := range b.Hardness {
		mpa, err := blade.ModulusGentMPa(math.Max(blade.MinShoreA, math.Min(blade.MaxShoreA, h+shiftShoreA)))
		if err != nil {
			return nil, err
		}
		if len(b.ModulusMPa) == len(b.Hardness) {
			unmoved, err := blade.ModulusGentMPa(h)
			if err != nil {
				return nil, err
			}
			mpa *= b.ModulusMPa[i] / unmoved
		}
		out[i] = blade.Layer{ThicknessMM: b.ThicknessMM / float64(len(b.Hardness)), ModulusMPa: mpa}
		if len(b.LayersMM) == len(b.Hardness) {
			out[i].ThicknessMM = b.LayersMM[i]
		}
	}
	return out, nil
}
