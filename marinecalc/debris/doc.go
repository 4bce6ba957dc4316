// Package debris is what wears off a part: how much metal a worn place gave to
// the fluid, and what it left of the part.
//
//   - [Wear] (wear-debris): volume and mass worn off, its share of the
//     fluid, and the strength, surface and case depth left
//
// The arithmetic is geometry and a power of the thickness left (Shigley for
// bending). Which part a particle comes from, and what a laboratory finds in
// the oil, is not calculated.
package debris
