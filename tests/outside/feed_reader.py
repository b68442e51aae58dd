"""Reads a calendar feed with icalendar, which shares nothing with the program, and says its events as JSON.

Usage: python3 feed_reader.py FEED.ics
"""

import datetime
import json
import sys

from icalendar import Calendar
from icalendar.parser import unescape_char

data = open(sys.argv[1], "rb").read()
calendar = Calendar.from_ical(data)
events = []
for event in calendar.walk("VEVENT"):
    start, end = event.decoded("DTSTART"), event.decoded("DTEND")
    assert type(start) is datetime.date and type(end) is datetime.date, "whole days"
    assert not event.errors, event.errors
    events.append({
        "uid": str(event["UID"]),
        "day": start.isoformat(),
        "days": (end - start).days,
        "sequence": int(event["SEQUENCE"]),
        "status": str(event["STATUS"]),
        "summary": str(event["SUMMARY"]),
        "stamped": event.decoded("DTSTAMP").isoformat(),
    })
longest = max(len(line) for line in data.split(b"\r\n"))
# NAME (RFC 7986) is text, which this reader leaves for its caller to read as such.
name = unescape_char(str(calendar["NAME"]))
print(json.dumps({"name": name, "longest": longest, "events": events}))
