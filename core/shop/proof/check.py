"""Checks an evidence pack without the program that made it.

Usage: python3 check.py PACK.zip
       (or, in the unpacked folder: python3 check.py .)

Needs only the standard library for everything but the signatures: the list of files with their SHA-256, every
entry's change built again from its fields (automerge's storage format: chunk header, change chunk, columns) and named
by its hash, every photo and sound what its name says, every predecessor there, every book ending where the list says. The signatures are checked with pycose
(RFC 9052; python3 -m pip install pycose), an implementation that shares nothing with the program.
"""

import hashlib
import json
import os
import sys
import zipfile


class Pack:
    def __init__(self, path):
        self.zip = None if os.path.isdir(path) else zipfile.ZipFile(path)
        self.path = path

    def read(self, name):
        if self.zip:
            return self.zip.read(name)
        with open(os.path.join(self.path, *name.split("/")), "rb") as file:
            return file.read()

    def names(self):
        if self.zip:
            return self.zip.namelist()
        found = []
        for folder, _, files in os.walk(self.path):
            found += [os.path.relpath(os.path.join(folder, file), self.path).replace(os.sep, "/") for file in files]
        return found


def uleb(n):
    out = bytearray()
    while n > 0x7F:
        out.append(n & 0x7F | 0x80)
        n >>= 7
    return bytes(out) + bytes([n])


def prefixed(data):
    return uleb(len(data)) + data


def change_hash(entry):
    """The second encoder: SHA-256 of the change chunk that this entry is in its book."""
    value = bytes.fromhex(entry["cose"])
    deps = sorted(bytes.fromhex(dep) for dep in entry["deps"])
    columns = [
        (0x15, b"\x7f" + prefixed(entry["id"].encode())),  # key
        (0x34, b"\x01"),  # insert: one false
        (0x42, b"\x7f\x01"),  # action: put
        (0x56, b"\x7f" + uleb(len(value) << 4 | 7)),  # length and type of the value
        (0x57, value),
        (0x70, b"\x7f\x00"),  # no predecessors of the op
    ]
    body = uleb(len(deps)) + b"".join(deps) + prefixed(bytes.fromhex(entry["actor"]))
    body += uleb(entry["seq"]) + uleb(entry["op"]) + b"\x00\x00\x00"  # time, message, other actors
    body += uleb(len(columns)) + b"".join(uleb(name) + uleb(len(data)) for name, data in columns)
    body += b"".join(data for _, data in columns)
    return hashlib.sha256(b"\x01" + prefixed(body)).hexdigest()


def check_files(pack, manifest, wrong):
    listed = set(manifest["files"])
    names = pack.names()
    wrong += [f"{name}: twice in the zip" for name in sorted(set(names)) if names.count(name) > 1]
    there = set(names) - {"manifest.json", "manifest.cose"}
    wrong += [f"{name}: not in the signed list" for name in sorted(there - listed)]
    wrong += [f"{name}: missing" for name in sorted(listed - there)]
    for name in sorted(listed & there):
        if hashlib.sha256(pack.read(name)).hexdigest() != manifest["files"][name]["sha256"]:
            wrong.append(f"{name}: changed")


def check_photos(manifest, wrong):
    for name, listed in manifest["files"].items():
        if name.startswith("photos/") and name != "photos/" + listed["sha256"]:
            wrong.append(f"{name}: its name is not the SHA-256 of its bytes")


def digests(said):
    """Every 32 bytes that an entry says: among them the photos and sounds it names."""
    if isinstance(said, bytes):
        return {said.hex()} if len(said) == 32 else set()
    if isinstance(said, dict):
        said = list(said.values())
    return set().union(*map(digests, said)) if isinstance(said, list) else set()


def check_books(entries, manifest, wrong):
    known, heads = {}, {}
    for entry in entries:
        name = f"entry {entry['id']}"
        if change_hash(entry) != entry["hash"]:
            wrong.append(f"{name}: its hash is another")
        book = entry["book"]
        ops = [known.get((book, dep)) for dep in entry["deps"]]
        if None in ops:
            wrong.append(f"{name}: an entry it had seen is missing")
        elif entry["op"] != max(ops, default=0) + 1:
            wrong.append(f"{name}: its number is another")
        known[book, entry["hash"]] = entry["op"]
        heads.setdefault(book, set()).difference_update(entry["deps"])
        heads[book].add(entry["hash"])
    if {book: sorted(ends) for book, ends in heads.items()} != manifest["heads"]:
        wrong.append("a book ends elsewhere than the signed list says")


def check_signatures(pack, entries, manifest, wrong):
    import uuid

    import cbor2
    from pycose.keys import OKPKey
    from pycose.keys.curves import Ed25519
    from pycose.messages import Sign1Message

    def holds(envelope, beside, key):
        message = Sign1Message.from_cose_obj(list(cbor2.loads(envelope)), True)
        message.external_aad = beside
        message.key = OKPKey(crv=Ed25519, x=key)
        return message.payload, message.verify_signature()

    shop = bytes.fromhex(manifest["shop-key"])
    signed, good = holds(pack.read("manifest.cose"), b"sumpbook archive 1", shop)
    if not good or signed != pack.read("manifest.json"):
        wrong.append("the shop's signature over the list does not hold")
    keys = {hashlib.sha256(shop).digest()[:8]: shop}
    fleet = uuid.UUID(manifest["fleet"]).bytes
    verified, named = 0, set()
    for entry in entries:
        actor = bytes.fromhex(entry["actor"])
        book = [uuid.UUID(entry["truck"]).bytes, entry["year"]] if entry["truck"] else 0
        deps = [bytes.fromhex(dep) for dep in entry["deps"]]
        place = ["sumpbook entry 1", fleet, book, actor, entry["seq"], deps, uuid.UUID(entry["id"]).bytes]
        key = keys.get(actor[:8])
        if key is None:
            wrong.append(f"entry {entry['id']}: whoever signed it was not let in by the shop")
            continue
        payload, good = holds(bytes.fromhex(entry["cose"]), cbor2.dumps(place), key)
        if not good:
            wrong.append(f"entry {entry['id']}: its signature does not hold")
            continue
        verified += 1
        said = cbor2.loads(payload)
        named |= digests(said)
        # Kind 46, signed by the shop: a phone's key is let in. Only from there on its entries count as signed.
        if said.get(11) == 46 and key == shop:
            let_in = said[12][0]
            keys[hashlib.sha256(let_in).digest()[:8]] = let_in
    for name in manifest["files"]:
        if name.startswith("photos/") and name[len("photos/"):] not in named:
            wrong.append(f"{name}: no entry names it")
    return verified


def main(path):
    pack = Pack(path)
    manifest = json.loads(pack.read("manifest.json"))
    entries = [json.loads(line) for line in pack.read("entries.jsonl").decode().splitlines()]
    wrong = []
    check_files(pack, manifest, wrong)
    check_photos(manifest, wrong)
    check_books(entries, manifest, wrong)
    key = hashlib.sha256(bytes.fromhex(manifest["shop-key"])).digest()[:8]
    print("The shop's key:", " ".join(f"{byte:02X}" for byte in key))
    print("Ask the shop, by another way, whether that is its key.")
    print(f"{len(manifest['files'])} files, {len(entries)} entries, {len(manifest['heads'])} books")
    try:
        verified = check_signatures(pack, entries, manifest, wrong)
        print(f"{verified} of {len(entries)} signatures hold")
    except ImportError:
        print("The signatures were not checked: pycose is not installed (python3 -m pip install pycose).")
    for line in wrong:
        print("DOES NOT HOLD:", line)
    print("Something does not hold." if wrong else "All that was checked holds.")
    return 1 if wrong else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1]))
