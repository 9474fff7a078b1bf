// Package rows gives the plans of jobs back as a table for a spreadsheet, a row a screen. Where a column holds what a
// job file can state, its head is the key there.
package rows
