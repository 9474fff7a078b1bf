// Package deep copies plain data with all that it points to.
package deep
