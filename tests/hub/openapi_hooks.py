"""Tells schemathesis that a parcel is bytes like any others."""

import schemathesis


@schemathesis.serializer("application/zstd")
def parcel(_context, value):
    return value if isinstance(value, bytes) else str(value).encode()
