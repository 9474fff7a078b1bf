package cure

import "math"

// layer is a slab of one material, cut into cells of equal thickness.
type layer struct {
	thicknessM     float64
	conductivity   float64 // W/(m K)
	heatCapacity   float64 // per volume, J/(m3 K)
	startC         float64
	cells          int
	contactM2KPerW float64 // resistance to the layer below
}

// The stack under a flash unit: ink, garment, pad of the platen, platen. Plasticised PVC
// conducts 0.13 to 0.20 W/(m K) and weighs 1160 to 1350 kg/m3 (published: a thermal analysis
// maker's data sheet); every other property is from memory, of the customary order.
const (
	inkConductivity    = 0.17
	inkHeatCapacity    = 1250 * 1300
	fabricM            = 0.5e-3
	fabricConductivity = 0.06
	fabricHeatCapacity = 320 * 1340
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

// heating is a stack under a flux, marched in time by implicit finite volumes: the back is
// adiabatic, the surface takes the flux and loses heat by convection and radiation.
type heating struct {
	tempC    []float64
	capacity []float64 // of a cell, J/(m2 K)
	conduct  []float64 // from a cell to the next below, W/(m2 K)
	half     float64   // from the surface to the middle of the first cell, W/(m2 K)
	lossWM2K float64
	emits    float64
	a, b, c  []float64 // scratch of the tridiagonal solution
}

func newHeating(layers []layer, lossWM2K, emits float64) *heating {
	h := &heating{lossWM2K: lossWM2K, emits: emits}
	var below float64 // resistance from the middle of the last cell to the edge of its layer and contact
	for i, l := range layers {
		dx := l.thicknessM / float64(l.cells)
		for k := range l.cells {
			r := dx / l.conductivity // from middle to middle within the layer
			if k == 0 {
				r = below + dx/(2*l.conductivity)
			}
			if i > 0 || k > 0 {
				h.conduct = append(h.conduct, 1/r)
			}
			h.tempC = append(h.tempC, l.startC)
			h.capacity = append(h.capacity, dx*l.heatCapacity)
		}
		below = dx/(2*l.conductivity) + l.contactM2KPerW
	}
	h.half = 2 * layers[0].conductivity * float64(layers[0].cells) / layers[0].thicknessM
	n := len(h.tempC)
	h.a, h.b, h.c = make([]float64, n), make([]float64, n), make([]float64, n)
	return h
}

// surfaceC is the temperature of the face that takes the flux.
func (h *heating) surfaceC(fluxWM2 float64) float64 {
	return h.tempC[0] + (fluxWM2-h.lost(h.tempC[0]))/h.half
}

// lost is what a surface at the given temperature loses, W/m2.
func (h *heating) lost(tempC float64) float64 {
	t, air := tempC+zeroC, airC+zeroC
	return h.lossWM2K*(tempC-airC) + h.emits*stefanBoltzmann*(math.Pow(t, 4)-math.Pow(air, 4))
}

// step marches on by dt seconds under a flux; the loss of the surface is that of the step's start.
func (h *heating) step(fluxWM2, dt float64) {
	n := len(h.tempC)
	for i := range n {
		up, down := 0.0, 0.0
		if i > 0 {
			up = h.conduct[i-1]
		}
		if i < n-1 {
			down = h.conduct[i]
		}
		store := h.capacity[i] / dt
		h.a[i], h.b[i], h.c[i] = -up, store+up+down, -down
		h.tempC[i] *= store
	}
	surface := h.tempC[0] * dt / h.capacity[0]
	h.tempC[0] += fluxWM2 - h.lost(surface)
	for i := 1; i < n; i++ { // forward
		f := h.a[i] / h.b[i-1]
		h.b[i] -= f * h.c[i-1]
		h.tempC[i] -= f * h.tempC[i-1]
	}
	h.tempC[n-1] /= h.b[n-1]
	for i := n - 2; i >= 0; i-- { // back
		h.tempC[i] = (h.tempC[i] - h.c[i]*h.tempC[i+1]) / h.b[i]
	}
}
