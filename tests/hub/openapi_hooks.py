"""Tells schemathesis that a parcel is bytes like any others."""

import schemathesis


@schemathesis.serializer("application/vnd.sumpbook.parcel")
def parcel(_context, value):
    return value if isinstance(value, bytes) else str(value).encode()
