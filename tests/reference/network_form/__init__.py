"""Published solved networks: their form, our elements made from it, and the comparison."""
