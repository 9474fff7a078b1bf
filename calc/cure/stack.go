package cure

// layer is a slab of one material, cut into cells of equal thickness.
type layer struct {
	thicknessM     float64
	conductivity   float64 // W/(m K)
	heatCapacity   float64 // per volume, J/(m3 K)
	startC         float64
	cells          int
	contactM2KPerW float64 // resistance to the layer below
	waterKGPerM3   float64 // that leaves between DryingFromC and DryingToC
}

// The stack under a flash unit: ink, garment, pad of the platen, platen. Plasticised PVC
// conducts 0.13 to 0.20 W/(m K) and weighs 1160 to 1350 kg/m3 (published: a thermal analysis [41]
// maker's data sheet); every other property is from memory, of the customary order.
const (
	inkConductivity    = 0.17
	inkHeatCapacity    = 1250 * 1300
	fabricM            = 0.5e-3
	fabricConductivity = 0.06
	fabricKGPerM3      = 320
	fabricHeatCapacity = fabricKGPerM3 * 1340
	padM               = 1.5e-3
	padConductivity    = 0.2
	padHeatCapacity    = 1.9e6
	plateM             = 5e-3
	plateConductivity  = 150
	plateHeatCapacity  = 2.43e6
	contactM2KPerW     = 2e-4 // between garment and pad
)

// What the surface loses to the air of the shop (from memory).
const (
	surfaceLossWM2K = 10.0
	emissivity      = 0.9
	airC            = 25.0
	stefanBoltzmann = 5.670374e-8 // W/(m2 K4)
	zeroC           = 273.15
)

// air is what a surface loses heat to: by convection to the air, by radiation to what is round it.
type air struct {
	lossWM2K float64
	airC     float64
	emits    float64
	radiantC float64
}

// shop is the air round a flash unit.
var shop = air{lossWM2K: surfaceLossWM2K, airC: airC, emits: emissivity, radiantC: airC}

// lost is what a surface at the given temperature loses in W/m2, and how much more a kelvin
// warmer.
func (a air) lost(tempC float64) (wm2, perK float64) {
	t, round := tempC+zeroC, a.radiantC+zeroC
	t2, r2 := t*t, round*round
	es := a.emits * stefanBoltzmann
	return a.lossWM2K*(tempC-a.airC) + es*(t2*t2-r2*r2), a.lossWM2K + 4*es*t2*t
}

// heating is a stack under a flux, marched in time by implicit finite volumes: the back is
// adiabatic, the surface takes the flux and loses heat by convection and radiation.
type heating struct {
	tempC    []float64
	capacity []float64 // of a cell, J/(m2 K)
	drying   []float64 // what its water adds to that between DryingFromC and DryingToC
	conduct  []float64 // from a cell to the next below, W/(m2 K)
	sum      []float64 // of what a cell conducts up and down
	swept    []float64 // scratch of the tridiagonal solution
	around   air
}

func newHeating(layers []layer, around air) *heating {
	n := 0
	for _, l := range layers {
		n += l.cells
	}
	h := &heating{
		tempC: make([]float64, n), capacity: make([]float64, n), drying: make([]float64, n), conduct: make([]float64, n-1),
		sum: make([]float64, n), swept: make([]float64, n), around: around,
	}
	at := 0
	var below float64 // resistance from the middle of the last cell to the edge of its layer and contact
	for _, l := range layers {
		dx := l.thicknessM / float64(l.cells)
		for k := range l.cells {
			r := dx / l.conductivity // from middle to middle within the layer
			if k == 0 {
				r = below + dx/(2*l.conductivity)
			}
			if at > 0 {
				h.conduct[at-1] = 1 / r
				h.sum[at-1] += 1 / r
				h.sum[at] += 1 / r
			}
			h.tempC[at] = l.startC
			h.capacity[at] = dx * l.heatCapacity
			h.drying[at] = dx * l.waterKGPerM3 * LatentKJPerKG * 1000 / (DryingToC - DryingFromC)
			at++
		}
		below = dx/(2*l.conductivity) + l.contactM2KPerW
	}
	return h
}

// step marches on by dt seconds under a flux. The loss of the surface is that of the step's end,
// on the tangent at its start, so that no step is too long to be stable.
func (h *heating) step(fluxWM2, dt float64) {
	t, n := h.tempC, len(h.tempC)
	lost, perK := h.around.lost(t[0])
	rate := 1 / dt
	store := h.holds(0) * rate
	inv := 1 / (store + h.sum[0] + perK)
	t[0] = (store*t[0] + fluxWM2 - lost + perK*t[0]) * inv
	for i := 1; i < n; i++ { // forward
		up := h.conduct[i-1]
		h.swept[i-1] = up * inv
		store = h.holds(i) * rate
		inv = 1 / (store + h.sum[i] - up*h.swept[i-1])
		t[i] = (store*t[i] + up*t[i-1]) * inv
	}
	for i := n - 2; i >= 0; i-- { // back
		t[i] += h.swept[i] * t[i+1]
	}
}

// holds is the heat that a cell takes up a kelvin, J/(m2 K), with that of its water where it dries.
func (h *heating) holds(i int) float64 {
	if t := h.tempC[i]; t < DryingFromC || t >= DryingToC {
		return h.capacity[i]
	}
	return h.capacity[i] + h.drying[i]
}
