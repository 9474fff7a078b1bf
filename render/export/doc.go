// Package export draws on a canvas that ends up as SVG or PNG instead of paper: for charts on a
// slide. Both measure with the document's font, so that what fits on paper fits here.
package export
