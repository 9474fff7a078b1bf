// Command vs measures bladecard against the ways a shop would otherwise set its cards: pdfLaTeX,
// headless Chromium's print to PDF, and LibreOffice without a window. All draw the same sheets:
// every text at its place, every line, filled shape, chart and dial, front and back.
//
// Ours is timed from a job file to the PDF on disk: reading, computing, drawing, writing. The
// others are handed a finished source with all places worked out, and making that source is not
// counted in their time. Their caches are warm: each runs once, unmeasured, before the first run
// that counts.
//
// What they drew is compared with ours, page by page: the words that pdftotext finds, the painted
// paths that mutool finds, and how the pages look. Another way whose content differs is a failure.
//
// Run it from the root of the repository through .ci/bench/compare, which installs the tools.
package main
