// Package plan makes the whole answer of one drop: the checked readings, the layers,
// the band, the rig, how sure it is, and the cautions that apply. It holds values in
// SI and codes, never sentences: package report turns them into words and JSON.
package plan
