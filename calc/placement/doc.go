// Package placement knows where a print usually stands on a garment.
//
// Sources are the size and placement guides [48] of printers and suppliers (freshprintssupply.com,
// inkandpxl.com, live.ink, printreadypod.com; published). They differ: a range spans what they
// say. A shop or a customer overrules them.
package placement
