package choose

import (
	"bladecard/calc/blade"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// psiPerBar is the pressure of a bar in pounds per square inch: 1e5 Pa over
// 4.4482216152605 N / (0.0254 m)^2 (definition).
const psiPerBar = 1e5 / (4.4482216152605 / (0.0254 * 0.0254))

// pressure is what the press must show for the line load; nil where the press has no
// cylinders, or the length of the blade is not known. A load that the cylinders cannot give is
// a warning, not a figure.
func pressure(press job.Press, loadNPerCM, bladeMM float64) (*plan.Pressure, []plan.Warning) {
	if press.BoreMM == 0 || press.Cylinders == 0 || bladeMM == 0 {
		return nil, nil
	}
	bar, err := blade.CylinderPressureBar(loadNPerCM, press.BoreMM, press.Cylinders, bladeMM)
	if err != nil {
		return nil, []plan.Warning{warn("cylinders-small", vals{"load_ncm": loadNPerCM, "blade_mm": bladeMM})}
	}
	return &plan.Pressure{Bar: bar, PSI: bar * psiPerBar}, nil
}
