// Package plantest makes plans for the tests of what draws them: job text and shop text in, a
// plan and the voice to say it in out, the same way as the command line goes.
package plantest
