"""Verifies every entry of the golden book with pycose, which shares nothing with the program.

Usage: python3 cose_reader.py golden/book.json
The external data is put together here with cbor2; what is signed is put together by pycose.
"""

import hashlib
import json
import sys
import uuid

import cbor2
from pycose.keys import OKPKey
from pycose.keys.curves import Ed25519
from pycose.messages import Sign1Message

book = json.load(open(sys.argv[1], encoding="utf-8"))
keys = {hashlib.sha256(bytes.fromhex(key)).digest()[:8]: bytes.fromhex(key) for key in book["keys"]}
verified = 0
for row in book["rows"]:
    actor = bytes.fromhex(row["actor"])
    deps = [bytes.fromhex(dep) for dep in row["deps"]]
    place = ["sumpbook entry 1", bytes.fromhex(book["fleet"]), [bytes.fromhex(book["truck"]), book["year"]]]
    place += [actor, row["seq"], deps, uuid.UUID(row["id"]).bytes]
    protected = cbor2.dumps({1: -8})
    envelope = [protected, {}, bytes.fromhex(row["payload"]), bytes.fromhex(row["signature"])]
    message = Sign1Message.from_cose_obj(envelope, True)
    message.external_aad = cbor2.dumps(place)
    message.key = OKPKey(crv=Ed25519, x=keys[actor[:8]])
    verified += message.verify_signature()
print(f"{len(book['rows'])} entries, {verified} verified")
sys.exit(0 if verified == len(book["rows"]) else 1)
