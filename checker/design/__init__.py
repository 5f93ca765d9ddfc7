"""The typed, immutable model of one fit-out."""
