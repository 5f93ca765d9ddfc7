"""One graph of terminals, conductors and devices; every question about a fit-out is a walk over it."""
