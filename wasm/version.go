package main

import "example.org/driveline/marinecalc"

// contract is the version of the exports and of the envelope of requests and
// replies. It goes up when a host written for the old one would break.
const contract = 2

// largest is the cap on the bytes of one request, the same at every entry point: the
// largest boat file with what goes with it, small enough that no host can make
// the guest grow without bound.
const largest = marinecalc.MaxBytes
