"""Formulas as pure functions on SI floats, one subject a file; they know nothing of designs.

Names end in their unit (``_a``, ``_v``, ``_ohm``, ``_m2``, ``_c`` for °C). Outside the
stated validity a function raises ``OutOfRange``: it never clamps and never extrapolates.
Import the subject you need, ``from checker.physics.voltage_drop import ...``; nothing is
imported here so that a review pays only for what it uses.
"""
