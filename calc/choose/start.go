package choose

// A thick flat film, from thickFlatUM asked, is laid with a soft blade: softShoreA, one layer (common practice). The
// model would not tell the blades apart there: a 60 lays 1 to 4 % more than a 70, which is far inside the band.
const (
	thickFlatUM = 60.0
	softShoreA  = 60.0
)

// start is the stock that the departure of a setup is counted from: the workhorse, or for thick flat films the
// one that is nearest to the soft blade of the trade.
func (c chooser) start() stock {
	if d := c.given.demand; d.heavy || d.thick || d.hard || d.target.Low < thickFlatUM {
		return c.rack.stocks[c.rack.workhorse]
	}
	return c.rack.stocks[c.rack.soft]
}
