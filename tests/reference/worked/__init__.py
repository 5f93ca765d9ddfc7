"""Runs published worked examples through the formulas of ``checker.physics``."""
