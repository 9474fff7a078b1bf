package seen

// The faults that a printer sees, in the order of a help page.
const (
	TooThin     = "too-thin"
	TooHeavy    = "too-heavy"
	Pinholes    = "pinholes" // the cloth shows through
	DotsLost    = "dots-lost"
	DotsPlugged = "dots-plugged"
	InkLeft     = "ink-left" // in the screen
	RaggedEdge  = "ragged-edge"
	Ghost       = "ghost" // or a double edge
	OneSide     = "one-side-heavy"
	PicksUp     = "next-picks-up"
	PuffFallen  = "puff-fallen" // or rough
	DyeBleeds   = "dye-bleeds"
	WashesOff   = "washes-off" // or cracks
	Scorch      = "scorch"
)

// line is a sentence of an answer: its code, and the facts of a screen that it needs, as facts.go names them.
// A fact that begins with ? only has to hold, one that begins with ! must not; the others are figures that
// the sentence prints.
type line struct{ code, needs string }

// row is what is known of one fault (common practice of the trade, in an order of time and cost). The
// changes named in films come from the corrections of the plan and stand where a change has the code "film".
type row struct {
	what    string
	shows   string // facts without which a screen cannot have this fault; each alone will do
	instead []line // what it is then
	look    []line
	off     []line // where the measured film speaks against the fault: then no film is changed for it
	films   want
	changes []line
	measure []line
	not     []line
	caution []line
}

// want is which corrections of the plan mend a fault.
type want int

const (
	none    want = iota
	more         // film
	less         // film
	finer        // less film with the edge no further over
	upright      // the edge more upright
)

var table = []row{
	{
		what: TooThin, films: more,
		look:    []line{{"look-comb", "wet_low_um wet_high_um"}, {"look-light", "opening_um"}},
		off:     []line{{"off-thin", "?measured !film-low !film-short film_um expected_um"}},
		changes: []line{{"wipe-first", "!clears"}, {"film", ""}, {"base-first", "base_um"}},
		measure: []line{{"measure-comb", "wet_low_um wet_high_um"}, {"measure-weigh", "weigh_low_g weigh_high_g"}},
		not:     []line{{"not-hides", "hides_um film_um"}, {"not-load", ""}},
	},
	{
		what: TooHeavy, films: less,
		look:    []line{{"look-comb", "wet_low_um wet_high_um"}, {"look-edge-worn", "?blunt"}, {"look-edge-lean", "edge_deg"}},
		off:     []line{{"off-heavy", "?measured !film-high !film-over film_um expected_um"}},
		changes: []line{{"wipe-first", "!clears"}, {"film", ""}, {"flash-longer-meanwhile", "flash_now_s ?film-high"}},
		measure: []line{{"measure-comb", "wet_low_um wet_high_um"}, {"measure-weigh", "weigh_low_g weigh_high_g"}},
		not:     []line{{"not-spread-dots", "dot_um film_of_dot_percent"}, {"not-rise", "?rises height_mm"}, {"not-load", ""}},
	},
	{
		what: Pinholes, films: more,
		look:    []line{{"look-pins", "pitch_um opening_um"}, {"look-fibres", "?garment"}, {"look-base-pins", "?based"}},
		off:     []line{{"off-pins", "?measured !film-low !film-short film_um expected_um"}},
		changes: []line{{"wipe-first", "!clears"}, {"touch-down", "?touch-heavy touch_ncm load_ncm"}, {"film", ""}, {"base-first", "base_um"}},
		measure: []line{{"measure-hides", "hides_um"}, {"measure-comb", "wet_low_um wet_high_um"}},
		not:     []line{{"not-dust", "opening_um"}, {"not-lost-dots", "dot_um holds_um"}, {"not-dye", "?dyed"}, {"not-rise-holes", "?rises height_mm"}},
	},
	{
		what: DotsLost, shows: "?dots", films: upright,
		instead: []line{{"no-dots", "finest_mm"}, {"no-dots-rise", "?rises height_mm"}},
		look:    []line{{"look-dots", "dot_um thread_um"}, {"look-dots-held", "dot_um holds_um !dot-holds"}},
		off:     []line{{"off-lost", "?film-high film_um expected_um dot_um"}},
		changes: []line{{"dots-from", "!dot-holds from_percent holds_um"}, {"dots-mesh", "?none-hold holds_um"}, {"dots-bitmap", "!dot-holds ?bitmap holds_um"}, {"dots-wash-out", "?dot-holds dot_um eom_um"}, {"film", "!none-hold"}, {"gap-down", "!none-hold ?has-gap-range gap_low_mm gap_high_mm peel_low_deg peel_high_deg"}},
		measure: []line{{"measure-dots", "dot_um"}, {"measure-comb", "wet_low_um wet_high_um"}},
		not:     []line{{"not-plugged", "film_um film_of_dot_percent"}, {"not-blocked", "?dot-holds dot_um holds_um"}, {"not-film", "!dot-holds dot_um holds_um"}},
	},
	{
		what: DotsPlugged, shows: "?dots", films: finer,
		instead: []line{{"no-dots", "finest_mm"}, {"no-dots-rise", "?rises height_mm"}},
		look:    []line{{"look-plug", "dot_um film_of_dot_percent"}, {"look-underside", ""}},
		off:     []line{{"off-plugged", "?film-low film_um expected_um dot_um"}},
		changes: []line{{"wipe-screen", ""}, {"film", ""}, {"flash-before", "?wet-on-wet"}, {"gap-up", "gap_high_mm gap_up_mm peel_up_deg"}},
		measure: []line{{"measure-dots", "dot_um"}, {"measure-comb", "wet_low_um wet_high_um"}},
		not:     []line{{"not-lost", "dot_um holds_um"}, {"not-gain", ""}},
	},
	{
		what: InkLeft, films: upright,
		look:    []line{{"look-left", "opening_um fabric_um"}, {"look-left-sides", "width_mm"}, {"look-left-dots", "?dots dot_um"}},
		off:     []line{{"off-left", "?film-high film_um expected_um"}},
		changes: []line{{"load-wipe", "load_bar load_psi"}, {"load-wipe-hand", "load_class"}, {"touch-load", "?touch-heavy touch_ncm load_ncm"}, {"film", ""}, {"gap-up", "!touch-heavy gap_high_mm gap_up_mm peel_up_deg"}, {"water-mist", "?water"}},
		measure: []line{{"measure-wipe", ""}, {"measure-tension", "tension_ncm"}},
		not:     []line{{"not-dried-in", "?water"}, {"not-gelled-in", "?gels gel_low_c"}, {"not-thin", "film_um"}},
		caution: []line{{"caution-solvent", ""}},
	},
	{
		what: RaggedEdge, films: upright,
		look:    []line{{"look-ragged", "finest_mm pitch_um"}, {"look-lean", "edge_deg limit_deg"}, {"look-dots-edge", "?dots dot_um"}},
		off:     []line{{"off-ragged", "?film-low film_um expected_um pitch_um"}},
		changes: []line{{"wipe-first", "!clears"}, {"film", ""}, {"gap-down", "?has-gap-range gap_low_mm gap_high_mm peel_low_deg peel_high_deg"}, {"stencil-teeth", "eom_um pitch_um"}},
		measure: []line{{"measure-edge", "finest_mm"}, {"measure-comb", "wet_low_um wet_high_um"}},
		not:     []line{{"not-bleed", "?garment"}, {"not-ghost", "stretch_mm"}, {"not-rise-edge", "?rises height_mm"}},
	},
	{
		what: Ghost, films: none,
		look:    []line{{"look-ghost", "finest_mm"}, {"look-ghost-all", "stretch_mm"}, {"look-ghost-stuck", "?garment"}, {"look-ghost-again", "?twice"}},
		changes: []line{{"lock-register", ""}, {"glue", "?garment"}, {"gap-stretch", "?has-gap-range gap_low_mm stretch_low_mm stretch_mm"}, {"tension-up", "tension_ncm"}, {"wet-flash", "?wet-on-wet"}},
		measure: []line{{"measure-stretch", "width_mm height_print_mm"}, {"measure-tension", "tension_ncm"}},
		not:     []line{{"not-ragged", "edge_deg limit_deg"}, {"not-moire", "beat_mm"}, {"not-heavy", "wet_low_um wet_high_um"}, {"not-rise-edge", "?rises height_mm"}},
	},
	{
		what: OneSide, films: none,
		look:    []line{{"look-sides", "width_mm comb_um wet_low_um wet_high_um"}, {"look-sides-narrow", "!width_mm comb_um wet_low_um wet_high_um"}, {"look-gap-sides", "gap_low_mm gap_high_mm"}},
		changes: []line{{"turn-blade", "?blunt"}, {"level-blade", ""}, {"level-screen", "gap_low_mm gap_high_mm touch_ncm"}, {"hand-even", "?manual angle_low_deg angle_high_deg"}},
		measure: []line{{"measure-sides", "wet_low_um wet_high_um"}, {"measure-tension", "tension_ncm"}},
		not:     []line{{"not-mesh-film", "film_um"}, {"not-one-dot", "?dots dot_um"}, {"not-rise-side", "?rises height_mm cure_low_c cure_high_c"}},
	},
	{
		what: PicksUp, shows: "?next", films: less,
		instead: []line{{"no-next", ""}},
		look:    []line{{"look-pickup", "next"}, {"look-touch-gel", "?flashed ?gels flash_s"}, {"look-touch-dry", "?flashed ?water"}, {"look-wet", "?next-wet"}},
		off:     []line{{"off-pickup", "?film-low film_um expected_um"}},
		changes: []line{{"flash-up", "?flashed flash_s flash_high_s gel_low_c gel_high_c"}, {"flash-cold", "?flashed cold_high_s"}, {"flash-tack", "?tacks ?flashed"}, {"flash-on", "!flashed ?heats"}, {"film", ""}, {"cool-down", "?flashed"}},
		measure: []line{{"measure-flash", "?flashed gel_low_c gel_high_c"}, {"measure-comb", "wet_low_um wet_high_um"}},
		not:     []line{{"not-overflash", "?flashed"}, {"not-cure", "?heat cure_low_c"}, {"not-dot-pick", "?dots dot_um film_of_dot_percent"}},
		caution: []line{{"caution-flash", "?heats"}},
	},
	{
		what: PuffFallen, shows: "?rises", films: more,
		instead: []line{{"no-rise", "film_um"}, {"no-rise-dots", "?dots dot_um"}},
		look:    []line{{"look-puff", "height_mm"}, {"look-puff-hot", "top_c"}, {"look-puff-thin", "?film-low film_um height_now_mm height_mm"}},
		off:     []line{{"off-puff", "?measured !film-low !film-short film_um expected_um height_now_mm"}},
		changes: []line{{"cure-clash", "?cure-clash cure_low_c top_c"}, {"puff-heat", "!cure-clash cure_low_c cure_high_c top_c"}, {"puff-belt", "!cure-clash dwell_low_s dwell_high_s belt_low_mpm belt_high_mpm"}, {"film", ""}},
		measure: []line{{"measure-strip", "cure_low_c cure_high_c"}, {"measure-height", "height_mm"}},
		not:     []line{{"not-puff-film", "film_um height_mm"}, {"not-puff-press", "edge_deg"}},
		caution: []line{{"caution-dryer", ""}},
	},
	{
		what: DyeBleeds, shows: "?dyed", films: none,
		instead: []line{{"no-dye-cloth", "!garment"}, {"no-dye-light", "?garment ?light-cloth film_um"}, {"no-dye-cotton", "?garment !light-cloth ?cotton film_um"}, {"no-dye-ink", "?dark-ink film_um"}, {"no-dye-unknown", "?garment !light-cloth !cotton !dark-ink film_um"}},
		look:    []line{{"look-dye", "warn_c"}, {"look-dye-blocker", "?blocked"}},
		off:     []line{{"off-dye", "?film-low film_um hides_um"}},
		changes: []line{{"dye-blocker", "?dye-moves !blocked !blocker"}, {"dye-cooler", "?cure-range cure_low_c cure_high_c warn_c"}, {"dye-ink", "!cure-range cure_low_c warn_c"}, {"dye-fast", "dwell_low_s belt_high_mpm"}, {"dye-blocker", "!dye-moves !blocked !blocker"}, {"dye-blocker-film", "?blocked blocker_um"}, {"dye-blocker-self", "?blocker film_um"}},
		measure: []line{{"measure-strip", "cure_low_c cure_high_c"}, {"measure-days", ""}},
		not:     []line{{"not-show-through", "film_um hides_um"}, {"not-more-white", "film_um"}},
		caution: []line{{"caution-dryer", ""}},
	},
	{
		what: WashesOff, films: none,
		look:    []line{{"look-stretch", "?heat !sheet film_um"}, {"look-tape", "?sheet film_um"}, {"look-lamp", "?light"}, {"look-wash", "?film-high film_um expected_um dwell_now_low_s dwell_now_high_s"}},
		changes: []line{{"cure-clash", "?cure-clash cure_low_c top_c"}, {"cure-hotter", "!cure-clash cure_low_c cure_high_c"}, {"cure-slower", "!cure-clash dwell_high_s belt_low_mpm dwell_low_s"}, {"cure-film", "twice_um dwell_twice_low_s dwell_twice_high_s belt_twice_low_mpm"}, {"cure-water", "?water water_g"}, {"cure-passes", "passes"}, {"cure-lamp", "?light"}, {"cure-air", "?air film_um"}, {"flash-not-cure", "?flashed ?gels gel_high_c cure_low_c"}, {"bond-nylon", "?nylon"}, {"puff-top", "?rises !cure-clash top_c"}},
		measure: []line{{"measure-strip", "cure_low_c cure_high_c"}, {"measure-wash", "?garment"}, {"measure-tape", "?sheet"}},
		not:     []line{{"not-thin-crack", "?heat film_um"}, {"not-dot-wash", "?dots dot_um film_um"}, {"not-base-wash", "?based"}},
		caution: []line{{"caution-dryer", "?heat"}},
	},
	{
		what: Scorch, shows: "?heat ?flashed", films: none,
		instead: []line{{"no-heat", ""}},
		look:    []line{{"look-scorch", "?heat"}, {"look-scorch-flash", "?flashed flash_s flash_high_s"}},
		changes: []line{{"cure-clash", "?cure-clash cure_low_c top_c"}, {"scorch-flash", "?flashed flash_low_s flash_s"}, {"scorch-cooler", "?cure-range cure_low_c cure_high_c stop_c"}, {"scorch-cooler-any", "?cure-range !stop_c cure_low_c cure_high_c"}, {"scorch-fast", "dwell_low_s belt_high_mpm"}, {"scorch-top", "top_c"}, {"scorch-rise", "?rises height_mm"}, {"scorch-dots", "?dots film_um"}},
		measure: []line{{"measure-strip", "cure_low_c cure_high_c"}, {"measure-wash", "?garment"}},
		not:     []line{{"not-dye-scorch", "?dyed"}, {"not-residue", "?garment film_um"}},
		caution: []line{{"caution-dryer", "?heat"}, {"caution-flash", "?flashed"}},
	},
}

// means are what a film outside the expected band means, whatever was seen.
var means = []line{
	{"means-puffed", "?gauged ?film-high ?rises height_mm"},
	{"means-dots-heavy", "?film-high dot_um film_um film_of_dot_percent"},
	{"means-dots-light", "?film-low dot_um film_um film_of_dot_percent holds_um"},
	{"means-fills", "?film-high !dots finest_mm"},
	{"means-shows", "?film-low film_um hides_um"},
	{"means-shows-plain", "?film-low !hides_um film_um"},
	{"means-flash", "flash_now_s flash_s"},
	{"means-dwell", "dwell_now_low_s dwell_now_high_s dwell_low_s dwell_high_s"},
	{"means-belt", "belt_now_low_mpm belt_now_high_mpm belt_low_mpm belt_high_mpm"},
	{"means-rise", "height_now_mm height_mm"},
	{"means-air", "?air film_um"},
	{"means-lamp", "?light film_um"},
}

// opposed are faults that one film cannot have at one place.
var opposed = [][2]string{{TooThin, TooHeavy}, {DotsLost, DotsPlugged}, {WashesOff, Scorch}}
