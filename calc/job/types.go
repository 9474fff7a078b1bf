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
//	                path is one that is not for paper and may hold any character but control ones;
//	                ink is any text, and a schema lists the built-in classes
//	most:"64"       the most entries of a list
//	longest:"32"    the most characters of a text; left out: as many as any text may have
//	default:"..."   what a key that is left out means, as the file would write it
//	example:"..."   what errors show as a likely text; left out: the default, else the one of calc/unit
//	excludes:"key"  a key of the same table that may not stand beside this one
//	need:"true"     may not be left out
//
// What a key means stands under [key] in templates/lang, a line in every language.
type Job struct {
	File      string     `toml:"-"` // path as the user gave it
	Number    string     `toml:"job" longest:"32"`
	Title     string     `toml:"title" need:"true"`
	Customer  string     `toml:"customer"`
	Quantity  int        `toml:"quantity" min:"1" max:"10000000"`
	Due       Date       `toml:"due"`
	ShopPath  string     `toml:"shop" form:"path"`
	Press     string     `toml:"press"`
	Garment   *Garment   `toml:"garment" excludes:"stock"`
	Stock     *Stock     `toml:"stock"`
	Locations []Location `toml:"location" need:"true" most:"64"`

	On   *Press `toml:"-"` // the press that Press means, filled in by Resolve
	Keys Places `toml:"-"` // nil: the job comes from no file
}

// Garment is the textile that is printed on.
type Garment struct {
	Name    string `toml:"name"`
	Fibre   string `toml:"fibre" one:"cotton polyester blend tri-blend nylon"`
	Weave   string `toml:"weave" one:"knit woven fleece" default:"knit"`
	Shade   string `toml:"shade" one:"light medium dark"`
	Outline string `toml:"outline" one:"tee hood youth long-sleeve cap tote apron"`
}

// Stock is a sheet that is printed on instead of a garment.
type Stock struct {
	Name string `toml:"name"`
	Kind string `toml:"kind" need:"true" one:"paper board metal plastic glass wood"`
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
	Name     string   `toml:"name"`
	WidthMM  float64  `toml:"width" unit:"mm" min:"5" max:"3000"`
	HeightMM float64  `toml:"height" unit:"mm" min:"5" max:"3000"`
	Place    string   `toml:"place" one:"full-front full-back center-chest left-chest right-chest neck left-sleeve right-sleeve"`
	DownMM   float64  `toml:"down" example:"7 cm" unit:"mm" min:"0" max:"900"`
	AcrossMM float64  `toml:"across" example:"9 cm" unit:"mm" min:"0" max:"400"`
	Screens  []Screen `toml:"screen" need:"true" most:"64"`

	Pos Pos `toml:"-"` // where the element starts in the file
}

// Screen is one screen of a location. What the file leaves out is chosen or computed;
// what it states is respected and judged.
type Screen struct {
	Color     string    `toml:"color"`
	Swatch    string    `toml:"swatch" form:"swatch"`
	InkName   string    `toml:"ink" form:"ink"`
	Use       string    `toml:"use" one:"underbase solid detail halftone highlight blocker raised clear"`
	MeshName  string    `toml:"mesh" form:"mesh"`
	EOM       *EOM      `toml:"eom"`
	Halftone  *Halftone `toml:"halftone" excludes:"bitmap"`
	BitmapDPI float64   `toml:"bitmap" unit:"dpi" min:"30" max:"2400"`
	FeatureMM float64   `toml:"feature" example:"5 mm" unit:"mm" min:"0.05" max:"2000"`
	FinestMM  float64   `toml:"finest" example:"0.4 mm" unit:"mm" min:"0.02" max:"2000"`
	Coverage  float64   `toml:"coverage" unit:"share" min:"0.001" max:"1"`
	FilmUM    *Range    `toml:"film" unit:"um" min:"1" max:"2000"`
	HeightMM  float64   `toml:"height" example:"0.8 mm" unit:"mm" min:"0.02" max:"10"`
	BladeName string    `toml:"blade"`
	Strokes   int       `toml:"strokes" min:"1" max:"6"`
	Hits      int       `toml:"hits" min:"1" max:"6"`
	FlashWish FlashWish `toml:"flash"`
	AngleDeg  *float64  `toml:"angle" unit:"deg" min:"0" max:"60"`
	LoadNCM   float64   `toml:"load" unit:"N/cm" min:"0.5" max:"20"`

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
	LinesPerInch float64  `toml:"lines" unit:"lpi" need:"true" min:"5" max:"200"`
	AngleDeg     *float64 `toml:"angle" unit:"deg" min:"0" max:"180"`
	Smallest     float64  `toml:"smallest" example:"5 %" unit:"share" min:"0.005" max:"0.5"`
}

// Range is a closed interval in the unit of the field that holds it.
type Range struct{ Low, High float64 }

// Shop is what this shop has: racks, presses, heat, inks, and what it has measured.
type Shop struct {
	File         string       `toml:"-"`
	Name         string       `toml:"name"`
	Units        string       `toml:"units" one:"metric inch" default:"metric"`
	Paper        string       `toml:"paper" one:"a4 letter" default:"a4"`
	Language     string       `toml:"language" form:"language" default:"en"`
	Logo         string       `toml:"logo" form:"path"`
	Log          string       `toml:"log" form:"path"`
	Accent       string       `toml:"accent" form:"swatch"`
	Contact      string       `toml:"contact"`
	Waste        float64      `toml:"waste" unit:"share" min:"0" max:"1" default:"10 %"`
	StaysG       float64      `toml:"stays-in-screen" unit:"g" min:"0" max:"5000" default:"150 g"`
	SharpenAfter int          `toml:"sharpen-after" min:"1" max:"10000000"`
	Blades       []Blade      `toml:"blade" most:"256"`
	Meshes       []Mesh       `toml:"mesh" most:"256"`
	Presses      []Press      `toml:"press" most:"64"`
	Flashes      []Flash      `toml:"flash" most:"64"`
	Dryers       []Dryer      `toml:"dryer" most:"64"`
	Inks         []Ink        `toml:"ink" most:"256"`
	Calibration  *Calibration `toml:"calibration"`

	BuiltIn []string `toml:"-"` // the kinds, press and so on, that are those of the built-in shop, since the file states none
}

// Blade is a blade stock in the rack.
type Blade struct {
	Name         string    `toml:"name"`
	Layup        string    `toml:"layup" need:"true" form:"layup"`
	ThicknessMM  float64   `toml:"thickness" unit:"mm" min:"3" max:"25" default:"9.5 mm"`
	LayersMM     []float64 `toml:"layers" example:"3 mm" unit:"mm" min:"0.2" max:"25" most:"7"`
	FreeHeightMM float64   `toml:"free-height" unit:"mm" min:"5" max:"80" default:"25 mm"`
	LengthsMM    []float64 `toml:"lengths" unit:"mm" min:"30" max:"3000" most:"64"`
	Count        int       `toml:"count" min:"0" max:"10000" default:"1"`
	Edge         string    `toml:"edge" one:"new used worn" default:"new"`
	Prints       int       `toml:"prints" min:"0" max:"10000000"`
	ModulusMPa   []float64 `toml:"modulus" unit:"MPa" min:"0.3" max:"500" most:"7"`

	Hardness []float64 `toml:"-"` // Shore A by layer, parsed from Layup
}

// Mesh is a mesh on frames. Opening and thickness may be measured; zero means geometry.
type Mesh struct {
	Name          string  `toml:"mesh" need:"true" form:"cloth"`
	OpeningUM     float64 `toml:"opening" example:"95 um" unit:"um" min:"5" max:"10000"`
	FabricUM      float64 `toml:"fabric" example:"100 um" unit:"um" min:"10" max:"10000"`
	Weave         string  `toml:"weave" one:"plain twill" default:"plain"`
	FrameWidthMM  float64 `toml:"frame-width" example:"51 cm" unit:"mm" min:"50" max:"5000"`
	FrameHeightMM float64 `toml:"frame-height" example:"66 cm" unit:"mm" min:"50" max:"5000"`
	TensionNPerCM float64 `toml:"tension" unit:"N/cm" min:"1" max:"100"`
	CountPerInch  float64 `toml:"-"` // parsed from Name
	ThreadUM      float64 `toml:"-"` // parsed from Name
	OnRack        bool    `toml:"-"` // false: stated by the job, not on the shop's frames
}

// Press is a press of the shop.
type Press struct {
	Name        string  `toml:"name" need:"true"`
	Kind        string  `toml:"kind" need:"true" one:"manual automatic flatbed"`
	Heads       int     `toml:"heads" min:"1" max:"40"`
	BoreMM      float64 `toml:"bore" example:"25 mm" unit:"mm" min:"5" max:"200"`
	Cylinders   int     `toml:"cylinders" min:"1" max:"8"`
	StrokeMPerS float64 `toml:"stroke-speed" unit:"m/s" min:"0.01" max:"3" default:"0.3 m/s"`
	LoadNPerCM  float64 `toml:"load" unit:"N/cm" min:"0.5" max:"20" default:"5 N/cm"`
	Flood       *bool   `toml:"flood" default:"true"`
	IndexS      float64 `toml:"index" example:"2 s" unit:"s" min:"0.2" max:"120"`
	LoadS       float64 `toml:"load-time" example:"6 s" unit:"s" min:"0.5" max:"600"`
	CoolS       float64 `toml:"cool-down" unit:"s" min:"0.5" max:"120" default:"4 s"`
	SetupS      float64 `toml:"setup" unit:"s" min:"1" max:"7200" default:"5 min"`
}

// Flash is a flash unit. Its flux is stated, or solved from one timed flash, or a default.
type Flash struct {
	Name        string  `toml:"name" need:"true"`
	Kind        string  `toml:"kind" one:"panel quartz" default:"panel"`
	FluxKWM2    float64 `toml:"flux" unit:"kW/m2" min:"1" max:"100" excludes:"timed"`
	TimedS      float64 `toml:"timed" example:"4 s" unit:"s" min:"0.2" max:"30"`
	TimedFilmUM float64 `toml:"timed-film" unit:"um" min:"1" max:"1000" default:"50 um"`
	TimedGelC   float64 `toml:"timed-gel" unit:"C" min:"40" max:"200" default:"112 C"`
}

// Dryer is a conveyor dryer.
type Dryer struct {
	Name        string  `toml:"name" need:"true"`
	HeatedMM    float64 `toml:"heated-length" example:"2.4 m" unit:"mm" min:"200" max:"30000"`
	BeltMM      float64 `toml:"belt-width" example:"60 cm" unit:"mm" min:"100" max:"5000"`
	MaxC        float64 `toml:"top-temperature" unit:"C" min:"60" max:"400"`
	BeltMPerMin *Range  `toml:"belt-speed" example:"0.5..4 m/min" unit:"m/min" min:"0.05" max:"60"`
}

// Ink is an ink class: what inks of one kind share. The can's data sheet wins over it.
type Ink struct {
	Name          string             `toml:"name" need:"true"`
	Like          string             `toml:"like" form:"ink"`
	Solids        float64            `toml:"solids" example:"40 %" unit:"share" min:"0.05" max:"1"`
	DensityKgPerL float64            `toml:"density" unit:"kg/L" min:"0.5" max:"3"`
	DryKgPerL     float64            `toml:"dry-density" example:"1.3 kg/L" unit:"kg/L" min:"0.5" max:"6"`
	EtaInfPaS     float64            `toml:"eta-inf" unit:"Pa.s" min:"0.01" max:"500" default:"3 Pa.s"`
	KPaSn         float64            `toml:"consistency" unit:"Pa.s^n" min:"0" max:"2000" default:"50 Pa.s^n"`
	N             float64            `toml:"flow-index" min:"0.05" max:"1" default:"0.5"`
	ScatterPerMM  float64            `toml:"scattering" example:"80 1/mm" unit:"1/mm" min:"1" max:"1000"`
	Whiteness     float64            `toml:"whiteness" example:"90 %" unit:"share" min:"0.02" max:"0.99"`
	Rise          float64            `toml:"rise" min:"1" max:"30"`
	GelC          *Range             `toml:"gel" example:"104..121 C" unit:"C" min:"40" max:"250"`
	CureC         *Range             `toml:"cure" example:"149..171 C" unit:"C" min:"40" max:"250"`
	CureTopC      float64            `toml:"cure-top" unit:"C" min:"40" max:"300"`
	TackS         *Range             `toml:"tack" example:"6..12 s" unit:"s" min:"0.5" max:"120"`
	DwellS        *Range             `toml:"dwell" example:"45..90 s" unit:"s" min:"1" max:"3600"`
	On            string             `toml:"on" one:"garment sheet" default:"garment"`
	FlashEach     bool               `toml:"flash-each"`
	Dries         string             `toml:"dries" one:"fuse water solvent uv react"`
	Cautions      []string           `toml:"cautions" one:"hot-flash hot-dryer fume moving-press solvent discharge-agent uv-lamp uv-skin flammable" most:"32"`
	Uses          map[string]*Custom `toml:"use" keys:"underbase solid detail halftone highlight blocker raised clear"`
}

// Custom is what is customary for one use of an ink class.
type Custom struct {
	FilmUM *Range `toml:"film" unit:"um" min:"1" max:"2000"`
	Mesh   string `toml:"mesh" form:"cloth"`
	EOM    *EOM   `toml:"eom"`
}

// Calibration is what the shop's own measurements said of the predicted film, as a fit writes it.
type Calibration struct {
	Factor  float64 `toml:"factor" need:"true" min:"0.2" max:"5"`
	Error   float64 `toml:"error" min:"0" max:"2" default:"0.12"`
	Scatter float64 `toml:"scatter" need:"true" min:"0.01" max:"1"`
	Day     float64 `toml:"day" min:"0" max:"1" default:"0.08"`
	Count   int     `toml:"count" need:"true" min:"1" max:"1000000"`
	Date    Date    `toml:"date"`

	MeanDeg    float64 `toml:"mean-angle" unit:"deg" min:"0" max:"90" default:"15 deg"`
	MeanShoreA float64 `toml:"mean-hardness" min:"1" max:"100" default:"70"`
	MeanSlope  float64 `toml:"mean-slope" min:"0" max:"20" default:"0"`

	Angle           float64 `toml:"angle" min:"-2" max:"2" default:"0"`
	AngleError      float64 `toml:"angle-error" min:"0" max:"2" default:"0.0305"`
	Hardness        float64 `toml:"hardness" min:"-2" max:"2" default:"0"`
	HardnessError   float64 `toml:"hardness-error" min:"0" max:"2" default:"0.04"`
	NextStroke      float64 `toml:"next-stroke" min:"0" max:"0.94" default:"0.4"`
	NextStrokeError float64 `toml:"next-stroke-error" min:"0" max:"2" default:"0.2"`

	Blades []string     `toml:"blades" most:"256"`
	Meshes []MeshFactor `toml:"mesh" most:"256"`
}

// MeshFactor is what a calibration says of one mesh.
type MeshFactor struct {
	Name   string  `toml:"mesh" need:"true"`
	Factor float64 `toml:"factor" need:"true" min:"0.1" max:"10"`
	Error  float64 `toml:"error" need:"true" min:"0" max:"2"`
	Own    float64 `toml:"own-error" min:"0" max:"2"`
	Count  int     `toml:"count" need:"true" min:"1" max:"1000000"`
}

// Pos is a place in a file, counted from 1; the zero Pos is no place.
type Pos struct {
	File      string
	Line, Col int
}
