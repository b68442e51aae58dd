# One unit.
