package plan

// Plan is every figure of a job, its band, its reason and its warnings. It is the only thing
// that passes from calc to render, and its JSON is what `show --json` prints: the keys are a
// contract, added to freely and never renamed. Lengths of film are micrometres, angles degrees
// from vertical, loads newtons per centimetre of blade.
type Plan struct {
	Version     int         `json:"version"`
	Job         string      `json:"job"`
	Title       string      `json:"title"`
	Customer    string      `json:"customer,omitempty"`
	Quantity    int         `json:"quantity"`
	Due         string      `json:"due,omitempty"` // 2026-12-04
	Shop        string      `json:"shop"`
	ShopFrom    string      `json:"shop_from"`           // why it is this shop: see ShopOfFlag
	ShopFile    string      `json:"shop_file,omitempty"` // name of its file, without folders
	Press       Press       `json:"press"`
	Substrate   Substrate   `json:"substrate"`
	Locations   []Location  `json:"locations"`
	Calibration *Calibrated `json:"calibration"` // null: nothing was measured, the bands are the model's
	Mix         []Mix       `json:"mix"`         // the ink of all locations together
	Time        *JobTime    `json:"press_time"`  // of all locations; null: not known of one, or no quantity
	Warnings    []Warning   `json:"warnings"`
}

// Why a job is printed in the shop that it is: the command line says so, the job file says so, the
// file is the nearest upward from the job file, or there is none.
const (
	ShopOfFlag  = "flag"
	ShopOfJob   = "job"
	ShopFound   = "found"
	ShopBuiltIn = "built-in"
)

// Calibrated is what stands behind the films of a shop that measured.
type Calibrated struct {
	Count   int     `json:"count"`          // measured prints
	Date    string  `json:"date,omitempty"` // of the last one, 2026-11-20
	Scatter float64 `json:"scatter"`        // of one measurement, relative
	Old     bool    `json:"old"`            // more than a year before the job's day
}

// Measured tells what of a screen's setup was among the measured prints.
type Measured struct {
	Mesh  bool `json:"mesh"`
	Blade bool `json:"blade"`
}

// Press is the press that the setups are computed for.
type Press struct {
	Name       string  `json:"name"`
	Kind       string  `json:"kind"` // manual, automatic, flatbed
	Heads      int     `json:"heads"`
	StrokeMPS  float64 `json:"stroke_m_per_s"`
	LoadNPerCM float64 `json:"load_n_per_cm"`
}

// Mix is how much of one ink the whole job takes, waste and what stays in the screens included.
type Mix struct {
	Ink   string  `json:"ink"`
	Color string  `json:"color"`
	G     float64 `json:"g"`
	ML    float64 `json:"ml"`
}

// Substrate is what is printed on.
type Substrate struct {
	Name    string `json:"name"`
	Kind    string `json:"kind"` // garment, paper, board, metal, plastic, glass, wood
	Fibre   string `json:"fibre,omitempty"`
	Shade   string `json:"shade,omitempty"`
	Outline string `json:"outline,omitempty"` // tee, hood, youth, long-sleeve, cap, tote, apron; empty: tee
}

// Location is a print position with its screens in print order.
type Location struct {
	Name      string     `json:"name"`
	WidthMM   float64    `json:"width_mm"`
	HeightMM  float64    `json:"height_mm"`
	Screens   []Screen   `json:"screens"`
	Placement *Placement `json:"placement"` // null: no garment, or no known place
	// Stations are the stations of the press in the order of the print; HeadsNeeded of them
	// are wanted, and Presses are the shop's that have them.
	Stations    []Station `json:"stations"`
	HeadsNeeded int       `json:"heads_needed"`
	// Turns is how often the garments go round; ExtraScreens are the second screens of what is
	// printed more than once in one turn.
	Turns        int      `json:"turns"`
	ExtraScreens int      `json:"extra_screens"`
	TurnScreens  [][]int  `json:"turn_screens,omitempty"` // the screens that print in each of several turns
	Presses      []string `json:"presses"`
	// Base is the one base for all screens that need one; null: none needs one, or the shop has no white for it.
	Base     *LocationBase `json:"base"`
	Time     *PressTime    `json:"press_time"` // null: a flash has no known time
	Warnings []Warning     `json:"warnings"`
}

// Placement is where a print stands on the garment.
type Placement struct {
	Place      string    `json:"place"`
	Side       string    `json:"side"`      // front, back, sleeve
	DownMM     Interval  `json:"down_mm"`   // from the collar seam or the top edge to the print; on a sleeve from the hem up
	AcrossMM   *Interval `json:"across_mm"` // from the middle of the garment; null: in the middle
	Left       bool      `json:"left"`      // across counts to the wearer's left
	DownFrom   string    `json:"down_from"` // job, custom; empty: not known, and DownMM is zero
	AcrossFrom string    `json:"across_from,omitempty"`
}

// Screen is the setup of one screen and what should come of it.
type Screen struct {
	Number       int          `json:"number"` // within the location, from 1
	Of           int          `json:"of"`     // screens of the location
	Head         int          `json:"head"`   // of the press, from the press order; of several the first
	Heads        []int        `json:"heads"`  // all heads that print this screen
	Next         *Next        `json:"next"`   // the print after this one; null: it is the last
	Color        string       `json:"color"`
	Swatch       string       `json:"swatch,omitempty"` // #rrggbb
	Ink          string       `json:"ink"`
	Use          string       `json:"use"`
	Mesh         Mesh         `json:"mesh"`
	Stencil      Stencil      `json:"stencil"`
	Halftone     *Halftone    `json:"halftone,omitempty"`
	FinestMM     float64      `json:"finest_mm"` // smallest feature that must hold
	Blade        Blade        `json:"blade"`
	AngleDeg     SetRange     `json:"angle_deg"`
	EdgeAngleDeg float64      `json:"edge_angle_deg"` // bent, at the set angle
	EdgeLimitDeg *float64     `json:"edge_limit_deg"` // most that the work takes
	LoadNPerCM   float64      `json:"load_n_per_cm"`  // working line load
	LoadClass    string       `json:"load_class"`     // light, medium, firm: what a hand feels
	Pressure     *Pressure    `json:"pressure"`       // of the cylinders; null: no cylinders
	Strokes      int          `json:"strokes"`        // wet print strokes of a hit
	Hits         int          `json:"hits"`           // prints with a flash between
	Flood        bool         `json:"flood"`          // flood before each print stroke
	TargetUM     Target       `json:"target_um"`      // cured film asked for
	WetUM        Band         `json:"wet_um"`         // wet film expected, of all hits
	CombUM       Band         `json:"comb_um"`        // what a comb reads straight off the press: the last hit, on others that are set
	CuredUM      Band         `json:"cured_um"`       // cured film expected
	Measured     *Measured    `json:"measured"`       // null: the shop has not measured
	Moves        Moves        `json:"moves"`          // what the usual errors do to the film
	MeetsAll     bool         `json:"meets_all"`      // film, cut and steadiness, all that was asked
	Clears       bool         `json:"clears"`         // the stroke leaves no ink in the openings
	WaterGM2     float64      `json:"water_g_per_m2"` // in the wet film; 0: an ink without water
	Flash        Flash        `json:"flash"`
	Cure         Cure         `json:"cure"`
	OffContact   OffContact   `json:"off_contact_mm"`
	HeightMM     *float64     `json:"height_mm"`       // after the heat, of ink that rises; null: does not rise
	InkGPerPrint *float64     `json:"ink_g_per_print"` // what sinks into the cloth included; null: size or coverage not stated
	SinksUM      float64      `json:"sinks_um"`        // wet film that sinks into the cloth and does not stand on it
	SinksIn      string       `json:"sinks_in"`        // the ground that it sinks into, in words that a press log takes
	SinksHalfUM  float64      `json:"sinks_half_um"`   // how far nine of ten lie from sinks_um
	WeighG       *Band        `json:"weigh_g"`         // what a print gains, weighed while wet; null: size or coverage not stated, or less than a scale tells
	InkGRun      *float64     `json:"ink_g_run"`       // with waste and what stays in the screen; null: quantity not stated
	InkMLRun     *float64     `json:"ink_ml_run"`
	Charts       Charts       `json:"charts"`      // the curves that the card draws
	Reasons      []Reason     `json:"reasons"`     // the path from the workhorse to this setup
	Lost         []Lost       `json:"lost"`        // the other blades of the rack and what they lost on
	TellsUM      float64      `json:"tells_um"`    // smallest change of the cured film that a comb or a scale tells
	Corrections  []Correction `json:"corrections"` // single changes, the quickest to make first
	Others       Others       `json:"others"`      // what another blade at the press could do
	Equivalents  []Equivalent `json:"equivalents"` // other blades and meshes that meet the same demands
	HidesUM      *float64     `json:"hides_um"`    // cured film that hides the cloth, what sinks in included; null: not asked, or not known
	Base         *Base        `json:"base"`        // a base that would hide the cloth; null: none is needed
	Last         *LastRun     `json:"last_run"`    // what the press log tells of the screen; null: it has not run, or there is no log
	Cautions     []string     `json:"cautions"`    // codes of what can hurt, by ink class
	Warnings     []Warning    `json:"warnings"`
}

// Mesh is the cloth with its geometry.
type Mesh struct {
	Name         string  `json:"name"`
	CountPerInch float64 `json:"count_per_inch"`
	CountPerCM   float64 `json:"count_per_cm"`
	ThreadUM     float64 `json:"thread_um"`
	OpeningUM    float64 `json:"opening_um"`
	OpenArea     float64 `json:"open_area"` // share, 0 to 1
	FabricUM     float64 `json:"fabric_um"`
	VolumeUM     float64 `json:"volume_um"` // theoretical ink volume, cm3/m2 = um
	Measured     bool    `json:"measured"`  // opening or thickness measured, not geometry
	From         string  `json:"from"`      // job, rack, chosen
}

// Stencil is the emulsion over mesh and how much of it the film gets.
type Stencil struct {
	EOMUM        float64   `json:"eom_um"`
	ShareOfCloth float64   `json:"eom_share_of_fabric"`
	CountedShare float64   `json:"counted_share"` // of the EOM, for the typical feature
	FeatureMM    float64   `json:"feature_mm"`    // width of the typical feature
	Coats        int       `json:"coats"`         // of direct emulsion that build the EOM; 0: film
	FilmsUM      []float64 `json:"films_um"`      // capillary films that build it; null: coats
}

// Halftone is the dot pattern, or the bitmap, judged against the mesh.
type Halftone struct {
	LinesPerInch    float64 `json:"lines_per_inch,omitempty"`
	BitmapDPI       float64 `json:"bitmap_dpi,omitempty"`
	AngleDeg        float64 `json:"angle_deg"`
	HasAngle        bool    `json:"has_angle"`
	Smallest        float64 `json:"smallest,omitempty"`          // share, 0 to 1
	MeshRatio       float64 `json:"mesh_ratio,omitempty"`        // mesh count / line count
	RatioHolds      bool    `json:"ratio_holds"`                 // 3.5 or more
	OpeningsPerCell float64 `json:"openings_per_cell,omitempty"` // mesh openings behind one cell
	DotUM           float64 `json:"dot_um"`                      // smallest dot
	DotHoldsUM      float64 `json:"dot_holds_um"`                // smallest dot that the cloth holds: two threads and an opening
	DotHolds        bool    `json:"dot_holds"`
	HoldsFrom       float64 `json:"holds_from,omitempty"` // share from which dots of this line count hold
	BlockedShare    float64 `json:"blocked_share"`        // of the smallest dots that touch no opening
	BeatMM          float64 `json:"beat_mm,omitempty"`    // longest moire beat with the mesh
	Locked          bool    `json:"locked"`               // mesh and dots run in step: no bands, one fixed phase
	MoireRisk       bool    `json:"moire_risk"`
}

// Blade is the blade from the rack.
type Blade struct {
	Name         string  `json:"name"`
	Layup        string  `json:"layup"`
	EdgeHardness float64 `json:"edge_hardness"` // Shore A of the printing layer
	ThicknessMM  float64 `json:"thickness_mm"`
	FreeHeightMM float64 `json:"free_height_mm"`
	LengthMM     float64 `json:"length_mm"` // 0: the rack states no lengths
	Edge         string  `json:"edge"`      // new, used, worn
	Layers       []Layer `json:"layers"`
	RigidityNM   float64 `json:"rigidity_n_m"` // per width, plane strain
	From         string  `json:"from"`         // job, chosen
}

// Layer is one layer of a blade, front to back.
type Layer struct {
	Hardness    float64 `json:"hardness"` // Shore A
	ThicknessMM float64 `json:"thickness_mm"`
}

// SetRange is a set angle from vertical with the range that may be held.
type SetRange struct {
	Low  float64 `json:"low"`
	Set  float64 `json:"set"`
	High float64 `json:"high"`
	// ToScreen is the set angle from the screen, 90 deg less Set.
	ToScreen float64 `json:"to_screen"`
}

// Interval is a low and a high end.
type Interval struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Flash is whether a print is set under a flash unit before the next one, and how.
type Flash struct {
	Needed       bool      `json:"needed"`
	Why          string    `json:"why"`                  // base, twice, thick, white, water, forced, forbidden, wet-on-wet, last, alone, sheet
	Does         string    `json:"does"`                 // gel, dry, tack, lamp: what sets the film between two prints; empty: nothing does
	Unit         string    `json:"unit,omitempty"`       // name of the flash unit
	TemperatureC *Interval `json:"temperature_c"`        // the film's, to gel or to dry; null: not stated for the class
	StartS       *float64  `json:"start_s"`              // where to start, platens warm; null: as Seconds
	Seconds      *Interval `json:"seconds"`              // nine of ten, platens warm; null: no flash, or it never sets the film
	ColdSeconds  *Interval `json:"cold_seconds"`         // the first prints, with cold platens
	FluxKWM2     float64   `json:"flux_kw_m2,omitempty"` // heat that the print takes up
	Timed        bool      `json:"timed"`                // the shop timed or measured its unit
	Cool         bool      `json:"cool"`                 // a station to cool down comes after it
}

// Next is the print that comes after a screen's first one in the order of the press.
type Next struct {
	Head   int    `json:"head"`
	Screen int    `json:"screen"` // its own number where it prints again
	Color  string `json:"color"`  // or the ink class where the job names none
	Wet    bool   `json:"wet"`    // it prints on wet ink
}

// Cure is the heat that sets the ink for good. All screens of a garment that cure by heat share one.
type Cure struct {
	TemperatureC    *Interval `json:"temperature_c"`   // the whole film must reach it; null: by light or air, not by heat
	By              string    `json:"by"`              // heat, light, air
	TopC            float64   `json:"top_c,omitempty"` // what ink and cloth must never pass; 0: the end of temperature_c
	DwellS          *Interval `json:"dwell_s"`
	BeltMPerMin     *Interval `json:"belt_m_per_min"`
	Dryer           string    `json:"dryer,omitempty"`
	Passes          int       `json:"passes"` // through the dryer; 0: no dryer
	GarmentsPerHour *Interval `json:"garments_per_hour"`
}

// OffContact is the gap between screen and garment, and what it does.
type OffContact struct {
	Low       float64  `json:"low"`
	High      float64  `json:"high"`
	StretchMM *float64 `json:"stretch_mm"`       // of the image, at the high end; null: frame or image not stated
	TouchNCM  *float64 `json:"touch_n_per_cm"`   // line load that pressing the screen down takes, at mid-frame
	FrameMM   float64  `json:"frame_mm"`         // inside of the frame along the stroke; 0: not stated
	Tension   float64  `json:"tension_n_per_cm"` // 0: not stated
}

// Station is one station of a press in the order of the print.
type Station struct {
	Kind   string `json:"kind"`   // print, flash, cool
	Screen int    `json:"screen"` // that is printed, or was last
	Wet    bool   `json:"wet"`    // prints on wet ink
}

// Pressure is what the gauge of a press shows for the line load.
type Pressure struct {
	Bar float64 `json:"bar"`
	PSI float64 `json:"psi"`
}

// Target is the cured film that is asked for, and who asks.
type Target struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
	From string  `json:"from"` // job, class, hiding, expansion
}

// Band is an expected value with its band.
type Band struct {
	Low   float64 `json:"low"`
	Value float64 `json:"value"`
	High  float64 `json:"high"`
}

// Moves tells by what share the film moves (0.05 = 5 %) when the press is not as set.
type Moves struct {
	Angle    Move    `json:"angle"`    // 5 deg more and less
	Hardness Move    `json:"hardness"` // 5 Shore A more and less
	Load     Move    `json:"load"`     // 25 % more and less; which way it moves a film is not sure, so no paper says it
	Together float64 `json:"together"` // root sum of squares of angle and hardness
}

// Move is the film's relative change for less and for more of one thing. A pointer is nil
// where the setup fails there (the blade folds over or floats).
type Move struct {
	Step float64  `json:"step"` // in the unit of the thing moved; a share for the load
	Less *float64 `json:"less"`
	More *float64 `json:"more"`
}

// Charts holds the curves of the cured film.
type Charts struct {
	Angle    []Curve `json:"angle"`    // a curve per blade of the rack, without points for one that is too short, x = angle in deg
	Hardness []Curve `json:"hardness"` // one layer and the chosen layup's core, x = Shore A of the edge
}

// Curve is a line of a chart. Where a point is missing the setup folds over or floats.
type Curve struct {
	Name   string  `json:"name"`
	Chosen bool    `json:"chosen"`
	Points []Point `json:"points"`
}

// Point is a point of a curve: cured film in um over x. Where the setup prints badly there, Fails says
// how: it loses the screen's finest detail, or leaves ink in the screen. A curve has a point of its own
// where it begins to.
type Point struct {
	X     float64 `json:"x"`
	UM    float64 `json:"um"`
	Fails string  `json:"fails,omitempty"` // detail, ink
}

// Reason is one step of the path from the workhorse to the setup, as data: what fell short,
// which step was taken, what it brought.
type Reason struct {
	Step       string  `json:"step"`  // start, blade, angle, hits, strokes
	Short      string  `json:"short"` // film-thin, film-heavy, cut, moves, frail, leaves-ink, folds, floats, aim-film, fixed, none
	From       string  `json:"from,omitempty"`
	To         string  `json:"to"`
	FilmUM     float64 `json:"film_um"`     // cured, after the step; 0: no figure
	DeltaUM    float64 `json:"delta_um"`    // cured, brought by the step
	EdgeDeg    float64 `json:"edge_deg"`    // bent edge angle after the step
	DeltaEdge  float64 `json:"delta_edge"`  // brought by the step
	MissBefore float64 `json:"miss_before"` // what was missed, in units of the limits
	MissAfter  float64 `json:"miss_after"`
}

// Lost is a blade that was not taken, at its best setup, and what it lost on.
type Lost struct {
	Blade    string  `json:"blade"`
	AngleDeg float64 `json:"angle_deg"`
	Strokes  int     `json:"strokes"`
	Hits     int     `json:"hits"`
	On       string  `json:"on"` // film-thin, film-heavy, cut, moves, folds, floats, leaves-ink, length, departure, less-film, more-lean
	By       float64 `json:"by"` // um, deg, share, mm or cost, as On says
}

// Correction is a single change to the setup and its computed effect on the cured film, with the
// band of that effect. They stand in the order in which they are worth trying: the most effect
// for the least that they disturb.
type Correction struct {
	Kind          string   `json:"kind"` // blade, angle, strokes, hits, edge, eom, mesh
	Change        string   `json:"change"`
	To            string   `json:"to"`       // the new value, without words; of an eom in um, of strokes those of a hit
	Hits          int      `json:"hits"`     // after the change
	CuredUM       float64  `json:"cured_um"` // after the change
	DeltaUM       float64  `json:"delta_um"`
	DeltaPercent  float64  `json:"delta_percent"`
	SpreadPercent float64  `json:"spread_percent"` // half of DeltaBandUM, of the film before
	DeltaBandUM   Interval `json:"delta_band_um"`  // nine of ten
	EdgeAngleDeg  float64  `json:"edge_angle_deg"` // bent, after the change
	KeepsCut      bool     `json:"keeps_cut"`      // the finest feature still holds
	Seen          bool     `json:"seen"`           // as large as TellsUM
	Clears        bool     `json:"clears"`         // the stroke leaves no ink in the openings
	Disturbs      []string `json:"disturbs"`       // detail, clearing, flash, screen: what else it touches
	Cost          float64  `json:"cost"`           // what the change and its disturbance weigh, in blade steps
}

// Others are what the blades of the rack do on a screen: the films of all of them over the angles that may be
// held, and how far each other one may lean.
type Others struct {
	FilmUM Interval `json:"film_um"`
	Leans  []Lean   `json:"leans"`
}

// Lean is the furthest angle at which a blade clears the screen and still prints the finest feature.
type Lean struct {
	Blade string   `json:"blade"`
	ToDeg *float64 `json:"to_deg"` // null: at none
}

// Equivalent is another blade on the same mesh, or another mesh, that does the same work, with
// the setup that does it: a film inside the band of the chosen one, and the same demands met.
type Equivalent struct {
	Kind         string  `json:"kind"` // blade, mesh
	Blade        string  `json:"blade"`
	Layup        string  `json:"layup"`
	ThicknessMM  float64 `json:"thickness_mm"`
	FreeHeightMM float64 `json:"free_height_mm"`
	Edge         string  `json:"edge"` // new, used, worn
	Mesh         string  `json:"mesh"`
	EOMUM        float64 `json:"eom_um"`
	AngleDeg     float64 `json:"angle_deg"`
	ToScreen     float64 `json:"to_screen_deg"` // 90 deg less AngleDeg
	LoadNPerCM   float64 `json:"load_n_per_cm"`
	Strokes      int     `json:"strokes"`
	Hits         int     `json:"hits"`
	CuredUM      float64 `json:"cured_um"`
	DeltaPercent float64 `json:"delta_percent"` // against the chosen setup
	SharesMiss   bool    `json:"shares_miss"`   // misses a demand, as the chosen setup does
}

// Base is a base proposed under a screen whose ink cannot hide the cloth.
type Base struct {
	Ink       string   `json:"ink"`
	Swatch    string   `json:"swatch"`
	Mesh      string   `json:"mesh"`
	EOMUM     float64  `json:"eom_um"`
	Blade     string   `json:"blade"`
	AngleDeg  float64  `json:"angle_deg"`
	Strokes   int      `json:"strokes"`
	Hits      int      `json:"hits"`
	CuredUM   float64  `json:"cured_um"`
	TargetUM  Interval `json:"target_um"`
	FilmAsked bool     `json:"film_asked"` // the job file must state the target, since the ink class asks no such film
	ChokeMM   float64  `json:"choke_mm"`   // by how much the base is smaller than what prints on it, all round
	Coverage  float64  `json:"coverage"`   // of the location's area; 0: not stated
	MeetsAll  bool     `json:"meets_all"`
}

// LocationBase is a base proposed for a location.
type LocationBase struct {
	Base
	Under  []int `json:"under"`  // screens that need it
	Before int   `json:"before"` // screen that it is printed before
}

// Warning is something a person must know, as a code with its figures; Text is the same in
// words of the language that was asked for, filled in from templates.
type Warning struct {
	Code   string             `json:"code"`
	Values map[string]float64 `json:"values,omitempty"`
	Names  map[string]string  `json:"names,omitempty"`
	Text   string             `json:"text"`
}
