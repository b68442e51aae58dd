"""Writes the change chunk of each golden case from its fields alone and compares bytes and hash.

Usage: python3 second_encoder.py golden/changes.json
Only the standard library. Source of the layout: "Automerge storage format" (chunk header, change chunk, columns).
"""

import hashlib
import json
import sys


def uleb(n):
    out = bytearray()
    while n > 0x7F:
        out.append(n & 0x7F | 0x80)
        n >>= 7
    return bytes(out) + bytes([n])


def prefixed(data):
    return uleb(len(data)) + data


def chunk(case):
    value = bytes.fromhex(case["value"])
    deps = sorted(bytes.fromhex(dep) for dep in case["deps"])
    columns = [
        (0x15, b"\x7f" + prefixed(case["id"].encode())),  # key
        (0x34, b"\x01"),  # insert: one false
        (0x42, b"\x7f\x01"),  # action: put
        (0x56, b"\x7f" + uleb(len(value) << 4 | 7)),  # length and type of the value
        (0x57, value),
        (0x70, b"\x7f\x00"),  # no predecessors of the op
    ]
    columns = [(name, data) for name, data in columns if data]
    body = uleb(len(deps)) + b"".join(deps) + prefixed(bytes.fromhex(case["actor"]))
    body += uleb(case["seq"]) + uleb(case["op"]) + b"\x00\x00\x00"  # time, message, other actors
    body += uleb(len(columns)) + b"".join(uleb(name) + uleb(len(data)) for name, data in columns)
    body += b"".join(data for _, data in columns)
    hashed = b"\x01" + prefixed(body)
    digest = hashlib.sha256(hashed).digest()
    return b"\x85\x6f\x4a\x83" + digest[:4] + hashed, digest


cases = json.load(open(sys.argv[1], encoding="utf-8"))
expected = [(bytes.fromhex(case["chunk"]), bytes.fromhex(case["hash"])) for case in cases]
different = [n for n, case in enumerate(cases) if chunk(case) != expected[n]]
print(f"{len(cases)} cases, {len(different)} differences")
sys.exit(1 if different else 0)
