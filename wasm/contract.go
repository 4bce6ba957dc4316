package main

// contract is the version of the exports and of the envelope of requests and
// replies. It goes up when a host written for the old one would break.
const contract = 1

// largest is the cap on the bytes of one request: many times the largest boat
// file, small enough that no host can make the guest grow without bound.
const largest = 8 << 20
