// Package plan holds the Plan: every figure of a job, its band, its reason and its warnings, as
// plain data. It computes nothing. Package choose makes a Plan; the packages of render draw it
// and therefore link no engine.
package plan
