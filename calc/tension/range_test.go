package tension

import (
	"math"
	"testing"

	"bladecard/calc/internal/checks"
)

// TestRefusals gives every function what it must refuse; the error says what is accepted.
func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	one := func(_ float64, err error) error { return err }
	off := func(dries string, width float64) error { _, _, err := OffContactMM(dries, width); return err }
	verdict := func(n, um float64) error { _, err := TensionVerdict(n, um, false); return err }
	fit := func(frame, blade float64) error { _, err := BladePathFits(frame, blade); return err }
	for name, err := range map[string]error{
		"shift, too steep behind":    one(ImageShiftMM(26, 200, 100)),
		"shift, NaN":                 one(ImageShiftMM(3, nan, 100)),
		"stretch, margin over half":  one(StretchMM(3, 500, 251)),
		"stretch, span NaN":          one(StretchMM(3, nan, 100)),
		"stretch, span inf":          one(StretchMM(3, inf, 100)),
		"stretch, margin too near":   one(StretchMM(3, 500, 11)),
		"force, tension 0":           one(TouchForceNPerCM(0, 3, 100, 100)),
		"force, tension NaN":         one(TouchForceNPerCM(nan, 3, 100, 100)),
		"force, distance NaN":        one(TouchForceNPerCM(25, 3, 100, nan)),
		"peel, distance 0":           one(PeelAngleDeg(3, 0)),
		"peel, gap 51":               one(PeelAngleDeg(51, 100)),
		"off-contact, unknown":       off("steam", 500),
		"off-contact, width NaN":     off("fuse", nan),
		"off-contact, width 10":      off("fuse", 10),
		"verdict, tension NaN":       verdict(nan, 64),
		"verdict, tension 0":         verdict(0, 64),
		"verdict, thread inf":        verdict(25, inf),
		"blade path, over the frame": fit(400, 401),
		"blade path, NaN":            fit(400, nan),
		"blade path, frame NaN":      fit(nan, 300),
		"blade length, image 0":      one(BladeLengthMM(0)),
	} {
		checks.Refused(t, "tension", name, err)
	}
}
