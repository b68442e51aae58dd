"""Writes a copy of the library that says it has another interface: one checksum in it is another number.

other_version.py LIBRARY COPY; exits with 3 where it does not know this machine's code.
"""

import pathlib
import re
import struct
import subprocess
import sys

library, copy = map(pathlib.Path, sys.argv[1:3])
data = bytearray(library.read_bytes())
if data[:5] != b"\x7fELF\x02" or struct.unpack_from("<H", data, 18)[0] != 62:
    print("only a 64-bit x86 ELF library is changed here")
    sys.exit(3)
names = subprocess.run(["nm", "-D", "--defined-only", str(library)], capture_output=True, text=True)
found = re.search(r"^([0-9a-f]+) T (uniffi_sumpbook_bindings_checksum_func_text)$", names.stdout, re.M)
assert found, names.stderr or "the library has no such checksum"
address = int(found[1], 16)
# Where that address stands in the file: the program headers tell.
first, count = struct.unpack_from("<Q", data, 32)[0], struct.unpack_from("<H", data, 56)[0]
for index in range(count):
    kind, _, offset, start, _, size = struct.unpack_from("<IIQQQQ", data, first + 56 * index)
    if kind == 1 and start <= address < start + size:
        place = address - start + offset
        break
code = bytes(data[place:place + 48])
# mov ax, NUMBER, or mov eax, NUMBER.
number = re.search(rb"\x66\xb8(..)|\xb8(..)\x00\x00", code, re.S)
if number is None:
    print(f"this compiler writes a checksum in another way: {code.hex()}")
    sys.exit(3)
at = place + (number.start(1) if number[1] is not None else number.start(2))
data[at] ^= 1
copy.write_bytes(data)
