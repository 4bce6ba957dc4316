// Package gland is the packed stuffing box round the propeller shaft: how warm
// it runs, what its drips carry away, how it is packed, and what the drips
// cost bilge pump and battery.
//
//   - [Heat] (gland-heat): friction heat, temperature rise, and the drip rate
//     that holds it
//   - [Curve]: the rise at other drip rates, for a curve
//   - [Packing] (gland-packing): packing size, number and length of rings, and
//     what a groove in the shaft leaves
//   - [Drip] (gland-drip): what the drips come to, and how long pump and
//     battery last unattended
//
// Sources: Denny (BHRA 550, 1957) and Ochonski (1988) for the pressure along
// the packing, Mobley (1999) for the cutting of rings. Face seals, lip seals
// and grease glands are not calculated.
package gland
