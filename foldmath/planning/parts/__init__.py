"""Equal parts without a ruler: takes a sheet and a number of parts, gives the ways to fold them."""
