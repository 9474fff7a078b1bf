// Package presslog reads and writes press logs: CSV files of what was printed and measured. The
// header names each column with its unit, "wet (um)"; columns are parted by commas or
// semicolons, decimals by a point or, between semicolons, a comma.
package presslog
