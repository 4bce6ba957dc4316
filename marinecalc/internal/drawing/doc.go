// Package drawing is what the drawings of several parts of the line share. The
// drawings themselves are below it, one package a part of the line and in it
// one file a calculation, named by its id: wholeline, mounts, gearing, joints,
// shaftline and stern. Each function takes the typed input and result and gives
// pictures in SVG with words for those who cannot see them.
package drawing
