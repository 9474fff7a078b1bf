// Package job holds jobs and shops as plain data, and Resolve, which looks up what a job names in
// its shop: each press, ink class, blade and mesh is looked up here, once. Package file reads both
// from TOML by the struct tags of the types.
package job
