"""Networks of our own that a general-purpose circuit simulator solved once, with the netlist and the command."""
