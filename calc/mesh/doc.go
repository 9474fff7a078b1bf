// Package mesh computes what a woven screen cloth and its stencil hold: pitch, opening,
// open area, fabric thickness, theoretical ink volume and the share of a thick stencil that
// counts for a printed feature.
//
// Lengths are micrometres, counts are threads per inch or per centimetre as the name says,
// shares run from 0 to 1. A cloth is described by its count and the nominal thread diameter;
// a measured opening or thickness wins over geometry, because weaving flattens and crimps the
// threads: published measured openings lie 0 to 15 % below count-and-thread geometry, on a
// tight twill 27 %.
//
// Sources: screen-cloth specifications of a Japanese weaver (nt-jp.com [13], Screen Specifications [13]);
// terms after ISO 9044 [18]; metric against inch counts after Coudray, Screen Printing, April 2003 [20];
// the wet-height rule after "How Much Ink Do You Need?", Screen Printing, April 2000, Table 1
// and Fig. 1 [12]; thick stencils after Printwear, November 2015, p. 73 [22].
package mesh
