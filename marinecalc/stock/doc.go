// Package stock reads the sizes that a shop has on the shelf, written in a row
// as people write them: "40 mm, 45 mm, 50 mm" or "1-1/2 in, 1-3/4 in".
//
//   - [List.Cut] (bolt-fit, gland-packing): the first size of a list, and the rest
//   - [Amount]: a bare number such as "1-3/4"
//
// It allocates nothing, since a list is read in every trial. It holds no sizes
// of its own: those are rule data.
package stock
