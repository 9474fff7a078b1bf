// Package unit reads and writes quantities with their unit: "12 in", "20 N/cm", "300 F",
// "38 %", "45..70 um". A field of the files names the unit that it is kept in; a text in any
// unit of the same kind is converted to that one. Numbers are read as exact decimals and
// converted with exact ratios, and rounded once, to the nearest float64.
//
// Sources of the factors (published, all exact by definition): inch 25.4 mm, pound
// 0.453 592 37 kg (international yard and pound agreement, 1959); standard acceleration
// 9.806 65 m/s2 (3rd CGPM, 1901); US gallon 231 cubic inches; conversions as in NIST Special
// Publication 811, 2008 edition [49], Appendix B; degree Fahrenheit from NIST SP 811, B.8.
package unit
