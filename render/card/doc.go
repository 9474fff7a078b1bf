// Package card lays out the card of one screen: the front to be read at arm's length at the
// press, the back for whoever sets up, measures and corrects. It places what the Plan says and
// computes nothing but places on paper.
package card
