"""Reads a table with pandas, which shares nothing with the program, and says what it found as JSON.

Usage: python3 table_reader.py TABLE.csv
"""

import json
import sys

import pandas

table = pandas.read_csv(sys.argv[1], encoding="utf-8-sig")
utc = pandas.to_datetime(table["Time (UTC)"], utc=True)
yard = pandas.to_datetime(table["Time (yard)"], utc=True)
print(json.dumps({
    "heads": list(table.columns),
    "rows": len(table),
    "same-moments": bool((utc == yard).all()),
    "figures": [None if pandas.isna(figure) else float(figure) for figure in table["Figure (h)"]],
    "figures-are-numbers": table["Figure (h)"].dtype.kind == "f",
    "notes": [None if pandas.isna(note) else note for note in table["Note"]],
}))
