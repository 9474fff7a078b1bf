// Package orders reads orders from a spreadsheet: a CSV file with a row a screen, whose headers are the keys of a job
// file, and writes a job file of each order. It decides nothing about a print.
package orders
