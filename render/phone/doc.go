// Package phone writes a job as a plain web page to read at the press: one page a job, no script, no file beside it, so
// that it works from a folder, a stick or a server, and without a network. The words and figures are those of the paper.
package phone
