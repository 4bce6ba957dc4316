// Package bearing is the bearings of the propeller shaft: the water-lubricated
// stern bearing, which wears, and the rolling bearing in the gearbox, which
// takes the thrust and has a fatigue life.
//
//   - [Clearance] (bearing-clearance): clearance by bore, lifted shaft, wire,
//     feeler or mark, against its limit; the rate of wear, and the time left
//   - [Life] (bearing-life): equivalent load and rating life, and what a
//     misaligned shaft takes off it; the fit of the bearing on its seat
//
// Life is that of ISO 281 in the form of Shigley, ch. 11. Wear is a straight
// line through two readings. Limits of wear and factors of the bearing are
// rule data; lubrication, contamination and the hydrodynamics of the water
// film are not calculated.
package bearing
