// Package fluid is the fluids that a drivetrain runs in: the water round it,
// and the oil of its gearbox with the debris that settles in it.
//
//   - [Settling] (fluid-settling): how far particles sink after a stop, and what
//     a clean dipstick then proves
//   - [Flush] (fluid-flush): how many changes of oil take the debris down
//   - [Cleanliness] (fluid-cleanliness): the ISO 4406 code of a particle count
//   - [AtSurface]: density and specific heat of the water a boat floats in, by
//     Sea or Fresh
//   - [WaterViscosity]: how thick that water is
//   - [Through]: the viscosity of an oil from two points of its data sheet
//
// Sources: UNESCO Technical Papers in Marine Science 44 for sea water, IAPWS-
// IF97 and SR6-08 for fresh, ASTM D341 for oil, Stokes (1851) for settling, ISO 4406 for
// the code. Stirring by a turning gearbox, and particles past Stokes's law,
// are not calculated; the results mark the latter.
package fluid
