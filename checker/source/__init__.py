"""A YAML text as a tree of texts with their places, and problems that say what would be right.

Design files and rule files are both read through it; it knows neither.
"""
