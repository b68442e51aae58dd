# Every unit.
