package job

import (
	"cmp"
	"fmt"
)

// Job is one job file: what is printed, where, and what every screen must do.
// Struct tags are the file format: one binder reads the file by them.
//
//	toml:"key"      the key in the file
//	unit:"mm"       a text with a unit, converted to this one (any unit of calc/unit)
//	min, max        the accepted range, in the unit of the field, both ends included
//	one:"a b c"     the accepted words; of a list, those of each entry
//	keys:"a b c"    the accepted keys of a table that is read into a map
//	form:"mesh"     the form that a text must have: mesh, cloth (mesh with its thread), layup, swatch, language;
//	                path is one that is not for paper and may hold any character but control ones
//	most:"64"       the most entries of a list
//	default:"..."   what a key that is left out means, as the file would write it
//	example:"..."   what errors show as a likely text; left out: the default, else the one of calc/unit
//	excludes:"key"  a key of the same table that may not stand beside this one
//	need:"true"     may not be left out
//	doc:"..."       one line for people: what the key means
type Job struct {
	File      string     `toml:"-"` // path as the user gave it
	Number    string     `toml:"job" doc:"job number, as the shop counts"`
	Title     string     `toml:"title" need:"true" doc:"what the job is called"`
	Customer  string     `toml:"customer" doc:"who ordered it"`
	Quantity  int        `toml:"quantity" min:"1" max:"10000000" doc:"pieces to print"`
	Due       Date       `toml:"due" doc:"day of delivery, 2026-12-04"`
	ShopPath  string     `toml:"shop" form:"path" doc:"the shop file, from the job file's folder; left out: the nearest shop.toml upward, else the built-in shop"`
	Press     string     `toml:"press" doc:"name of the press in the shop file; left out: the first one"`
	Garment   *Garment   `toml:"garment" excludes:"stock" doc:"what is printed on, if it is a garment"`
	Stock     *Stock     `toml:"stock" doc:"what is printed on, if it is a sheet and not a garment"`
	Locations []Location `toml:"location" need:"true" most:"64" doc:"a print position"`

	On   *Press `toml:"-"` // the press that Press means, filled in by Resolve
	Keys Places `toml:"-"` // nil: the job comes from no file
}

// Garment is the textile that is printed on.
type Garment struct {
	Name  string `toml:"name" doc:"what it is, for the paper"`
	Fibre string `toml:"fibre" one:"cotton polyester blend tri-blend nylon" doc:"main fibre"`
	Shade string `toml:"shade" one:"light medium dark" doc:"how dark the cloth is"`
}

// Stock is a sheet that is printed on instead of a garment.
type Stock struct {
	Name string `toml:"name" doc:"what it is, for the paper"`
	Kind string `toml:"kind" need:"true" one:"paper board metal plastic glass wood" doc:"the material"`
}

// Date is a calendar day without a zone; the zero Date means that none was given.
type Date struct{ Year, Month, Day int }

// ISO writes the day as 2026-12-04; the zero Date is an empty text.
func (d Date) ISO() string {
	if d == (Date{}) {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day)
}

// Before tells whether a day comes before another; the zero Date comes first.
func (d Date) Before(o Date) bool {
	return cmp.Or(d.Year-o.Year, d.Month-o.Month, d.Day-o.Day) < 0
}

// Location is a print position.
type Location struct {
	Name     string   `toml:"name" doc:"print position, as the shop says it; left out: location 1, 2, ..."`
	WidthMM  float64  `toml:"width" unit:"mm" min:"5" max:"3000" doc:"width of the printed image"`
	HeightMM float64  `toml:"height" unit:"mm" min:"5" max:"3000" doc:"height of the printed image"`
	Place    string   `toml:"place" one:"full-front full-back center-chest left-chest right-chest neck left-sleeve right-sleeve" doc:"where it stands on the garment; left out: from the name, where it is one of these"`
	DownMM   float64  `toml:"down" example:"7 cm" unit:"mm" min:"0" max:"900" doc:"from the collar seam to the top of the print; on a sleeve from the hem up to it; left out: customary"`
	AcrossMM float64  `toml:"across" example:"9 cm" unit:"mm" min:"0" max:"400" doc:"from the middle of the garment to the middle of the print; left out: customary"`
	Screens  []Screen `toml:"screen" need:"true" most:"64" doc:"the screens of this location, in print order"`

	Pos Pos `toml:"-"` // where the element starts in the file
}

// Screen is one screen of a location. What the file leaves out is chosen or computed;
// what it states is respected and judged.
type Screen struct {
	Color     string    `toml:"color" doc:"ink color, in words"`
	Swatch    string    `toml:"swatch" form:"swatch" doc:"color to show on paper, #rrggbb"`
	InkName   string    `toml:"ink" doc:"ink class, built in or of the shop's own"`
	Use       string    `toml:"use" one:"underbase solid detail halftone highlight blocker raised clear" doc:"what the screen must do"`
	MeshName  string    `toml:"mesh" form:"mesh" doc:"threads per inch - thread um (156-64), threads per cm (61/cm-64), or a name from the racks; left out: chosen"`
	EOM       *EOM      `toml:"eom" doc:"emulsion over mesh: 20 % of the fabric thickness, or 25 um"`
	Halftone  *Halftone `toml:"halftone" excludes:"bitmap" doc:"the halftone of this screen"`
	BitmapDPI float64   `toml:"bitmap" unit:"dpi" min:"30" max:"2400" doc:"resolution of a square-dot bitmap, 300 dpi"`
	FeatureMM float64   `toml:"feature" example:"5 mm" unit:"mm" min:"0.05" max:"2000" doc:"width of the typical printed feature; left out: from the use"`
	FinestMM  float64   `toml:"finest" example:"0.4 mm" unit:"mm" min:"0.02" max:"2000" doc:"smallest feature that must hold; left out: from halftone, bitmap or use"`
	Coverage  float64   `toml:"coverage" unit:"share" min:"0.001" max:"1" doc:"share of the location's area that this screen inks"`
	FilmUM    *Range    `toml:"film" unit:"um" min:"1" max:"2000" doc:"target cured film, 45..70 um; left out: from ink class and use"`
	HeightMM  float64   `toml:"height" example:"0.8 mm" unit:"mm" min:"0.02" max:"10" doc:"height that raised work must have after the heat; a film in its place wins"`
	BladeName string    `toml:"blade" doc:"layup or name of a blade in the rack; left out: chosen"`
	Strokes   int       `toml:"strokes" min:"1" max:"6" doc:"wet print strokes of a hit; left out: chosen"`
	Hits      int       `toml:"hits" min:"1" max:"6" doc:"prints with a flash between; left out: chosen"`
	FlashWish FlashWish `toml:"flash" doc:"flash after this screen: true, false, or \"dry\" for until it is dry; left out: as the order needs"`
	AngleDeg  *float64  `toml:"angle" unit:"deg" min:"0" max:"60" doc:"blade angle from vertical; left out: chosen"`
	LoadNCM   float64   `toml:"load" unit:"N/cm" min:"0.5" max:"20" doc:"line load on the blade; left out: the press's working load"`

	// Filled in by Resolve from the shop, never by the user.
	Ink    *Ink    `toml:"-"` // the class that InkName means
	Mesh   *Mesh   `toml:"-"` // nil when the file leaves the mesh open
	Blades []Blade `toml:"-"` // what BladeName means; none when the file leaves the blade open

	Pos  Pos    `toml:"-"` // where the element starts in the file
	Keys Places `toml:"-"` // nil: the screen comes from no file
}

// FlashWish is what a job asks of the flash after a screen.
type FlashWish string

// The wishes: left open, forced, forbidden, and forced until the film is dry.
const (
	FlashOpen FlashWish = ""
	FlashYes  FlashWish = "yes"
	FlashNo   FlashWish = "no"
	FlashDry  FlashWish = "dry"
)

// EOM is the emulsion over mesh as the file states it: exactly one of the two is not zero.
type EOM struct {
	UM    float64 // micrometres
	Share float64 // of the fabric thickness
}

// Halftone is the dot pattern of a screen.
type Halftone struct {
	LinesPerInch float64  `toml:"lines" unit:"lpi" need:"true" min:"5" max:"200" doc:"line count: 45 lpi, 18 l/cm"`
	AngleDeg     *float64 `toml:"angle" unit:"deg" min:"0" max:"180" doc:"screen angle against the image's upright"`
	Smallest     float64  `toml:"smallest" example:"5 %" unit:"share" min:"0.005" max:"0.5" doc:"smallest dot that must hold, 5 %"`
}

// Range is a closed interval in the unit of the field that holds it.
type Range struct{ Low, High float64 }

// Shop is what this shop has: racks, presses, heat, inks, and what it has measured.
type Shop struct {
	File        string       `toml:"-"`
	Name        string       `toml:"name" doc:"shop name for the paper"`
	Units       string       `toml:"units" one:"metric inch" doc:"units to print in"`
	Paper       string       `toml:"paper" one:"a4 letter" doc:"sheet in the office printer"`
	Language    string       `toml:"language" form:"language" doc:"language of the paper, such as en or es"`
	Logo        string       `toml:"logo" form:"path" doc:"picture of the shop for its documents, PNG or JPEG, from the shop file's folder"`
	Accent      string       `toml:"accent" form:"swatch" doc:"color of the rules on the shop's documents, #rrggbb"`
	Waste       float64      `toml:"waste" unit:"share" min:"0" max:"1" default:"10 %" doc:"ink lost to test prints and rags, of what is printed"`
	StaysG      float64      `toml:"stays-in-screen" unit:"g" min:"0" max:"5000" default:"150 g" doc:"ink that a screen must hold beyond what is printed"`
	Blades      []Blade      `toml:"blade" most:"256" doc:"a blade stock in the rack"`
	Meshes      []Mesh       `toml:"mesh" most:"256" doc:"a mesh stretched on frames"`
	Presses     []Press      `toml:"press" most:"64" doc:"a press"`
	Flashes     []Flash      `toml:"flash" most:"64" doc:"a flash unit"`
	Dryers      []Dryer      `toml:"dryer" most:"64" doc:"a conveyor dryer"`
	Inks        []Ink        `toml:"ink" most:"256" doc:"an ink class of the shop's own, or other figures for a built-in one"`
	Calibration *Calibration `toml:"calibration" doc:"what the shop's own measurements said"`
}

// Blade is a blade stock in the rack.
type Blade struct {
	Name         string    `toml:"name" doc:"what the shop calls it; left out: the layup"`
	Layup        string    `toml:"layup" need:"true" form:"layup" doc:"Shore A of the layers across the thickness: 70, 65/90/65"`
	ThicknessMM  float64   `toml:"thickness" unit:"mm" min:"3" max:"25" default:"9.5 mm" doc:"whole thickness of the rubber"`
	LayersMM     []float64 `toml:"layers" example:"3 mm" unit:"mm" min:"0.2" max:"25" most:"7" doc:"thickness of each layer; left out: equal shares"`
	FreeHeightMM float64   `toml:"free-height" unit:"mm" min:"5" max:"80" default:"25 mm" doc:"rubber that shows below the holder"`
	LengthsMM    []float64 `toml:"lengths" unit:"mm" min:"30" max:"3000" most:"64" doc:"blade lengths at hand"`
	Count        int       `toml:"count" min:"0" max:"10000" default:"1" doc:"how many"`
	Edge         string    `toml:"edge" one:"new used worn" default:"new" doc:"state of the edge"`
	ModulusMPa   []float64 `toml:"modulus" unit:"MPa" min:"0.3" max:"500" most:"7" doc:"Young's modulus of each layer, if measured; left out: from hardness"`

	Hardness []float64 `toml:"-"` // Shore A by layer, parsed from Layup
}

// Mesh is a mesh on frames. Opening and thickness may be measured; zero means geometry.
type Mesh struct {
	Name          string  `toml:"mesh" need:"true" form:"cloth" doc:"156-64: threads per inch - thread um; or 61/cm-64"`
	OpeningUM     float64 `toml:"opening" example:"95 um" unit:"um" min:"5" max:"10000" doc:"measured opening"`
	FabricUM      float64 `toml:"fabric" example:"100 um" unit:"um" min:"10" max:"10000" doc:"measured fabric thickness"`
	Weave         string  `toml:"weave" one:"plain twill" default:"plain" doc:"weave"`
	FrameWidthMM  float64 `toml:"frame-width" example:"51 cm" unit:"mm" min:"50" max:"5000" doc:"inside width of the frame, along the blade"`
	FrameHeightMM float64 `toml:"frame-height" example:"66 cm" unit:"mm" min:"50" max:"5000" doc:"inside height of the frame, along the stroke"`
	TensionNPerCM float64 `toml:"tension" unit:"N/cm" min:"1" max:"100" doc:"tension on the frame"`
	CountPerInch  float64 `toml:"-"` // parsed from Name
	ThreadUM      float64 `toml:"-"` // parsed from Name
	OnRack        bool    `toml:"-"` // false: stated by the job, not on the shop's frames
}

// Press is a press of the shop.
type Press struct {
	Name        string  `toml:"name" need:"true" doc:"what the shop calls it"`
	Kind        string  `toml:"kind" need:"true" one:"manual automatic flatbed" doc:"how the blade is moved"`
	Heads       int     `toml:"heads" min:"1" max:"40" doc:"stations that can hold a screen"`
	BoreMM      float64 `toml:"bore" example:"25 mm" unit:"mm" min:"5" max:"200" doc:"bore of a squeegee cylinder"`
	Cylinders   int     `toml:"cylinders" min:"1" max:"8" doc:"cylinders that press on one blade"`
	StrokeMPerS float64 `toml:"stroke-speed" unit:"m/s" min:"0.01" max:"3" default:"0.3 m/s" doc:"speed of the print stroke"`
	LoadNPerCM  float64 `toml:"load" unit:"N/cm" min:"0.5" max:"20" default:"5 N/cm" doc:"working line load: the least that passes the wipe test"`
	Flood       *bool   `toml:"flood" default:"true" doc:"whether the screen is flooded before each print stroke"`
}

// Flash is a flash unit. Its flux is stated, or solved from one timed flash, or a default.
type Flash struct {
	Name        string  `toml:"name" need:"true" doc:"what the shop calls it"`
	Kind        string  `toml:"kind" one:"panel quartz" default:"panel" doc:"heated panel or quick quartz lamps"`
	FluxKWM2    float64 `toml:"flux" unit:"kW/m2" min:"1" max:"100" excludes:"timed" doc:"heat that the print takes up, if measured"`
	TimedS      float64 `toml:"timed" example:"4 s" unit:"s" min:"0.2" max:"30" doc:"a flash that just gelled a print, platens warm"`
	TimedFilmUM float64 `toml:"timed-film" unit:"um" min:"1" max:"1000" default:"50 um" doc:"wet film of the timed print"`
	TimedGelC   float64 `toml:"timed-gel" unit:"C" min:"40" max:"200" default:"112 C" doc:"gel temperature of its ink"`
}

// Dryer is a conveyor dryer.
type Dryer struct {
	Name        string  `toml:"name" need:"true" doc:"what the shop calls it"`
	HeatedMM    float64 `toml:"heated-length" example:"2.4 m" unit:"mm" min:"200" max:"30000" doc:"heated length of the tunnel"`
	BeltMM      float64 `toml:"belt-width" example:"60 cm" unit:"mm" min:"100" max:"5000" doc:"width of the belt"`
	MaxC        float64 `toml:"top-temperature" unit:"C" min:"60" max:"400" doc:"highest setting"`
	BeltMPerMin *Range  `toml:"belt-speed" example:"0.5..4 m/min" unit:"m/min" min:"0.05" max:"60" doc:"slowest and fastest belt"`
}

// Ink is an ink class: what inks of one kind share. The can's data sheet wins over it.
type Ink struct {
	Name          string             `toml:"name" need:"true" doc:"name of the class"`
	Like          string             `toml:"like" doc:"class whose figures are taken for what is left out here"`
	Solids        float64            `toml:"solids" example:"40 %" unit:"share" min:"0.05" max:"1" doc:"volume solids: cured film / wet film"`
	DensityKgPerL float64            `toml:"density" unit:"kg/L" min:"0.5" max:"3" doc:"density"`
	DryKgPerL     float64            `toml:"dry-density" example:"1.3 kg/L" unit:"kg/L" min:"0.5" max:"6" doc:"density of the dried film; left out: as if solids and water added up"`
	EtaInfPaS     float64            `toml:"eta-inf" unit:"Pa.s" min:"0.01" max:"500" default:"3 Pa.s" doc:"viscosity at very high shear"`
	KPaSn         float64            `toml:"consistency" unit:"Pa.s^n" min:"0" max:"2000" default:"50 Pa.s^n" doc:"consistency of the flow curve"`
	N             float64            `toml:"flow-index" min:"0.05" max:"1" default:"0.5" doc:"power-law index of the flow curve"`
	ScatterPerMM  float64            `toml:"scattering" example:"80 1/mm" unit:"1/mm" min:"1" max:"1000" doc:"light scattering of the cured film, of inks that hide the cloth"`
	Whiteness     float64            `toml:"whiteness" example:"90 %" unit:"share" min:"0.02" max:"0.99" doc:"reflectance of a film too thick to see through"`
	Rise          float64            `toml:"rise" min:"1" max:"30" doc:"volume after the heat / volume before it, of inks that rise"`
	GelC          *Range             `toml:"gel" example:"104..121 C" unit:"C" min:"40" max:"250" doc:"gel temperature"`
	CureC         *Range             `toml:"cure" example:"149..171 C" unit:"C" min:"40" max:"250" doc:"temperature that the whole film must reach"`
	CureTopC      float64            `toml:"cure-top" unit:"C" min:"40" max:"300" doc:"never above"`
	TackS         *Range             `toml:"tack" example:"6..12 s" unit:"s" min:"0.5" max:"120" doc:"flash that makes an ink that reacts dry to the touch"`
	DwellS        *Range             `toml:"dwell" example:"45..90 s" unit:"s" min:"1" max:"3600" doc:"time in the tunnel"`
	On            string             `toml:"on" one:"garment sheet" default:"garment" doc:"what the class is made for"`
	FlashEach     bool               `toml:"flash-each" doc:"flashed and cooled after every color"`
	Dries         string             `toml:"dries" one:"fuse water solvent uv react" doc:"how the film sets"`
	Cautions      []string           `toml:"cautions" one:"hot-flash hot-dryer fume moving-press solvent discharge-agent uv-lamp uv-skin flammable" most:"32" doc:"codes of the cautions that the paper must show"`
	Uses          map[string]*Custom `toml:"use" keys:"underbase solid detail halftone highlight blocker raised clear" doc:"customary film, mesh and stencil by use"`
}

// Custom is what is customary for one use of an ink class.
type Custom struct {
	FilmUM *Range `toml:"film" unit:"um" min:"1" max:"2000" doc:"customary cured film"`
	Mesh   string `toml:"mesh" form:"cloth" doc:"customary mesh"`
	EOM    *EOM   `toml:"eom" doc:"customary emulsion over mesh"`
}

// Calibration is what the shop's own measurements said of the predicted film, as a fit writes it.
type Calibration struct {
	Factor  float64 `toml:"factor" need:"true" min:"0.2" max:"5" doc:"measured film / predicted film, of a mesh that is not listed"`
	Error   float64 `toml:"error" min:"0" max:"2" default:"0.12" doc:"relative standard error of factor, what meshes differ by included"`
	Scatter float64 `toml:"scatter" need:"true" min:"0.01" max:"1" doc:"residual scatter of one measurement, as a standard deviation of ln(film)"`
	Day     float64 `toml:"day" min:"0" max:"1" default:"0.08" doc:"what a new day brings, as a standard deviation of ln(film)"`
	Count   int     `toml:"count" need:"true" min:"1" max:"1000000" doc:"measurements behind it"`
	Date    Date    `toml:"date" doc:"day of the last measurement"`

	MeanDeg    float64 `toml:"mean-angle" unit:"deg" min:"0" max:"90" default:"15 deg" doc:"mean angle of the measured prints, from vertical"`
	MeanShoreA float64 `toml:"mean-hardness" min:"1" max:"100" default:"70" doc:"mean Shore A of their edges"`
	MeanSlope  float64 `toml:"mean-slope" min:"0" max:"20" default:"0" doc:"mean effect of the next stroke's share on ln(film)"`

	Angle           float64 `toml:"angle" min:"-2" max:"2" default:"0" doc:"relative change of the film per 10 deg of lean beyond the computed one"`
	AngleError      float64 `toml:"angle-error" min:"0" max:"2" default:"0.0305" doc:"its standard error"`
	Hardness        float64 `toml:"hardness" min:"-2" max:"2" default:"0" doc:"relative change per 10 Shore A of the edge beyond the computed one"`
	HardnessError   float64 `toml:"hardness-error" min:"0" max:"2" default:"0.04" doc:"its standard error"`
	NextStroke      float64 `toml:"next-stroke" min:"0" max:"0.94" default:"0.4" doc:"share of a stroke that a further wet stroke adds"`
	NextStrokeError float64 `toml:"next-stroke-error" min:"0" max:"2" default:"0.2" doc:"its standard error"`

	Blades []string     `toml:"blades" most:"256" doc:"blades that were measured"`
	Meshes []MeshFactor `toml:"mesh" most:"256" doc:"a mesh that was measured"`
}

// MeshFactor is what a calibration says of one mesh.
type MeshFactor struct {
	Name   string  `toml:"mesh" need:"true" doc:"name of the mesh, as in the racks"`
	Factor float64 `toml:"factor" need:"true" min:"0.1" max:"10" doc:"measured film / predicted film on this mesh"`
	Error  float64 `toml:"error" need:"true" min:"0" max:"2" doc:"its relative standard error"`
	Own    float64 `toml:"own-error" min:"0" max:"2" doc:"relative standard error of what it differs by from the other meshes; left out: as error"`
	Count  int     `toml:"count" need:"true" min:"1" max:"1000000" doc:"measurements on it"`
}

// Pos is a place in a file, counted from 1; the zero Pos is no place.
type Pos struct {
	File      string
	Line, Col int
}
