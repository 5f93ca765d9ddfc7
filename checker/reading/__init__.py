"""From a design file to the model: every error with its line and column."""
